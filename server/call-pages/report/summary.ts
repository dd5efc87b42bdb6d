import type { StopFlag } from '../../../views/pages/report/pieces.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { PartIdentification } from '../../assessment/identification/identification.ts';
import { valveName } from '../../call/context.ts';
import { ratioFigure, ratioName } from '../../call/ratio-text.ts';
import { rankedLines } from '../../steps/identify/candidate-text.ts';
import { promiseState } from '../../steps/notes/notes-step.ts';
import { comparedOf } from '../../steps/ratio/ratio-answer.ts';
import { missingForGoal } from './missing.ts';
import { nextSentences } from './next.ts';
import type { ReportData } from './report-data.ts';
import { isMark } from './sections/identified.ts';
import { leadingText } from './sections/workings.ts';

const RATIO_WORDS = { agrees: 'agrees', differs: 'differs', 'cannot-tell': 'cannot tell' } as const;
/** As many of a kind as are read at a glance. */
const FEW = 4;

/** Each set-up's ratio by its own name; only a light-spring one is set against a stamp. */
export function ratioLines({ context }: ReportData): string[] {
  return context.ratios.flatMap(({ setUp, result }) => {
    if (result === undefined) return [];
    const compared = comparedOf(result, setUp.method.spring);
    const against = compared === undefined ? '' : `; ${RATIO_WORDS[compared.word]} ${compared.against}`;
    return [`${ratioName(setUp.method.spring)}, ${valveName(setUp)}: ${ratioFigure(result).text}${against}.`];
  });
}

/** Which family stands first, and how likely it is that it is none of them. */
function firstLines(part: PartIdentification): string[] {
  const {
    lines: [first],
    none,
  } = rankedLines(part, false);
  if (first === undefined) return [];
  if (first === none) return [`The part: none of the catalogue’s families stands first, ${none.share}.`];
  return [`The part: ${first.name} stands first, ${first.share}; none of these ${none.share}.`];
}

function partLines({ part }: ReportData): string[] {
  if (part === undefined) return [];
  const threads = new Set(
    part.fasteners.flatMap((hole) => {
      const agreeing = hole.threads.filter(({ fit }) => fit === 'agrees');
      return (agreeing.length > 0 ? agreeing : hole.threads).map(({ designation }) => designation);
    }),
  );
  const ranked = part.candidates.length > 0 && part.standing.some((each) => !isMark(each));
  return [
    ...(ranked ? firstLines(part) : []),
    ...(threads.size > 0 ? [`The hole suggests ${[...threads].join(' or ')}; the thread proves it.`] : []),
    ...(part.cover === undefined ? [] : [`Sideways under the cover: ${part.cover.verdict}.`]),
  ];
}

export function oddLines({ sheet }: ReportData): string[] {
  return (sheet?.springs ?? []).flatMap((on) => [
    ...on.swaps.map(({ places, words }) => `Swap of ${places.join(' and ')}: ${words}`),
    ...on.sides.flatMap(({ odd }) =>
      odd.map(({ cylinder, valve, words }) => `${cylinder} ${valve} is the odd one. ${words}`),
    ),
  ]);
}

/** `Gaps on 1 intake: short: piston to valve; close: room to coil bind.` */
export function gapLines({ consequences }: ReportData): string[] {
  return consequences.flatMap((found) => {
    const named = (word: string) =>
      found.gaps.filter(({ verdict }) => verdict === word).map(({ title }) => title.toLowerCase());
    const told = (['short', 'close', 'clear'] as const).flatMap((word) =>
      named(word).length === 0 ? [] : [`${word}: ${named(word).join(', ')}`],
    );
    return told.length === 0 ? [] : [`Gaps on ${valveName(found.found.setUp)}: ${told.join('; ')}.`];
  });
}

function workingLines(report: ReportData): string[] {
  const newest = new Map(report.workings.map((working) => [working.computation, working]));
  return [...newest.values()].slice(-FEW).map((working) => `${leadingText(report, working)}.`);
}

export function promiseLines({ context }: ReportData): string[] {
  return context.notes
    .filter((note) => note.kind === 'promise' && note.doneAt === undefined)
    .map((note) => `${note.body}: ${promiseState(note)}.`);
}

/** Whether somebody has to stop, and why. */
export function stopFlag({ context, sheet, consequences }: ReportData): StopFlag {
  if (context.call.held)
    return {
      stands: true,
      word: 'Stop: nobody turns it.',
      text: `${context.call.holdReason || 'The reason was not said.'}`,
    };
  if (sheet?.stop === true || consequences.some(({ stop }) => stop))
    return {
      stands: true,
      word: 'Stop: a gap is short.',
      text: 'Do not run it so, and have a qualified shop look.',
    };
  return { stands: false, word: 'No stop is set.', text: 'Any resistance: stop, back off, find out.' };
}

const orNone = (items: readonly string[], none: string): readonly string[] =>
  items.length === 0 ? [none] : items;

/** What a builder reads in twenty seconds. */
export function summaryComponent(report: ReportData): Component {
  const found = [
    ...ratioLines(report).slice(-FEW),
    ...oddLines(report).slice(0, FEW),
    ...gapLines(report),
    ...partLines(report),
    ...workingLines(report),
  ];
  return {
    template: '/pages/report/summary',
    data: {
      stop: stopFlag(report),
      parts: [
        { title: 'Found', items: orNone(found, 'Nothing yet.') },
        { title: 'Not known', items: orNone(missingForGoal(report), 'Nothing that the answer waits for.') },
        { title: 'Next', items: nextSentences(report) },
        {
          title: 'Who, by when',
          items: orNone(promiseLines(report), 'Nothing is promised: no name and no date is on record.'),
        },
      ],
    },
  };
}
