import { planOf } from '../../../../shared/schemas/goals.ts';
import type { StepName } from '../../../../shared/steps.ts';
import type { Headline } from '../assessment.ts';
import { NOT_KNOWN } from '../change/not-known.ts';
import { lowerFirst } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { NotCovered } from '../gear/detail.ts';
import { planOfGear } from '../gear/gear.ts';
import { GAPS_OF_A_CHANGE, notCovered, PART_NAMED, WITHOUT_LASH } from '../gear/not-covered.ts';

type Goal = Evidence['call']['goal'];

/** Steps that the goal is answered in and that this valve gear has no use for: why is the answer. */
const OWN_STEP: Readonly<Partial<Record<Goal, StepName>>> = {
  'verify-ratio': 'ratio',
  geometry: 'geometry',
};

/** What of that which is not worked out the goal asks for. */
const ASKS_FOR: Readonly<Partial<Record<Goal, readonly string[]>>> = {
  identify: [PART_NAMED],
  'returned-part': [PART_NAMED],
  'choose-ratio': [GAPS_OF_A_CHANGE],
  'clearances-after-a-change': [GAPS_OF_A_CHANGE],
  adjuster: WITHOUT_LASH,
};

const said = ({ sentence, instead }: NotCovered): string => `${sentence} Instead: ${lowerFirst(instead)}`;

/** What the goal comes to on this valve gear: why there is no such thing, or what is done instead. */
function answerOf(evidence: Evidence): string | undefined {
  const { goal } = evidence.call;
  const step = OWN_STEP[goal];
  const why = step === undefined ? undefined : planOfGear(evidence).steps[step];
  const codes = ASKS_FOR[goal] ?? [];
  const instead = notCovered(evidence).find(({ id }) => codes.includes(id));
  return why ?? (instead === undefined ? undefined : said(instead));
}

/**
 * A call about what this valve gear has not, or what is not worked out for it, ends with that told, and what is done
 * instead; where something was found of it, that is the answer.
 */
export function goalTold(evidence: Evidence, headlines: readonly Headline[]): readonly Headline[] {
  const told = withGear(evidence, headlines);
  return evidence.call.goal === 'returned-part' ? [...told, noCause(told)] : told;
}

/** A part that came back; common practice, no published source. It is said in one breath with what the part is. */
const noCause = ([first]: readonly Headline[]): Headline => ({
  id: 'headline:returned',
  about: { of: 'build' },
  step: first?.step ?? 'identify',
  sentence: 'No cause is named before the part was inspected.',
});

function withGear(evidence: Evidence, headlines: readonly Headline[]): readonly Headline[] {
  const { asks, byRatio } = planOf(evidence.call.goal);
  const own: readonly StepName[] = [...asks, ...(byRatio === true ? (['ratio'] as const) : [])];
  const found = headlines.some(({ id, step }) => id !== NOT_KNOWN && own.includes(step));
  const sentence = found ? undefined : answerOf(evidence);
  if (sentence === undefined) return headlines;
  return [{ id: 'headline:valve-gear', about: { of: 'build' }, step: 'build', sentence }, ...headlines];
}
