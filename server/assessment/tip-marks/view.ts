import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { inInches, quantityView, valveView } from '../../../shared/schemas/answer-parts.ts';
import type { Assessment } from '../../mechanics/assessment/assessment.ts';
import type { MarkedValveDetail } from '../../mechanics/assessment/marks/detail.ts';
import { showTipMark, tipMarkView } from '../../records/tip-marks/view.ts';
import type { BuildRecord } from '../../records/whole-build/build-record.ts';
import { limitOf } from '../../records/whole-build/build-record.ts';
import { headlineView, showHeadline } from '../view/headline.ts';
import { judgementView, showJudgement } from '../view/judgement.ts';
import { assessedQuestionView, showQuestion } from '../view/question.ts';

const markedValveView = z.object({
  cylinder: z.int(),
  valve: valveView,
  markIds: z.array(z.uuid()).meta({ description: 'the one that is judged last' }),
  leastSweep: quantityView
    .optional()
    .meta({ description: 'the least this lift can have on this arm, by the computation roller-sweep' }),
  leastSweepLow: quantityView.optional().meta({ description: 'lower end of its 95 % interval' }),
  leastSweepHigh: quantityView.optional().meta({ description: 'upper end of its 95 % interval' }),
  lookAgainOver: quantityView.optional().meta({ description: 'the least and the limit together' }),
  from: z.array(z.string()).meta({ description: 'what the least sweep is calculated from' }),
  missing: z.array(z.string()).meta({ description: 'what is not known yet for it' }),
  advice: z
    .string()
    .optional()
    .meta({ description: 'what to change next, from all marks of the valve together' }),
  questions: z.array(assessedQuestionView),
});

export const judgedMarksView = z
  .object({
    marks: z.array(tipMarkView),
    limit: z.object({ overLeast: quantityView, source: z.string() }),
    valves: z.array(markedValveView),
    headlines: z.array(headlineView),
    judgements: z.array(judgementView),
  })
  .meta({ id: 'TipMarks' });

const inchesIf = (si: number | undefined) => (si === undefined ? undefined : inInches(si));

const showMarkedValve = (valve: MarkedValveDetail, { questions }: Assessment) =>
  answer(markedValveView, {
    cylinder: valve.cylinder,
    valve: valve.valve,
    markIds: valve.marks.map(({ id }) => id),
    leastSweep: inchesIf(valve.least.value),
    leastSweepLow: inchesIf(valve.least.low),
    leastSweepHigh: inchesIf(valve.least.high),
    lookAgainOver: inchesIf(valve.lookAgainOver),
    from: valve.least.from,
    missing: valve.least.lacks,
    advice: valve.advice,
    questions: questions.filter(({ id }) => valve.questionIds.includes(id)).map(showQuestion),
  });

/** The marks of a build, with what the assessment says of them. */
export function showJudgedMarks(record: BuildRecord, assessment: Assessment) {
  const limit = limitOf(record, 'sweep-over-least');
  return answer(judgedMarksView, {
    marks: record.tipMarks.map(showTipMark),
    limit: { overLeast: limit.value, source: limit.source },
    valves: assessment.details.marks.valves.map((valve) => showMarkedValve(valve, assessment)),
    headlines: assessment.headlines.filter(({ step }) => step === 'geometry').map(showHeadline),
    judgements: assessment.judgements
      .filter(({ against }) => against.to === 'least-sweep')
      .map(showJudgement),
  });
}
