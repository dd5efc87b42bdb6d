import { planOf } from '../../../../shared/schemas/goals.ts';
import { defaultLimit } from '../../kit/limits.ts';
import { leftToReadOnNow } from '../change/read-with-off.ts';
import { upperFirst } from '../common/said.ts';
import { sameRatio } from '../common/same-ratio.ts';
import type { Evidence } from '../evidence.ts';
import { type InHand, partsInHand } from '../part/in-hand.ts';
import type { GroupExplained } from '../ratio/compared/explain.ts';
import { movesToRecord } from '../ratio/read/arm-elsewhere.ts';
import { setUpsNow } from '../ratio/read/set-ups.ts';
import { ANSWER, MUST, type Need, need } from './need.ts';
import { historyOf, isReturned } from './of-returned.ts';
import { ofSoldAs, ofSoldRight } from './of-sold.ts';

const MARKS = ['ratio-stamp', 'other-number', 'box-label'];
const READ_MARKS = 'Read the marks on the arm word for word: ratio stamp, other number, box label.';
const SAME_ARM = 'Name the part in the hand as the arm of a valve: its marks go with it.';

/** Marks that were read of a part in the hand are not read again: it is said which arm that part is. */
const askForArm = ({ part }: Evidence): string =>
  part.some(({ standing, kind }) => standing && MARKS.includes(kind)) ? SAME_ARM : READ_MARKS;

/**
 * The new arms are on: after a change the rockers are sold as another ratio than the card works with, or something
 * was read with the ones that are off.
 */
function hasGoneOn(evidence: Evidence): boolean {
  const {
    call,
    rockers: { soldAs },
    card: { assumedRatio },
  } = evidence;
  if (planOf(call.goal).mayBeDone !== true || soldAs === undefined) return false;
  return (
    (assumedRatio !== undefined && !sameRatio(soldAs, assumedRatio)) ||
    leftToReadOnNow(evidence) !== undefined
  );
}

/** What the step on the arms still asks: which are on, and what they are sold as. */
export function ofParts(evidence: Evidence, explained: readonly GroupExplained[]): Need[] {
  const { arms, seats, rockers, call } = evidence;
  // Of a change the ratio before is enough: the parts may not be bought.
  const must = planOf(call.goal).isChange ? {} : MUST;
  return [
    need('arm', 'an arm with its marks', askForArm(evidence), arms.length > 0, must),
    // A part that came back sits on no valve: where it sat is asked with its hours.
    ...(isReturned(evidence)
      ? []
      : [
          need(
            'seat',
            'which valve each arm sits on',
            'Say which arm sits on which valve.',
            seats.length > 0,
            must,
          ),
        ]),
    ...movesToRecord(evidence, setUpsNow(evidence)).map(({ key, said }) =>
      need(`move:${key}`, `on record ${said}`, `Put on record ${said}.`, false, MUST),
    ),
    ofSoldAs(evidence),
    ...ofSoldRight(evidence, explained),
    ...(planOf(call.goal).isChange
      ? [
          need(
            'planned',
            'the ratio of the rockers that are to be fitted',
            'Ask which ratio is to be fitted.',
            rockers.planned !== undefined || rockers.plannedExhaust !== undefined || hasGoneOn(evidence),
            {
              ...MUST,
              at: { field: 'rockers.plannedRatio' },
              askAtBench: 'Say which ratio is to be fitted.',
            },
          ),
        ]
      : []),
  ];
}

/** Named as something to do with a part: the first without its name, as it always was. */
const todoOf = ({ about }: InHand, ask: string): string =>
  about.name === undefined ? ask : `${upperFirst(about.name)}: ${ask.charAt(0).toLowerCase()}${ask.slice(1)}`;

/** What was measured or seen of a part; a guess is none. */
const read = ({ readings }: InHand, ...kinds: readonly string[]): number =>
  readings.filter(({ kind, tool }) => kinds.includes(kind) && tool !== 'guess').length;

const HOLE = 'hole-across-trunnion';

/** What is read of a part, each with what it takes. */
const OF_A_PART: readonly {
  readonly code: string;
  readonly what: (part: InHand) => string;
  readonly ask: string;
  readonly has: (part: InHand) => boolean;
  readonly answer?: boolean;
}[] = [
  {
    code: 'hole',
    what: (part) => `the hole across the trunnion, both ways: ${Math.min(read(part, HOLE), 2)} of 2`,
    ask: 'Measure the hole across the trunnion, then once more at a right angle.',
    has: (part) => read(part, HOLE) >= 2,
    answer: true,
  },
  {
    code: 'width',
    what: () => 'the width across the trunnion',
    ask: 'Measure the width across the trunnion, ends included.',
    has: (part) => read(part, 'width-across-trunnion') > 0,
    answer: true,
  },
  {
    code: 'rings',
    what: () => 'the retaining rings',
    ask: 'Look whether retaining rings show.',
    has: (part) => read(part, 'rings') > 0,
    answer: true,
  },
  {
    code: 'sizes',
    what: () => 'roller, body and arms',
    ask: 'Measure roller, body width and pivot to tip.',
    has: (part) => read(part, 'roller-diameter', 'body-width', 'pivot-to-tip') > 2,
  },
  {
    code: 'part-marks',
    what: () => 'the marks on the part, each word for word',
    ask: 'Read every mark on the part, each word for word.',
    // An arm of the build has its marks with it.
    has: (part) => part.armId !== undefined || read(part, 'ratio-stamp', 'other-number', 'box-label') > 0,
  },
];

/** The thread that came out proves the stud: by its diameter and its pitch. */
const threadRead = (part: InHand): boolean =>
  (read(part, 'stud-diameter') > 0 && read(part, 'stud-pitch') > 0) ||
  part.readings.some(({ kind, word }) => kind === 'mount' && word === 'shaft');

/** Narrow as far as it was read: it goes under a cover that is bolted either way. */
function isNarrow({ readings }: InHand): boolean {
  const widths = readings.flatMap(({ kind, size }) =>
    kind === 'width-across-trunnion' && size !== undefined ? [size] : [],
  );
  return widths.length > 0 && Math.max(...widths) <= defaultLimit('narrow-assembly-up-to');
}

/** What no part in the hand tells by itself; said as not known, and asked for by nothing here. */
function ofItsUse({ engine, passes, sheet }: Evidence, parts: readonly InHand[]): Need[] {
  const moved = [...passes, ...sheet].some(({ standing, kind }) => standing && kind === 'valve-lift');
  return [
    need(
      'thread',
      'the thread that came out, diameter and pitch: it proves the stud',
      'Read the thread that came out: over the thread, and ten of them over a length.',
      parts.every(threadRead),
    ),
    need(
      'ratio',
      'the ratio: unknown until a valve is read on a light spring',
      'Read one valve on a light spring: only that tells the ratio.',
      moved,
      { turns: true },
    ),
    need(
      'cover',
      'how the valve cover is bolted',
      'Ask how the valve cover is bolted: through its centre, or round its edge.',
      engine.coverBolting !== undefined || parts.every(isNarrow),
      {
        at: { step: 'build', field: 'engine.coverBolting' },
        askAtBench: 'Say how the valve cover is bolted: through its centre, or round its edge.',
      },
    ),
  ];
}

/** A part that came back is the one arm on record, where nobody said otherwise: its marks are not read again. */
function withMarksOfArm({ call, arms }: Evidence, parts: readonly InHand[]): readonly InHand[] {
  const [arm, ...others] = arms;
  const [part, ...more] = parts;
  const isArm =
    call.goal === 'returned-part' && arm !== undefined && others.length === 0 && more.length === 0;
  const isMarked =
    isArm && [arm.ratioStamp, arm.otherNumber, arm.boxLabel].some((text) => text.trim() !== '');
  return isMarked && part !== undefined ? [{ ...part, armId: arm.id }] : parts;
}

/** The part is off the engine: nothing of it needs turning. Of several parts it is the first that lacks something. */
export function ofIdentify(evidence: Evidence): Need[] {
  const parts = withMarksOfArm(evidence, partsInHand(evidence));
  const ofParts = OF_A_PART.flatMap(({ code, what, ask, has, answer }) => {
    const part = parts.find((each) => !has(each)) ?? parts[0];
    if (part === undefined) return [];
    const of = part.about.name === undefined ? '' : `, of the part “${part.about.name}”`;
    return [need(code, `${what(part)}${of}`, todoOf(part, ask), has(part), answer === true ? ANSWER : {})];
  });
  return [...historyOf(evidence), ...ofParts, ...ofItsUse(evidence, parts)];
}
