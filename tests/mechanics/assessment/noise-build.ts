import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type {
  AnswerEvidence,
  Evidence,
  LashEvidence,
} from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from './plain-build.ts';

/** An answer to a question about noise, with what was said beside it. */
export const said = (code: string, answer: string, more: Partial<AnswerEvidence> = {}): AnswerEvidence => ({
  id: `${code}-${more.line ?? 50}`,
  line: 50,
  code,
  question: code,
  answer,
  ...more,
});

const day = (at: number) => `2026-03-${String(at).padStart(2, '0')}`;

/** A line of the lash log, in inches; its number is its place in the log. */
export const logged = (
  at: number,
  moment: 'set' | 'found',
  gap: number,
  nut: LashEvidence['nut'] = 'not-looked',
  more: Partial<LashEvidence> = {},
): LashEvidence => ({
  id: `lash-${more.cylinder ?? 2}-${at}`,
  line: at,
  standing: true,
  cylinder: 2,
  valve: 'intake',
  gap: { value: gap * IN },
  readAs: '',
  moment,
  engine: 'cold',
  nut,
  day: day(at),
  ...more,
});

/** A call about a noise in an engine that ran and stands now. */
export const noiseOf = (more: Partial<Evidence>, call: Partial<Evidence['call']> = {}) =>
  assess({
    ...PLAIN,
    call: { ...PLAIN.call, goal: 'noise-or-failure', engineState: 'has-run', ...call },
    ...more,
  });
type Noise = ReturnType<typeof noiseOf>;

/** Of one fact, by how its key begins: the causes that it speaks for and those it speaks against. */
export function spokenOf({ details }: Noise, key: string) {
  const causes = (side: 'for' | 'against') =>
    details.noise.candidates
      .filter((each) => each[side].some((fact) => fact.key.startsWith(key)))
      .map(({ cause }) => String(cause))
      .toSorted();
  return { for: causes('for'), against: causes('against') };
}

export const factsOf = ({ details }: Noise, key = '') =>
  details.noise.facts.filter((fact) => fact.key.startsWith(key));
