import { lengthsIn } from '../../../shared/quantities/spoken-units.ts';
import type { Fact } from '../../../views/parts/facts.examples.ts';
import type { TableCell, TableData } from '../../../views/parts/table.examples.ts';
import type {
  ChangeDetail,
  ChangeFigure,
  ChangeGap,
  ChangeRatio,
} from '../../mechanics/assessment/change/detail.ts';
import { lacksSaid } from '../../mechanics/assessment/common/lack.ts';
import { bareInches, bareLimit } from '../../mechanics/assessment/common/said.ts';
import { figureText, gapText, intervalText, ratioText } from './figure-text.ts';

const lacksText = (lacks: readonly string[]): string =>
  lacks.length === 0 ? '' : `lacks ${lacks.join('; ')}`;

const headed = (word: string, ratio: ChangeRatio | undefined): string =>
  ratio === undefined ? word : `${word}, ${ratio.said}`;

/** What is the same to the last digit that is told is said not to change. */
function afterCell(figure: ChangeFigure): TableCell {
  const now = figureText(figure, figure.after?.value);
  if (figure.after === undefined) return { text: now };
  const same = figure.before !== undefined && figureText(figure, figure.before) === now;
  return { text: same ? 'no change' : now, why: intervalText(figure) };
}

/** Lift, loads and sweep before and after. */
export function figuresTable({ figures, before, after }: ChangeDetail): TableData {
  return {
    caption: 'Lift, loads and sweep, before and after',
    columns: [
      { label: 'What' },
      { label: headed('Before', before), number: true },
      { label: headed('After', after), number: true },
      { label: 'Still lacks' },
    ],
    rows: figures.map((figure) => ({
      cells: [figure.title, figureText(figure, figure.before), afterCell(figure), lacksText(figure.lacks)],
    })),
  };
}

function wordCell({ word, after, lacks }: ChangeGap): TableCell {
  if (word !== undefined) return { text: '', verdict: word };
  return { text: after === undefined ? 'not known' : 'no word yet', why: lacksText(lacksSaid(lacks)) };
}

/** How far it is from its limit; where it cannot be told from it, how far its low end is under. */
function marginText({ margin, word, after, limit }: ChangeGap): string {
  if (margin === undefined) return '';
  const far = word === 'close' && after?.low !== undefined ? after.low - limit.value : margin;
  return `, ${bareInches(Math.abs(far))} ${far < 0 ? 'under' : 'over'}${far === margin ? '' : ' at worst'}`;
}

/** `measured, up to .040 in off for what bends` */
const beforeWhy = ({ basis, less }: NonNullable<ChangeGap['before']>): string =>
  less === undefined ? basis : `${basis}, ${less}`;

/** Each gap before and after, worst first, against its limit, measured or calculated. */
export function gapsTable({ gaps }: ChangeDetail): TableData {
  return {
    caption: `Gaps, before and after, ${lengthsIn()}`,
    compact: true,
    columns: [
      { label: 'Gap' },
      { label: 'Before', number: true },
      { label: 'After', number: true },
      { label: 'Limit', number: true },
      { label: 'Verdict' },
    ],
    rows: gaps.map((gap) => ({
      cells: [
        gap.title,
        gap.before === undefined ? '' : { text: gapText(gap.before), why: beforeWhy(gap.before) },
        gap.after === undefined
          ? ''
          : { text: gapText(gap.after), why: `${gap.after.basis}${marginText(gap)}` },
        bareLimit(gap.limit.value),
        wordCell(gap),
      ],
    })),
    note: 'The part maker’s figure goes before any default limit. Over and under: against the limit.',
  };
}

/** Why gaps are no better than they are, each reason once with the gaps it is about. */
export function gapReasons({ gaps }: ChangeDetail): string[] {
  const byReason = new Map<string, string[]>();
  for (const { title, because } of gaps)
    for (const reason of because) byReason.set(reason, [...(byReason.get(reason) ?? []), title]);
  return [...byReason].map(([reason, titles]) => `${titles.join(', ')}: ${reason}.`);
}

function ratioFact(label: string, ratio: ChangeRatio | undefined): Fact {
  if (ratio === undefined) return { label, value: 'not known' };
  const { value, note } = ratioText(ratio);
  return { label: headed(label, ratio), value, note };
}

/** The ratios that are set side by side, before and after, each with its 95 % interval. */
export const ratioFacts = ({ before, after }: ChangeDetail): Fact[] => [
  ratioFact('Before', before),
  ratioFact('After', after),
];
