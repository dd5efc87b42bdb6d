import type { ConsequenceInput } from '../../consequences/types.ts';
import { PLANNED_RATIO, STATED_RATIO } from '../../kit/allowances.ts';
import type { AnswerChoice, AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { inches } from '../common/said.ts';
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
export const WHICH_ARMS = 'which arms it was read with';

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

const SAME = 0.0005;

/** Arms of one name: stated alike, or measured as arms of that name come out. */
function isAlike(now: ChangeRatio, nominal: number | undefined, other: ChangeRatio): boolean {
  const name = nominal ?? (now.from === 'measured' ? undefined : now.value);
  if (name !== undefined && other.from !== 'measured') return Math.abs(name - other.value) < SAME;
  const { under, over } = PLANNED_RATIO;
  const [one, two] = name === undefined ? [other.value, now.value] : [name, other.value];
  return two >= one * (1 - under) && two <= one * (1 + over);
}

const choicesOf = (now: ChangeRatio, other: ChangeRatio): readonly AnswerChoice[] => [
  {
    code: 'on-now',
    label: `With those that are on: ${now.said}`,
    changes: 'The gap is worked out from those.',
  },
  {
    code: 'others',
    label: `With arms of another ratio: ${other.said}`,
    changes: 'The gap is worked out from that ratio.',
  },
];

function askedOf(
  { taken, answers }: Evidence,
  side: Side,
  now: ChangeRatio,
  other: ChangeRatio,
): AssessedQuestion {
  return asked(
    {
      code: READ_WITH,
      weight: 'weak',
      ask: `With which arms was pushrod to head of the ${side} valves read: those that are on now, ${now.said}, or ones of ${other.said}?`,
      knownBy: 'with which arms pushrod to head was read',
      size: `It was read ${inches(taken[side].pushrodToHead ?? 0)}. Until it is said the worse of the two counts.`,
      test: 'Ask who read it which arms were on.',
      testAtBench: 'Say which arms were on when it was read.',
      byLooking: true,
      restsOn: [],
    },
    { about: { of: 'side', valve: side }, step: 'consequences', answers, choices: choicesOf(now, other) },
  );
}

const ofRatio = (ratio: ChangeRatio): With => ({
  value: ratio.value,
  halfWidth: ratio.value * STATED_RATIO.share,
});

/**
 * With which arms pushrod to head was read: those that are on now, unless the card, or arms that are off since, have another
 * ratio and somebody says it was those.
 */
export function pushrodRead(evidence: Evidence, known: Known): PushrodRead {
  const { side, plan, before, after, nominal, card } = known;
  const isPlanned = plan !== undefined;
  const [now, other] = isPlanned ? [before, card] : [after, before];
  const arms: With = isPlanned || after === undefined ? 'before' : 'after';
  if (evidence.taken[side].pushrodToHead === undefined || now === undefined || other === undefined)
    return { arms };
  if (now === other || isAlike(now, nominal, other)) return { arms };
  const question = askedOf(evidence, side, now, other);
  const perhaps: With = isPlanned ? ofRatio(other) : 'before';
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
    before: variants.before.map(set),
    after: variants.after.map(set),
  };
}
