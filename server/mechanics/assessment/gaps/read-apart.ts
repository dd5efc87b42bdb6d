import { SHEET_KINDS } from '../../../../shared/schemas/sheet.ts';
import { EQUAL } from '../../kit/nearest.ts';
import type { AnswerChoice, AssessedQuestion } from '../assessment.ts';
import { asked, inDoubt } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { gapSaid } from '../common/gap-said.ts';
import { once } from '../common/once.ts';
import { byId, inches, listed, placeOf, valveSubject } from '../common/said.ts';
import type { Evidence, SheetEvidence } from '../evidence.ts';
import { boundsOf } from './bounds.ts';
import { bendIn } from './gap-bend.ts';
import { foundOffBy, type GapReading } from './gap-found-off.ts';
import { lashInGap } from './gap-lash.ts';
import { isOfGap, slipOfGap } from './gap-slip.ts';
import { MISREAD, READ_TWICE } from './misread.ts';
import { sinkingNeeds } from './sinks.ts';

/** One gap that was read as two: the least of its readings, and those that it can’t be. */
export interface ReadApart {
  readonly least: GapReading;
  readonly others: readonly GapReading[];
  readonly question: AssessedQuestion;
}

/** One gap of one valve with the same arms, however it was read. */
const gapOf = (entry: SheetEvidence): string =>
  [placeOf(entry), entry.kind, entry.otherArms ?? entry.arms, entry.armId ?? ''].join(' ');

const figureOf = ({ reading }: GapReading): string =>
  gapSaid(reading.value === undefined ? reading : { value: reading.value });

/** The larger may be so for its lash, or for what bent under it. */
const mayBeLess = (entry: GapReading, evidence: Evidence): number =>
  (lashInGap(entry, evidence)?.most ?? 0) + bendIn(entry, evidence);

/** The larger one can’t be the gap of the smaller, whatever each allows for. */
function excludes(larger: GapReading, smaller: GapReading, evidence: Evidence): boolean {
  // On a lifter that sinks, or in a scan that goes on, it says no more than that there is less.
  if (sinkingNeeds(larger, evidence).length > 0 || (larger.scan?.needs ?? []).length > 0) return false;
  const { low } = boundsOf(larger);
  const { high } = boundsOf(smaller);
  return low !== undefined && high !== undefined && low - mayBeLess(larger, evidence) > high + EQUAL;
}

const choicesOf = (least: string, others: string): readonly AnswerChoice[] => [
  {
    code: MISREAD.short,
    label: `The ${least}`,
    changes:
      'It clears and bars nothing any more: the desk strikes it out, with the reason. The other counts.',
  },
  {
    code: MISREAD.again,
    label: `The ${others}`,
    changes: 'The desk strikes it out, with the reason: the lesser one stands.',
  },
  {
    code: MISREAD.neither,
    label: 'Neither: both hold',
    changes: 'The lesser one stands.',
  },
];

function apartOf(own: readonly GapReading[], evidence: Evidence): ReadApart[] {
  const leastOf = (entry: GapReading) => boundsOf(entry).high ?? Number.POSITIVE_INFINITY;
  const [least, ...rest] = own.toSorted((a, b) => leastOf(a) - leastOf(b) || byId(a, b));
  if (least === undefined) return [];
  // What was done between two scans is asked of them themselves.
  const others = rest
    .filter(({ scan }) => scan === undefined || least.scan === undefined)
    .filter((each) => excludes(each, least, evidence));
  if (others.length === 0) return [];
  const [first, second] = [figureOf(least), listed(others.map(figureOf))];
  const entries = [least, ...others];
  return [
    {
      least,
      others,
      question: asked(
        {
          code: READ_TWICE,
          weight: 'strong',
          ask: `${SHEET_KINDS[least.kind]} on ${placeOf(least)} was read ${first} and ${second}. Which was misread?`,
          knownBy: READ_TWICE,
          size: `Until it is said the ${first} stands, the worst of them.`,
          test: 'Say how each of them was read, with what, and what it was put down as.',
          byLooking: true,
          alsoOf: ['consequences'],
          restsOn: entries.map(({ id }) => id),
        },
        {
          about: valveSubject(least),
          step: 'sheet',
          among: entries.map(({ id }) => id).join('-'),
          answers: evidence.answers,
          choices: choicesOf(first, second),
        },
      ),
    },
  ];
}

/** A reading of which a slip is asked is asked about by that alone. */
const isAskedAlready = (entry: GapReading, evidence: Evidence): boolean => {
  const slip = slipOfGap(evidence, entry);
  return slip !== undefined && inDoubt(slip);
};

/** Gaps that were read more than once, so far apart that one of the readings is wrong: whichever arms were on. */
export const readApart = once((evidence: Evidence): readonly ReadApart[] => {
  const counted = evidence.sheet
    .filter(({ standing, tool }) => standing && tool !== 'guess')
    .filter(isOfGap)
    .filter((entry) => !isAskedAlready(entry, evidence))
    // One that was found off was answered, and waits for nothing but its successor.
    .filter((entry) => foundOffBy(entry, evidence.answers) === undefined);
  return [...new Set(counted.map(gapOf))].sort().flatMap((gap) =>
    apartOf(
      counted.filter((entry) => gapOf(entry) === gap),
      evidence,
    ),
  );
});

/** The answer by which this one of the readings was misread. */
export function misreadBy(
  entry: Pick<SheetEvidence, 'id'>,
  evidence: Evidence,
): AssessedQuestion['answered'] {
  return readApart(evidence).find(({ least, others, question }) => {
    const said = chosenOf(question);
    return (
      (said === MISREAD.short && least.id === entry.id) ||
      (said === MISREAD.again && others.some(({ id }) => id === entry.id))
    );
  })?.question.answered;
}

/** `It was read .085 in and .112 in`, of the one that stands. */
export function readApartSaid(entry: Pick<SheetEvidence, 'id'>, evidence: Evidence): string | undefined {
  const found = readApart(evidence).find(({ least }) => least.id === entry.id);
  if (found === undefined || chosenOf(found.question) === MISREAD.again) return undefined;
  const read = [found.least, ...found.others].map(({ reading: { value, low, high } }) =>
    inches(value ?? low ?? high ?? 0),
  );
  return `it was read ${listed(read)}, the worst of which stands until one is struck out`;
}
