import { PART_FEATURES, PART_KINDS, PART_MARKS, PART_SIZES } from '../../../shared/schemas/part-words.ts';
import type { Component } from '../../../views/parts/part.ts';
import type { PartIdentification } from '../../assessment/identification/identification.ts';
import type { CallContext } from '../../call/context.ts';
import { beside, run, said, section, textOf } from '../../call/report-parts.ts';
import type { PartReading } from '../../records/part-readings/part-readings.ts';
import { followingComponents, nextComponent } from './answers.ts';
import { rankedLines } from './candidate-text.ts';

const NAMES: Readonly<Record<string, string>> = PART_KINDS;

export const isMark = ({ kind }: PartReading): boolean => Object.hasOwn(PART_MARKS, kind);

function readAs(reading: PartReading): string {
  const text = isMark(reading) ? `“${reading.readAs}”` : reading.readAs;
  return reading.place === '' ? text : `${text}, ${reading.place}`;
}

/** What was measured, seen and found written, and what was struck out with its reason. */
function measured({ readings, standing }: PartIdentification): Component[] {
  const stands = new Set(standing.map(({ id }) => id));
  const struck = readings.filter((each) => !stands.has(each.id) && !each.struck);
  const why = (old: PartReading) => readings.find(({ id }) => id === old.replacedBy)?.reason ?? '';
  const who = ({ seq, by }: PartReading) => `line ${seq}, ${by}`;
  const name = ({ kind }: PartReading) => NAMES[kind] ?? kind;
  return [
    ...run(
      'Measured and read',
      standing.map((each) => ({ label: name(each), value: readAs(each), note: who(each) })),
    ),
    ...run(
      'Struck out',
      struck.map((each) => ({ label: name(each), value: readAs(each), note: `${why(each)}; ${who(each)}` })),
    ),
  ];
}

function candidatesTable(context: CallContext, part: PartIdentification): Component {
  const { lines, others } = rankedLines(part, false);
  const counted = part.standing.filter(({ kind }) => kind in PART_SIZES || kind in PART_FEATURES).length;
  return {
    template: '/parts/table',
    data: {
      caption: 'What it may be',
      columns: [{ label: 'Family' }, { label: 'How likely', number: true }, { label: 'What that is' }],
      rows: lines.map(({ name, share, words, reasons }) => {
        const against = reasons.filter(({ verdict }) => verdict !== undefined && verdict !== 'agrees');
        const why = against
          .map(({ verdict, text }) => `${(verdict ?? '').replace('-', ' ')}: ${text}`)
          .join('; ');
        return { cells: [name, share, why === '' ? words : { text: words, why }] };
      }),
      note: `${others}From ${counted} ${counted === 1 ? 'reading' : 'readings'} against ${part.families} families of ${context.side === 'desk' ? 'the' : 'the shop’s'} catalogue; marks play no part in it. A ratio in the catalogue is nominal: the ratio is unknown until a valve moves.`,
    },
  };
}

/** The measurement that would say most about the part, in words. */
export const nextOfPart = (context: CallContext, part: PartIdentification): string | undefined =>
  part.families === 0 || part.candidates.length === 0 ? undefined : textOf(nextComponent(context, part));

/** Whether families were ranked by something that was measured or seen. */
export const isRanked = (part: PartIdentification): boolean =>
  part.candidates.length > 0 && part.standing.some((each) => !isMark(each));

/** What was identified: readings, ranked families with none of these, the fastener and the cover. */
export function partReport(context: CallContext, part: PartIdentification): Component[] {
  if (part.standing.length === 0) return [];
  const next = nextOfPart(context, part);
  const follows = part.fasteners.length + part.questions.length > 0 || part.cover !== undefined;
  return [
    section('The part in the hand', [
      ...measured(part),
      ...(isRanked(part) ? [candidatesTable(context, part)] : []),
      ...(follows ? [beside(...followingComponents(part))] : []),
      ...(isRanked(part) && next !== undefined ? said('What would tell more', [next]) : []),
    ]),
  ];
}
