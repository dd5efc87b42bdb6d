import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Assessment } from '../../../server/mechanics/assessment/assessment.ts';
import type {
  AnswerEvidence,
  Evidence,
  PartEvidence,
} from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { DEMO_FAMILY_EVIDENCE } from './demo-family-evidence.ts';
import { nothingKnown } from './plain.ts';

/** A size as a caliper read it, in inches. */
export const sized = (kind: string, inches: number, more: Partial<PartEvidence> = {}): PartEvidence => ({
  id: more.id ?? `${kind}-${inches}`,
  line: 1,
  standing: true,
  kind,
  size: inches * IN,
  typed: `${inches}`,
  readAs: `${inches} in`,
  ...more,
});

export const seen = (kind: string, word: string, more: Partial<PartEvidence> = {}): PartEvidence => ({
  id: `${kind}-${word}`,
  line: 1,
  standing: true,
  kind,
  word,
  typed: word,
  readAs: word,
  ...more,
});

/** A call about parts in the hand, against the demo catalogue; all of it invented. */
export const inHand = (part: readonly PartEvidence[], more: Partial<Evidence> = {}): Evidence => ({
  ...nothingKnown,
  call: { ...nothingKnown.call, goal: 'identify' },
  families: DEMO_FAMILY_EVIDENCE,
  part,
  ...more,
});

/** The invented Sorrel 160-B as a caliper reads it: holes and rollers a few thousandths small, common practice. */
export const SORREL: readonly PartEvidence[] = [
  sized('hole-across-trunnion', 0.4355),
  sized('hole-across-trunnion', 0.4362),
  sized('width-across-trunnion', 1.6),
  sized('roller-diameter', 0.496),
  sized('body-width', 0.841),
  sized('pivot-to-tip', 1.453),
  sized('pivot-to-cup', 0.911),
  seen('rings', 'visible'),
  seen('tip', 'roller'),
  seen('mount', 'stud'),
];

export const without = (kind: string): PartEvidence[] => SORREL.filter((each) => each.kind !== kind);

/** The question of this word, answered by a person. */
export function answered(evidence: Evidence, code: string, answer: string): Evidence {
  const question = assess(evidence).questions.find((each) => each.code === code);
  if (question === undefined) throw new Error(`nothing asks ${code}`);
  const found = { found: true, 'not-found': false }[answer];
  const said: AnswerEvidence = {
    id: `answer-${evidence.answers.length + 1}`,
    line: evidence.answers.length + 1,
    questionId: question.id,
    code,
    question: question.ask.slice(0, 100),
    answer: answer.replaceAll('-', ' '),
    ...(found === undefined ? {} : { found }),
  };
  return { ...evidence, answers: [...evidence.answers, said] };
}

export function partOf({ details }: Assessment, partId?: string) {
  const part = details.parts.find(({ about }) => about.partId === partId);
  if (part === undefined) throw new Error('there is no such part');
  return part;
}

/** The family that stands first, or `none`, with its chance; `held back` while the headline names no family. */
export function firstOf(evidence: Evidence, partId?: string): readonly [code: string, chance: number] {
  const { ranking } = partOf(assess(evidence), partId);
  const [first] = ranking?.candidates ?? [];
  const none = ranking?.noneOfThese?.probability;
  if (ranking === undefined || none === undefined) return ['held back', 0];
  const chance = first?.chance?.probability ?? 0;
  return first === undefined || none >= chance ? ['none', none] : [first.family.code, chance];
}

export const codesOf = (evidence: Evidence): string[] => assess(evidence).questions.map(({ code }) => code);
