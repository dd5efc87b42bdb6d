import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type {
  AnswerEvidence,
  Evidence,
  SetUpEvidence,
  SetUpStatementEvidence,
} from '../../../server/mechanics/assessment/evidence.ts';
import { buildOf, cleanSetUp, IN } from './plain.ts';

/*
 * What is said late counts for the readings already there: by a statement, or as the answer to a question. Figures by
 * hand: .557/.348 = 1.6006.
 */

export const UNSAID = {
  spring: 'not-said',
  lifter: 'not-said',
  lash: 'not-said',
  alignment: 'not-said',
} as const;

export const readBefore = (
  change: Partial<SetUpEvidence> = {},
  lifts: readonly number[] = [0.557, 0.557, 0.5575],
) => buildOf(lifts, { setUps: [{ ...cleanSetUp, ...change }] });

export const statement = (says: SetUpStatementEvidence['says'], line = 50): SetUpStatementEvidence => ({
  id: `statement-${line}`,
  line,
  setUpId: cleanSetUp.id,
  says,
  notKnown: [],
});

export const answer = (code: string, text: string, more: Partial<AnswerEvidence> = {}): AnswerEvidence => ({
  id: `answer-${code}-${more.line ?? 60}`,
  line: 60,
  code,
  question: code,
  answer: text,
  setUpId: cleanSetUp.id,
  ...more,
});

export const knownNow = (evidence: Evidence) => assess(evidence).details.setUps[0]?.setUp;
export const askedOf = (evidence: Evidence, code: string) =>
  assess(evidence).questions.find((question) => question.code === code);
export const headline = (evidence: Evidence) => assess(evidence).headlines[0]?.sentence;
export const ratio = (evidence: Evidence) =>
  assess(evidence).quantities.find(({ id }) => id === `set-up-ratio:${cleanSetUp.id}`);
export const inInches = (si: number | undefined) =>
  si === undefined ? undefined : Number((si / IN).toFixed(6));
