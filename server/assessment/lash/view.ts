import { z } from 'zod';
import { fromSi } from '../../../shared/quantities/units.ts';
import { answer } from '../../../shared/schemas/answer.ts';
import { inInches, quantityView, valveView } from '../../../shared/schemas/answer-parts.ts';
import type { AssessedQuestion, Assessment } from '../../mechanics/assessment/assessment.ts';
import { lacksSaid } from '../../mechanics/assessment/common/lack.ts';
import type { SettingDetail, ShimRow } from '../../mechanics/assessment/lash/detail.ts';
import { GROWTHS_TOLD, growthTold } from '../../mechanics/lash/growth.ts';
import type { LashGrowth } from '../../mechanics/lash/types.ts';
import { logOfTheseArms } from '../../records/lash-log/lash-log.ts';
import { lashLineView, nutView, showLashLine } from '../../records/lash-log/view.ts';
import { type BuildRecord, limitOf } from '../../records/whole-build/build-record.ts';
import { headlineView, showHeadline } from '../view/headline.ts';
import { assessedQuestionView, questionFields } from '../view/question.ts';

const growthView = z.object({
  cylinder: z.int(),
  valve: valveView,
  atLeast: quantityView.optional().meta({ description: 'the least it can have grown by; negative closed' }),
  atMost: quantityView.optional(),
  nut: nutView,
  heatDiffers: z.boolean().meta({ description: 'one hot and one cold: not set against each other' }),
  again: z.boolean().meta({ description: 'it had grown over the limit before it was last set' }),
  told: z.enum(GROWTHS_TOLD).meta({
    description: 'what feelers tell of it; within their steps neither growth nor none can be told',
  }),
});

/** A question with the valve that it is about beside its subject. */
const lashQuestionView = assessedQuestionView
  .extend({ cylinder: z.int().optional(), valve: valveView.optional() })
  .meta({ id: 'LashQuestion' });

const positionView = z.object({
  firing: z.int().meta({ description: 'the cylinder at its firing top dead centre' }),
  intakes: z.array(z.int()).meta({ description: 'cylinders whose intake is set there' }),
  exhausts: z.array(z.int()).meta({ description: 'cylinders whose exhaust is set there' }),
});

const settingView = z
  .object({
    said: z.array(z.string()),
    missing: z.array(z.string()),
    rows: z
      .array(
        z.object({
          cylinder: z.int(),
          stands: z.string().optional().meta({ description: 'where it stands, by the bank order' }),
          setIntakeAt: z
            .int()
            .meta({ description: 'degrees after the first firing: its exhaust begins to open' }),
          setExhaustAt: z
            .int()
            .meta({ description: 'degrees after the first firing: its intake nearly closed' }),
        }),
      )
      .meta({ description: 'in the firing order; empty under a stop' }),
    twoPositions: z
      .array(positionView)
      .optional()
      .meta({ description: 'both positions, a turn of the crank apart; left out where that does not apply' }),
  })
  .meta({ id: 'SettingOrder', description: 'which valve is set when' });

const shimView = z
  .object({
    cylinder: z.int(),
    valve: valveView,
    fitted: quantityView.optional(),
    found: quantityView.optional().meta({ description: 'the gap, where it is one figure' }),
    foundAtLeast: quantityView.optional().meta({ description: 'the gauges that it lies between' }),
    foundAtMost: quantityView.optional(),
    wanted: quantityView.optional(),
    shim: quantityView.optional().meta({ description: 'thickness that gives the wanted lash' }),
    choice: z
      .object({
        shim: quantityView,
        lash: quantityView.meta({ description: 'the lash that it gives' }),
        atLeast: quantityView
          .optional()
          .meta({ description: 'the least that it may be, where the gap was found between two feelers' }),
        atMost: quantityView.optional(),
        from: z.enum(['own', 'stock', 'valve']),
        fromValve: z.object({ cylinder: z.int(), valve: valveView }).optional(),
      })
      .optional()
      .meta({ description: 'out of the shims in the engine and in stock, each used once' }),
    toHave: quantityView.optional().meta({
      description: 'no shim that is there comes near enough: one of this thickness is to be had first',
    }),
    beside: z
      .array(z.object({ shim: quantityView, lash: quantityView }))
      .optional()
      .meta({
        description: 'beside toHave: the next thinner and thicker in stock, with the lash that each leaves',
      }),
    lacks: z.array(z.string()),
    sentence: z.string(),
  })
  .meta({ id: 'LashShim' });

export const lashLogView = z
  .object({
    lines: z.array(lashLineView),
    limit: z.object({ growth: quantityView, source: z.string() }),
    growths: z.array(growthView),
    questions: z.array(lashQuestionView),
    headlines: z.array(headlineView),
    shims: z.array(shimView).meta({ description: 'of a bucket engine; empty of others' }),
    settingOrder: settingView,
    stop: z.boolean().meta({ description: 'a gap grew again after it was set again' }),
  })
  .meta({ id: 'LashLog' });

const showSetting = ({ said, lacks, rows, twoPositions }: SettingDetail) =>
  answer(settingView, {
    said,
    missing: lacks,
    rows: rows.map(({ stands, ...row }) => ({ ...row, stands })),
    twoPositions,
  });

const inMm = (si: number) => ({ value: fromSi(si, 'mm').value, unit: 'mm' as const });
const mmIf = (si: number | undefined) => (si === undefined ? undefined : inMm(si));

const showShim = ({
  cylinder,
  valve,
  fitted,
  found,
  wanted,
  shim,
  choice,
  toHave,
  beside,
  lacks,
  sentence,
}: ShimRow) =>
  answer(shimView, {
    cylinder,
    valve,
    fitted: mmIf(fitted),
    found: mmIf(found.value),
    foundAtLeast: mmIf(found.value === undefined ? found.low : undefined),
    foundAtMost: mmIf(found.value === undefined ? found.high : undefined),
    wanted: mmIf(wanted),
    shim: mmIf(shim),
    choice:
      choice === undefined
        ? undefined
        : {
            shim: inMm(choice.shim),
            lash: inMm(choice.lash),
            atLeast: mmIf(choice.between?.low),
            atMost: mmIf(choice.between?.high),
            from: choice.from,
            fromValve: choice.fromValve,
          },
    toHave: mmIf(toHave),
    beside: beside?.map(({ shim: each, lash }) => ({ shim: inMm(each), lash: inMm(lash) })),
    lacks: lacksSaid(lacks),
    sentence,
  });

const showGrowth = (growth: LashGrowth) =>
  answer(growthView, {
    cylinder: growth.cylinder,
    valve: growth.valve,
    atLeast: growth.low === undefined ? undefined : inInches(growth.low),
    atMost: growth.high === undefined ? undefined : inInches(growth.high),
    nut: growth.nut,
    heatDiffers: growth.heatDiffers,
    again: growth.again,
    told: growthTold(growth),
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
  const { valves, questionIds, setting } = details.lash;
  return answer(lashLogView, {
    lines: logOfTheseArms(record.lashLines).map(showLashLine),
    limit: { growth: limit.value, source: limit.source },
    growths: valves.flatMap(({ growth }) => (growth === undefined ? [] : [showGrowth(growth)])),
    questions: questions.filter(({ id }) => questionIds.includes(id)).map(showLashQuestion),
    headlines: headlines.filter(({ step }) => step === 'adjuster').map(showHeadline),
    shims: details.lash.shims.rows.map(showShim),
    settingOrder: showSetting(setting),
    stop: stop.some(({ code }) => code === 'lash-grew-again'),
  });
}
