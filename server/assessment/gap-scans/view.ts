import { z } from 'zod';
import { fromSi } from '../../../shared/quantities/units.ts';
import { answer } from '../../../shared/schemas/answer.ts';
import { inInches, quantityView, valveView } from '../../../shared/schemas/answer-parts.ts';
import type { Assessment } from '../../mechanics/assessment/assessment.ts';
import type { ScanDetail } from '../../mechanics/assessment/scans/detail.ts';
import { gapScanView, showGapScan } from '../../records/gap-scans/view.ts';
import type { BuildRecord } from '../../records/whole-build/build-record.ts';
import { headlineView, showHeadline } from '../view/headline.ts';
import { judgementView, showJudgement } from '../view/judgement.ts';
import { assessedQuestionView, showQuestion } from '../view/question.ts';

export const judgedScanView = z.object({
  scanId: z.string(),
  cylinder: z.int(),
  valve: valveView,
  arms: z.enum(['these', 'before']),
  least: quantityView
    .optional()
    .meta({ description: 'the least gap, of a curve through the readings near it' }),
  low: quantityView.optional().meta({ description: 'lower end of its 95 % interval, with no lash in' }),
  high: quantityView.optional().meta({ description: 'upper end of its 95 % interval' }),
  atCrankAngle: quantityView.optional().meta({ description: 'after top dead centre; negative before' }),
  atEdge: z
    .enum(['none', 'first', 'last'])
    .optional()
    .meta({ description: 'at an end of the scan there is no least yet' }),
  limit: quantityView,
  limitSource: z.string(),
  word: z
    .enum(['clear', 'close', 'short'])
    .optional()
    .meta({ description: 'left out while anything is missing' }),
  missing: z.array(z.string()).meta({ description: 'what it needs before its word, or for a closer one' }),
  sentence: z.string(),
});

const inchesIf = (si: number | undefined) => (si === undefined ? undefined : inInches(si));

export const showJudgedScan = (scan: ScanDetail) =>
  answer(judgedScanView, {
    scanId: scan.scanId,
    cylinder: scan.cylinder,
    valve: scan.valve,
    arms: scan.arms,
    least: inchesIf(scan.least.value),
    low: inchesIf(scan.least.low),
    high: inchesIf(scan.least.high),
    atCrankAngle:
      scan.crankAngle === undefined
        ? undefined
        : { value: fromSi(scan.crankAngle, 'deg').value, unit: 'deg' as const },
    atEdge: scan.edge,
    limit: inInches(scan.limit.value),
    limitSource: scan.limit.source,
    word: scan.word,
    missing: scan.lacks,
    sentence: scan.said,
  });

export const judgedScansView = z
  .object({
    scans: z.array(gapScanView),
    judged: z.array(judgedScanView).meta({ description: 'each scan that stands' }),
    judgements: z
      .array(judgementView)
      .meta({ description: 'piston to valve of each valve: the worst of what was read stands' }),
    headlines: z.array(headlineView),
    questions: z.array(assessedQuestionView),
  })
  .meta({ id: 'GapScans' });

/** The scans of a build, with what the assessment says of them. */
export const showJudgedScans = (record: BuildRecord, assessment: Assessment) =>
  answer(judgedScansView, {
    scans: record.gapScans.map(showGapScan),
    judged: assessment.details.scans.scans.map(showJudgedScan),
    judgements: assessment.judgements
      .filter(({ against }) => against.to === 'limit' && against.gap === 'piston-to-valve')
      .map(showJudgement),
    headlines: assessment.headlines.filter(({ step }) => step === 'scan').map(showHeadline),
    questions: assessment.questions.filter(({ step }) => step === 'scan').map(showQuestion),
  });
