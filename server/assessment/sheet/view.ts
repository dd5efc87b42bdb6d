import { answer } from '../../../shared/schemas/answer.ts';
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
import { showSheetReading } from '../../records/sheet/view.ts';
import type { BuildRecord } from '../../records/whole-build/build-record.ts';
import { QUANTITY } from '../ratio-view.ts';
import { showHeadline } from '../view/headline.ts';
import { showJudgement } from '../view/judgement.ts';
import { showQuestion } from '../view/question.ts';
import { type Order, sheetJudgements, springsOf } from './of-sheet.ts';
import { sheetView } from './sheet-schema.ts';

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
