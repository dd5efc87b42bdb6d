import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence, LashEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { lashPart } from '../../../server/mechanics/assessment/lash/lash.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from './plain-build.ts';

/** A gap of one valve in the log, as it was found unless said otherwise. */
export const line = (
  number: number,
  day: string,
  gap: number,
  more: Partial<LashEvidence> = {},
): LashEvidence => ({
  id: `l${number}`,
  line: number,
  standing: true,
  cylinder: 3,
  valve: 'exhaust',
  gap: { value: gap * IN },
  readAs: `${gap} in`,
  moment: 'found',
  engine: 'cold',
  nut: 'held',
  day,
  ...more,
});
/** The plain build with that log. */
export const log = (lash: readonly LashEvidence[]): Evidence => ({ ...PLAIN, lash });

/** A call about adjusters, or about what is named. */
export const about = (evidence: Evidence, goal: Evidence['call']['goal'] = 'adjuster'): Evidence => ({
  ...evidence,
  call: { ...evidence.call, goal },
});

/** What is told of it, by the parts that a call reads out. */
export function toldOf(evidence: Evidence) {
  const { questions, headlines, notToRun, next, details } = assess(evidence);
  return {
    details,
    next,
    codes: questions.flatMap(({ code, answered }) => (answered === undefined ? [code] : [])),
    asked: (code: string) => questions.find((each) => each.code === code),
    told: headlines.map(({ sentence }) => sentence).join('\n'),
    stops: notToRun.map(({ sentence }) => sentence).join('\n'),
  };
}

/** The same, with one of its questions answered; an answer to what is not asked is a mistake of the test. */
export function answering(evidence: Evidence, code: string, answer: string, at = 900): Evidence {
  const question = assess(evidence).questions.find((each) => each.code === code);
  if (question === undefined) throw new Error(`nobody asks ${code}`);
  const { id: questionId, ask } = question;
  const answers = [...evidence.answers, { id: `a${at}`, line: at, code, questionId, question: ask, answer }];
  return { ...evidence, answers };
}

/** What the log leaves to be done. */
export const workOfLog = (evidence: Evidence) => {
  const { work } = lashPart(evidence);
  return { ...work, mend: work.mend[0], lookOn: work.lookOn[0] };
};

/** With these lines as well. */
export const withLines = (evidence: Evidence, ...lines: readonly LashEvidence[]): Evidence => ({
  ...evidence,
  lash: [...evidence.lash, ...lines],
});
