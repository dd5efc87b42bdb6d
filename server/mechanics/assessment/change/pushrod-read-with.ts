import type { ConsequenceInput } from '../../consequences/types.ts';
import { PLANNED_RATIO, STATED_RATIO } from '../../kit/allowances.ts';
import type { AnswerChoice, AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { toSay } from '../common/lack.ts';
import { inches, listed, nominalSaid, ratioSaid } from '../common/said.ts';
import { sameRatio } from '../common/same-ratio.ts';
import type { Evidence, Side } from '../evidence.ts';
import type { ChangeRatio } from './detail.ts';
import type { Variants } from './spread.ts';

type With = NonNullable<ConsequenceInput['pushrodToHeadWith']>;

/** The arms that pushrod to head was read with, and others that it may have been read with as well. */
export interface PushrodRead {
  readonly arms: With;
  /** Until it is said. */
  readonly perhaps?: With;
  readonly question?: AssessedQuestion;
}

/** The code of the question which of them it was. */
export const READ_WITH = 'pushrod-read-with';

/** What a gap that may have been read with two kinds of arms waits for. */
export const WHICH_ARMS = toSay('which-arms', 'which arms it was read with', READ_WITH);

interface Known {
  readonly side: Side;
  readonly plan: number | undefined;
  readonly before?: ChangeRatio;
  readonly after?: ChangeRatio;
  /** What the arms that are on now are stamped or sold as. */
  readonly nominal?: number;
  /** What the card works with. */
  readonly card?: ChangeRatio;
}

/** Arms of one name: stated alike, or measured as arms of that name come out. */
function isAlike(now: ChangeRatio, nominal: number | undefined, other: ChangeRatio): boolean {
  const name = nominal ?? (now.from === 'measured' ? undefined : now.value);
  if (name !== undefined && other.from !== 'measured') return sameRatio(name, other.value);
  const { under, over } = PLANNED_RATIO;
  const [one, two] = name === undefined ? [other.value, now.value] : [name, other.value];
  return two >= one * (1 - under) && two <= one * (1 + over);
}

/** Those that are on a valve now, and those that it may have been read with as well. */
export interface PushrodPair {
  readonly side: Side;
  readonly now: ChangeRatio;
  readonly other: ChangeRatio;
}

/** What an answer is of: the ratio that the others are stated as; one that was measured goes on being read. */
const keyOf = ({ from, value }: ChangeRatio): string =>
  from === 'measured' ? 'measured' : nominalSaid(value);

/** `the measured 1.58 to 1.601`: of the valves of a side; others than measured each once. */
function named(ratios: readonly ChangeRatio[]): string {
  const values = new Set(ratios.map(({ value }) => value));
  if (values.size > 1 && ratios.every(({ from }) => from === 'measured'))
    return `the measured ${ratioSaid(Math.min(...values))} to ${ratioSaid(Math.max(...values))}`;
  return listed([...new Set(ratios.map(({ said }) => said))].toSorted());
}

const choicesOf = (now: string, other: string): readonly AnswerChoice[] => [
  {
    code: 'on-now',
    label: `With those that are on: ${now}`,
    changes: 'The gap is worked out from those.',
  },
  {
    code: 'others',
    label: `With arms of another ratio: ${other}`,
    changes: 'The gap is worked out from that ratio.',
  },
];

/** The question, with the answer that was given to the one about others of the ratio `key`. */
function askedAt(
  { taken, answers }: Evidence,
  { side, key, now, other }: Asked,
  before = '',
): AssessedQuestion {
  return asked(
    {
      code: READ_WITH,
      weight: 'weak',
      ask: `With which arms was pushrod to head of the ${side} valves read: those that are on now, ${now}, or ones of ${other}?`,
      knownBy: 'with which arms pushrod to head was read',
      size: `It was read ${inches(taken[side].pushrodToHead ?? 0)}. Until it is said the worse of the two counts.${before}`,
      test: 'Ask who read it which arms were on.',
      testAtBench: 'Say which arms were on when it was read.',
      byLooking: true,
      restsOn: [],
    },
    {
      about: { of: 'side', valve: side },
      step: 'consequences',
      among: key,
      answers,
      choices: choicesOf(now, other),
    },
  );
}

interface Asked {
  readonly side: Side;
  readonly key: string;
  readonly now: string;
  readonly other: string;
}

/** Ratios of others that it was answered about, by the ids of the answers. */
function keysAnswered({ answers }: Evidence, side: Side): string[] {
  const start = `question:pushrod-read-with:${side}:`;
  const keys = answers.flatMap(({ questionId = '' }) =>
    questionId.startsWith(start) ? (questionId.slice(start.length).split(':')[0] ?? []) : [],
  );
  return [...new Set(keys)].toSorted();
}

/**
 * Asked once for all valves of a side that it is open on. That those on now were on holds whatever the others are; that
 * it was others is said of arms of one ratio, and asked again where they turn out to be of another.
 */
function askedOf(evidence: Evidence, pair: PushrodPair, pairs: readonly PushrodPair[]): AssessedQuestion {
  const { side } = pair;
  const key = keyOf(pair.other);
  const alike = pairs.filter((each) => each.side === side && keyOf(each.other) === key);
  const put: Asked = {
    side,
    key,
    now: named([pair, ...alike].map((each) => each.now)),
    other: named([pair, ...alike].map((each) => each.other)),
  };
  const own = askedAt(evidence, put);
  if (own.answered !== undefined) return own;
  const others = keysAnswered(evidence, side).map((each) => askedAt(evidence, { ...put, key: each }));
  const onNow = others.find((each) => chosenOf(each) === 'on-now');
  if (onNow !== undefined) return onNow;
  const was = keysAnswered(evidence, side).filter((_, at) => others[at]?.answered !== undefined);
  return was.length === 0
    ? own
    : askedAt(evidence, put, ` It was answered while the others were ${listed(was)}.`);
}

const ofRatio = (ratio: ChangeRatio): With => ({
  value: ratio.value,
  halfWidth: ratio.value * STATED_RATIO.share,
});

/** The arms that are on now, and others that it may have been read with; nothing where those are of one name. */
export function pushrodPair(evidence: Evidence, known: Known): PushrodPair | undefined {
  const { side, plan, before, after, nominal, card } = known;
  const [now, other] = plan === undefined ? [after, before] : [before, card];
  if (evidence.taken[side].pushrodToHead === undefined || now === undefined || other === undefined)
    return undefined;
  return now === other || isAlike(now, nominal, other) ? undefined : { side, now, other };
}

/**
 * With which arms pushrod to head was read: those that are on now, unless the card, or arms that are off since, have another
 * ratio and somebody says it was those. `pairs` are those of all valves.
 */
export function pushrodRead(evidence: Evidence, known: Known, pairs: readonly PushrodPair[]): PushrodRead {
  const isPlanned = known.plan !== undefined;
  const arms: With = isPlanned || known.after === undefined ? 'before' : 'after';
  const pair = pushrodPair(evidence, known);
  if (pair === undefined) return { arms };
  const question = askedOf(evidence, pair, pairs);
  const perhaps: With = isPlanned ? ofRatio(pair.other) : 'before';
  const said = chosenOf(question);
  if (said === 'on-now') return { arms, question };
  return said === 'others' ? { arms: perhaps, question } : { arms, perhaps, question };
}

/** The same inputs with pushrod to head as read with these arms. */
export function readWith(variants: Variants, arms: With): Variants {
  const set = (input: ConsequenceInput): ConsequenceInput => ({ ...input, pushrodToHeadWith: arms });
  return {
    middle: set(variants.middle),
    beforeAlone: set(variants.beforeAlone),
    beforeEnds: variants.beforeEnds.map(set),
    before: variants.before.map(set),
    after: variants.after.map(set),
  };
}
