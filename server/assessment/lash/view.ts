import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { inInches, quantityView, sideView } from '../../../shared/schemas/answer-parts.ts';
import type { AssessedQuestion, Assessment } from '../../mechanics/assessment/assessment.ts';
import type { LashGrowth } from '../../mechanics/lash/types.ts';
import { logOfTheseArms } from '../../records/lash-log/lash-log.ts';
import { lashLineView, nutView, showLashLine } from '../../records/lash-log/view.ts';
import { type BuildRecord, limitOf } from '../../records/whole-build/build-record.ts';
import { headlineView, showHeadline } from '../view/headline.ts';
import { assessedQuestionView, questionFields } from '../view/question.ts';

const growthView = z.object({
  cylinder: z.int(),
  valve: sideView,
  atLeast: quantityView.optional().meta({ description: 'the least it can have grown by; negative closed' }),
  atMost: quantityView.optional(),
  nut: nutView,
  heatDiffers: z.boolean().meta({ description: 'one hot and one cold: not set against each other' }),
  again: z.boolean().meta({ description: 'it had grown over the limit before it was last set' }),
});

/** A question with the valve that it is about beside its subject. */
const lashQuestionView = assessedQuestionView
  .extend({ cylinder: z.int().optional(), valve: sideView.optional() })
  .meta({ id: 'LashQuestion' });

export const lashLogView = z
  .object({
    lines: z.array(lashLineView),
    limit: z.object({ growth: quantityView, source: z.string() }),
    growths: z.array(growthView),
    questions: z.array(lashQuestionView),
    headlines: z.array(headlineView),
    stop: z.boolean().meta({ description: 'a gap grew again after it was set again' }),
  })
  .meta({ id: 'LashLog' });

const showGrowth = (growth: LashGrowth) =>
  answer(growthView, {
    cylinder: growth.cylinder,
    valve: growth.valve,
    atLeast: growth.low === undefined ? undefined : inInches(growth.low),
    atMost: growth.high === undefined ? undefined : inInches(growth.high),
    nut: growth.nut,
    heatDiffers: growth.heatDiffers,
    again: growth.again,
  });

const showLashQuestion = (question: AssessedQuestion) =>
  answer(lashQuestionView, {
    ...questionFields(question),
    cylinder: question.about.of === 'valve' ? question.about.cylinder : undefined,
    valve: question.about.of === 'valve' ? question.about.valve : undefined,
  });

/** The lash log of a build, with what the assessment says of it. */
export function showLashLog(record: BuildRecord, { details, questions, headlines, stop }: Assessment) {
  const limit = limitOf(record, 'lash-growth');
  const { valves, questionIds } = details.lash;
  return answer(lashLogView, {
    lines: logOfTheseArms(record.lashLines).map(showLashLine),
    limit: { growth: limit.value, source: limit.source },
    growths: valves.flatMap(({ growth }) => (growth === undefined ? [] : [showGrowth(growth)])),
    questions: questions.filter(({ id }) => questionIds.includes(id)).map(showLashQuestion),
    headlines: headlines.filter(({ step }) => step === 'adjuster').map(showHeadline),
    stop: stop.some(({ code }) => code === 'lash-grew-again'),
  });
}
