import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { valveView as side, valveView } from '../../../shared/schemas/answer-parts.ts';
import { out } from '../../../shared/schemas/outputs.ts';
import { encoded } from '../../compute/encode.ts';
import type { Assessment } from '../../mechanics/assessment/assessment.ts';
import type {
  SheetCellDetail,
  SheetDetail,
  SheetOddDetail,
  SheetRowDetail,
  SheetSideDetail,
  SheetSwapDetail,
} from '../../mechanics/assessment/sheet/detail.ts';
import { needsOf } from '../../mechanics/assessment/sheet/swap-said.ts';
import { sheetReadingView, showSheetReading } from '../../records/sheet/view.ts';
import type { BuildRecord } from '../../records/whole-build/build-record.ts';
import { QUANTITY } from '../ratio-view.ts';
import { headlineView, showHeadline } from '../view/headline.ts';
import { judgementView, showJudgement } from '../view/judgement.ts';
import { assessedQuestionView, showQuestion } from '../view/question.ts';
import { type Order, sheetJudgements, springsOf } from './of-sheet.ts';

const cell = z.object({
  kind: z.string(),
  spring: z.string().optional().meta({ description: 'of a valve lift' }),
  value: out('length', 'mean of the passes that go together; left out between two gauges').optional(),
  low: out('length', 'the gauge that goes, or the lower end').optional(),
  high: out('length', 'the gauge that does not, or the upper end').optional(),
  passes: z.int(),
  spread: out('length', 'largest less smallest pass').optional(),
  apart: z.array(z.string()).meta({ description: 'passes that stand apart and are not in the figure' }),
  readAgain: z
    .array(z.string())
    .meta({ description: 'passes that an answer found wrong and that were taken again: not in the figure' }),
  verdict: z.enum(['clear', 'close', 'short']).optional(),
  judgementId: z.string().optional(),
  because: z.array(z.string()).meta({ description: 'what it still lacks' }),
  readingIds: z.array(z.uuid()),
});

const valve = z.object({
  cylinder: z.int(),
  valve: side,
  armId: z.uuid().optional(),
  figures: z.array(cell),
  questionIds: z.array(z.string()),
  inDoubt: z.boolean().meta({ description: 'not set against the others before its question is answered' }),
});

const ratio = z.object({
  cylinder: z.int(),
  valve: side,
  value: z.number().optional(),
  low: z.number().optional(),
  high: z.number().optional(),
  lobeFrom: z.enum(['read', 'card']),
});

const odd = z.object({
  cylinder: z.int(),
  valve: side,
  valveOff: out('length', 'valve lift less the median of the others').optional(),
  lobeOff: out('length', 'lobe lift less the median of the others').optional(),
  outlier: z.boolean(),
  cause: z.enum([
    'lobe',
    'rocker-or-position',
    'part',
    'position',
    'mark',
    'both',
    'measure-lobe',
    'cannot-tell',
  ]),
  words: z.string(),
  judgementId: z.string(),
  swap: z.string().meta({ description: 'the swap that would decide' }).optional(),
});

const onSpring = z.object({
  spring: z.string(),
  quantity: z.enum(['light-spring ratio', 'running-spring ratio', 'not known']),
  ratios: z.array(ratio),
  sides: z.array(
    z.object({
      side,
      medians: z.object({
        lobeLift: out('length', 'median lobe lift').optional(),
        valveLift: out('length', 'median valve lift').optional(),
        ratio: z.number().optional(),
      }),
      odd: z.array(odd),
      lobesDown: z.array(
        z.object({ cylinder: z.int(), valve: valveView, by: out('length', 'below the others') }),
      ),
    }),
  ),
  swaps: z.array(
    z.object({
      side,
      armIds: z.array(z.uuid()),
      places: z.array(z.string()),
      part: out('length', 'first arm less second, where all four were read').optional(),
      position: out('length', 'first valve less second, where all four were read').optional(),
      verdict: z.enum(['part', 'position', 'both', 'cannot-tell']),
      oddArmId: z.uuid().optional().meta({ description: 'the arm that differs from the others' }),
      oddPlace: z.string().optional().meta({ description: 'the valve that differs from the others' }),
      needs: z.array(z.string()),
      words: z.string(),
      judgementId: z.string(),
    }),
  ),
});

export const sheetView = z
  .object({
    order: z.enum(['firing', 'bank']),
    cylinders: z.array(z.int()),
    valves: z.array(valve),
    springs: z.array(onSpring),
    headlines: z.array(headlineView),
    judgements: z.array(judgementView),
    questions: z.array(assessedQuestionView),
    stop: z.boolean().meta({ description: 'nobody turns it: see the stop of the assessment' }),
    readings: z.array(sheetReadingView),
  })
  .meta({ id: 'Sheet' });

const figureOf = ({ word, lacks, entryIds, apart, readAgain = [], ...own }: SheetCellDetail) => ({
  kind: own.kind,
  spring: own.spring,
  value: own.value,
  low: own.low,
  high: own.high,
  passes: own.passes,
  spread: own.spread,
  apart: apart.map(({ entryId }) => entryId),
  readAgain,
  verdict: word,
  judgementId: own.judgementId,
  because: lacks,
  readingIds: entryIds,
});

const valveOf = (row: SheetRowDetail) => ({
  cylinder: row.cylinder,
  valve: row.valve,
  armId: row.armId,
  figures: row.cells.map(figureOf),
  questionIds: row.questionIds,
  inDoubt: row.inDoubt,
});

type Words = (judgementId: string) => string;

const oddOf = (each: SheetOddDetail, words: Words) => ({
  cylinder: each.cylinder,
  valve: each.valve,
  valveOff: each.valveOff,
  lobeOff: each.lobeOff,
  outlier: each.outlier,
  cause: each.cause,
  words: words(each.judgementId),
  judgementId: each.judgementId,
  swap: each.swap,
});

const sideOf = (each: SheetSideDetail, words: Words) => ({
  side: each.side,
  medians: each.medians,
  odd: each.odd.map((one) => oddOf(one, words)),
  lobesDown: each.lobesDown,
});

const swapOf = (swap: SheetSwapDetail, words: Words) => ({
  side: swap.side,
  armIds: swap.arms,
  places: swap.places,
  part: swap.part,
  position: swap.position,
  verdict: swap.verdict,
  oddArmId: swap.oddArm,
  oddPlace: swap.oddPlace,
  needs: needsOf(swap),
  words: words(swap.judgementId),
  judgementId: swap.judgementId,
});

const springOf = ({ ratios, sides, swaps }: SheetDetail, spring: keyof typeof QUANTITY, words: Words) => ({
  spring,
  quantity: QUANTITY[spring],
  ratios: ratios
    .filter((each) => each.spring === spring)
    .map(({ cylinder, valve: at, value, low, high, lobeFrom }) => ({
      cylinder,
      valve: at,
      value,
      low,
      high,
      lobeFrom,
    })),
  sides: sides.filter((each) => each.spring === spring).map((each) => sideOf(each, words)),
  swaps: swaps.filter((each) => each.spring === spring).map((each) => swapOf(each, words)),
});

export function showSheet(record: BuildRecord, assessment: Assessment, order: Order) {
  const { sheet } = assessment.details;
  const words: Words = (judgementId) =>
    assessment.judgements.find(({ id }) => id === judgementId)?.sentence ?? '';
  return answer(sheetView, {
    order,
    cylinders: sheet.orders[order],
    valves: encoded(
      sheetView.shape.valves,
      sheet.orders[order].flatMap((cylinder) =>
        sheet.rows.filter((row) => row.cylinder === cylinder).map(valveOf),
      ),
      'inch',
    ),
    springs: encoded(
      sheetView.shape.springs,
      springsOf(sheet).map((spring) => springOf(sheet, spring, words)),
      'inch',
    ),
    headlines: assessment.headlines.filter(({ step }) => step === 'sheet').map(showHeadline),
    judgements: sheetJudgements(assessment).map(showJudgement),
    questions: assessment.questions.filter(({ step }) => step === 'sheet').map(showQuestion),
    stop: assessment.stop.length + assessment.notToRun.length > 0,
    readings: record.sheetReadings.map(showSheetReading),
  });
}
