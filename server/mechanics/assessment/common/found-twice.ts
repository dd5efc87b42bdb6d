import { allowance } from '../../kit/allowances.ts';
import { EQUAL } from '../../kit/nearest.ts';
import type { AssessedQuestion } from '../assessment.ts';
import type { Bounds, Evidence, LashEvidence, ValvePlace } from '../evidence.ts';
import { asked } from './asked.ts';
import { chosenOf } from './chosen.ts';
import { lastKept } from './kept.ts';
import { isLashDoubted } from './lash-doubt.ts';
import { lashLogOf } from './lash-log-of.ts';
import { onceEach } from './once.ts';
import { picked, pickOf } from './pick.ts';
import { inches, listed, placeOf, valveSubject } from './said.ts';
import { enteredAt } from './same-day.ts';

/** Nearer two gaps are one. */
export const ALIKE = allowance('half-feeler');

/** The gap of a line that has one figure is this one. */
export const isAt = ({ gap: { value } }: LashEvidence, lash: number): boolean =>
  value !== undefined && Math.abs(value - lash) <= ALIKE;

/** The gauges of a line hold this gap between them. */
export const holds = ({ gap: { value, low, high } }: LashEvidence, lash: number): boolean =>
  value === undefined &&
  low !== undefined &&
  high !== undefined &&
  lash >= low - EQUAL &&
  lash <= high + EQUAL;

/** A valve whose gap was found otherwise the second time, with nothing set between. */
export interface FoundTwice {
  readonly question: AssessedQuestion;
  /** What holds, once somebody said so or most of them agree. */
  readonly holds?: LashEvidence;
  readonly lines: readonly LashEvidence[];
}

const isFind = ({ moment, gap }: LashEvidence): boolean => moment === 'found' && gap.value !== undefined;

/** What was found between one setting and the next, or since the last, each with one figure that nobody doubts. */
const findsBetween = onceEach(placeOf, (evidence: Evidence, place: ValvePlace): readonly LashEvidence[][] => {
  const lots: LashEvidence[][] = [[]];
  for (const line of lashLogOf(evidence, place)) {
    if (line.moment === 'set') lots.push([]);
    else if (isFind(line) && !isLashDoubted(evidence, line)) lots.at(-1)?.push(line);
  }
  return lots;
});

/** What was found since it was last set, each with one figure that nobody doubts and that was not put aside. */
export function findsOf(evidence: Evidence, place: ValvePlace): LashEvidence[] {
  const finds = findsBetween(evidence, place).at(-1) ?? [];
  const aside = asideOf(finds, place, evidence);
  return finds.filter((line) => !aside.includes(line));
}

export const figureOf = ({ gap }: LashEvidence): number => gap.value ?? 0;

/** Each gap once, the narrowest first. */
const figures = (lines: readonly LashEvidence[]): number[] =>
  lines
    .map(figureOf)
    .toSorted((a, b) => a - b)
    .filter((value, at, all) => at === 0 || value - (all[at - 1] ?? 0) > ALIKE);

/** The gap that more of them came to than to any other, found so on the last day as well. */
function mostOf(lines: readonly LashEvidence[]): LashEvidence | undefined {
  const alike = (line: LashEvidence) => lines.filter((other) => isAt(other, figureOf(line))).length;
  const [first, ...others] = lines.toSorted((a, b) => alike(b) - alike(a));
  if (first === undefined || alike(first) < 2) return undefined;
  const last = lines.at(-1)?.day;
  if (!lines.some((line) => line.day === last && isAt(line, figureOf(first)))) return undefined;
  const isFirst = others.every((each) => alike(each) < alike(first) || isAt(each, figureOf(first)));
  return isFirst ? first : undefined;
}

/**
 * The finds that do not agree: read on one day they should come to the same; on two days the gap may have grown, which
 * the log tells by itself, but a turn that was worked out from the first is then made from another gap.
 */
function apart(finds: readonly LashEvidence[], from: number | undefined): readonly LashEvidence[] {
  const newest = finds.at(-1);
  if (newest === undefined) return [];
  const isSum = from !== undefined && !isAt(newest, from) && finds.some((each) => isAt(each, from));
  const alike = finds.filter(({ engine }) => engine === newest.engine);
  if (isSum) return alike;
  const ofDay = alike.filter(({ day }) => day === newest.day);
  const wide = Math.max(...ofDay.map(figureOf)) - Math.min(...ofDay.map(figureOf));
  return wide > allowance('repeat') + EQUAL ? ofDay : [];
}

const NEITHER = 'neither';

const choicesOf = (gaps: readonly number[]): AssessedQuestion['answers'] => [
  ...gaps.map((gap, at) => ({
    code: pickOf('gap', at),
    label: `It is ${inches(gap)}`,
    changes: 'It is worked with; the other stays on record and is put aside.',
  })),
  {
    code: NEITHER,
    holds: true,
    label: 'Nobody can say',
    changes: 'It is read once more, and nothing is told of it until then.',
  },
];

/** It was read twice already: whoever read it may know which was wrong. */
const WHICH =
  'Say which of them holds, and what was done between them. Where nobody can say, it is read once more.';

const ONCE_MORE =
  'Read that gap once more on the base circle, at the same heat, before the adjuster is touched.';

/** Nobody could say: only then it is read again. */
function onceMore({ byLooking: _, ...question }: AssessedQuestion): AssessedQuestion {
  return { ...question, test: ONCE_MORE };
}

function askedOf(
  lines: readonly LashEvidence[],
  gaps: readonly number[],
  place: ValvePlace,
  { answers }: Evidence,
): AssessedQuestion {
  return asked(
    {
      code: 'found-twice',
      weight: 'strong',
      ask: `The lash of ${placeOf(place)} was found at ${listed(gaps.map(inches))}. Which one holds?`,
      knownBy: 'which of the gaps found holds',
      size: 'Nothing was set between them on the record. A turn goes by the gap that is there now.',
      test: WHICH,
      byLooking: true,
      restsOn: lines.map(({ id }) => id),
    },
    {
      about: valveSubject(place),
      step: 'adjuster',
      among: lines
        .map(({ id }) => id)
        .toSorted()
        .join('-'),
      answers,
      choices: choicesOf(gaps),
    },
  );
}

/**
 * Finds that nobody could say of, and that were read once more since: asked of as they were then, one entry after the
 * other, and each time without what had been put aside till then.
 */
function asideOf(
  finds: readonly LashEvidence[],
  place: ValvePlace,
  evidence: Evidence,
): readonly LashEvidence[] {
  const sum = lastKept(evidence, 'turns')?.set.lashFound;
  const entered = finds.toSorted((a, b) => enteredAt(a) - enteredAt(b));
  const aside: LashEvidence[] = [];
  for (const next of entered.slice(2)) {
    const then = finds.filter((each) => !aside.includes(each) && enteredAt(each) < enteredAt(next));
    // The sum that it was asked beside may have been kept since.
    const open = [apart(then, sum), apart(then, undefined)].find(
      (lines) => lines.length > 1 && chosenOf(askedOf(lines, figures(lines), place, evidence)) === NEITHER,
    );
    aside.push(...(open ?? []));
  }
  return aside;
}

/** What nobody could say of counts for nothing, once that gap was read again. */
export const putAside = onceEach(placeOf, (evidence: Evidence, place: ValvePlace): readonly LashEvidence[] =>
  findsBetween(evidence, place).flatMap((finds) => asideOf(finds, place, evidence)),
);

/** One gap that was found as two: nobody turns an adjuster by either until somebody says which holds. */
export const foundTwice = onceEach(
  placeOf,
  (evidence: Evidence, place: ValvePlace): FoundTwice | undefined => {
    const lines = apart(findsOf(evidence, place), lastKept(evidence, 'turns')?.set.lashFound);
    const gaps = figures(lines);
    if (gaps.length < 2) return undefined;
    const put = askedOf(lines, gaps, place, evidence);
    const chosen = chosenOf(put);
    const raised = chosen === NEITHER ? onceMore(put) : put;
    const gap = picked('gap', gaps, chosen);
    const holds =
      gap === undefined
        ? chosen === undefined
          ? mostOf(lines)
          : undefined
        : lines.find((each) => isAt(each, gap));
    return holds === undefined
      ? { question: raised, lines }
      : { question: chosen === undefined ? { ...raised, weight: 'weak' } : raised, lines, holds };
  },
);

/** The gap that is told: the one that holds, else the two ends that nobody has decided between. */
export function gapOf({ holds, lines }: FoundTwice): Bounds {
  const gaps = figures(lines);
  return holds?.gap ?? { low: Math.min(...gaps), high: Math.max(...gaps) };
}

/** What is lacking while nobody has said which holds. */
export const WHICH_HOLDS = 'which of the gaps it was found at holds';
