import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { out } from '../../../shared/schemas/outputs.ts';
import { encoded } from '../../compute/encode.ts';
import type { Assessment } from '../../mechanics/assessment/assessment.ts';
import type {
  ChangeDetail,
  ChangeFigure,
  ChangeGap,
  ChangeRatio,
} from '../../mechanics/assessment/change/detail.ts';
import { lacksSaid } from '../../mechanics/assessment/common/lack.ts';
import type { BuildRecord } from '../../records/whole-build/build-record.ts';
import { judgementView, showJudgement } from '../view/judgement.ts';
import { showSubject, subjectView } from '../view/subject.ts';
import { limitsUsed, readingsUsed } from './of-valve.ts';

const gap = z.object({
  value: out('length', 'best value; left out for a reading between two gauges').optional(),
  low: out('length', 'lower end; left out where no gauge has found it').optional(),
  high: out('length', 'upper end; left out where no gauge has found it').optional(),
  basis: z.enum(['measured', 'calculated']),
});

const gapView = z.object({
  name: z.string(),
  title: z.string(),
  before: gap.optional(),
  after: gap.optional(),
  limit: z.object({ value: out('length', 'least gap wanted'), source: z.string() }),
  margin: out('length', 'the gap after less its limit').optional(),
  verdict: z.enum(['clear', 'close', 'short']).optional(),
  because: z.array(z.string()),
  missing: z.array(z.string()),
  measure: z.boolean().meta({ description: 'nothing but a measured gap will do' }),
  judgementId: z.string().optional(),
});

const figureOf = (dimension: ChangeFigure['dimension']) =>
  z.object({
    name: z.string(),
    title: z.string(),
    before: out(dimension, 'with the ratio before').optional(),
    after: out(dimension, 'with the ratio after').optional(),
    halfWidth: out(dimension, 'half-width of the figure after, 95 %; the wider of its two sides').optional(),
    low: out(dimension, 'lower end of the figure after').optional(),
    high: out(dimension, 'upper end of the figure after').optional(),
    missing: z.array(z.string()),
  });

const ratioView = z.object({
  value: z.number(),
  halfWidth: z.number().meta({ description: 'half-width of the 95 % interval; the wider of its two sides' }),
  low: z.number(),
  high: z.number(),
  from: z.enum(['card', 'sold-as', 'family', 'planned', 'measured']),
  spring: z.enum(['light', 'running']).optional().meta({ description: 'of a measured one' }),
});

/** What a ratio does on one valve, or on a side that nothing was read of; of several plans one. */
export const changeFieldsView = {
  ratioBefore: ratioView.optional(),
  ratioAfter: ratioView.optional(),
  lengths: z.array(figureOf('length')),
  loads: z.array(figureOf('load')),
  gaps: z.array(gapView).meta({ description: 'worst first' }),
  judgements: z.array(judgementView),
  checks: z.array(z.string()).meta({ description: 'what is looked at again with other arms' }),
  adjusters: z.string().optional(),
  limits: z.array(z.object({ name: z.string(), source: z.string(), revision: z.int() })),
  measured: z.array(z.object({ readingId: z.uuid(), kind: z.string(), readAs: z.string() })),
  notes: z.array(z.string()).meta({ description: 'what must be known before it can be given, or believed' }),
  assumptions: z.array(z.string()),
  cautions: z.array(z.string()),
};

export const changeView = z
  .object({
    key: z
      .string()
      .meta({ description: 'names it where it is put on the record: 1-intake, exhaust:planned-1.7' }),
    about: subjectView,
    planned: z.number().optional().meta({ description: 'the ratio that is to be fitted' }),
    ...changeFieldsView,
  })
  .meta({ id: 'Change', description: 'what a ratio does on one valve, or on one side' });

const halfWidth = ({ value, low, high }: { value: number; low: number; high: number }) =>
  Math.max(high - value, value - low);

const showRatio = (ratio: ChangeRatio | undefined) =>
  ratio &&
  answer(ratioView, {
    value: ratio.value,
    halfWidth: halfWidth(ratio),
    low: ratio.low,
    high: ratio.high,
    from: ratio.from,
    spring: ratio.spring,
  });

const figureFields = ({ name, title, before, after, lacks }: ChangeFigure) => ({
  name,
  title,
  before,
  after: after?.value,
  halfWidth: after && halfWidth(after),
  low: after?.low,
  high: after?.high,
  missing: lacks,
});

const gapFields = (row: ChangeGap) => ({
  name: row.name,
  title: row.title,
  before: row.before,
  after: row.after,
  limit: row.limit,
  margin: row.margin,
  verdict: row.word,
  because: row.because,
  missing: lacksSaid(row.lacks),
  measure: row.measure,
  judgementId: row.judgementId,
});

/** Where nothing can be calculated: what it waits for. */
const waitsFor = ({ needs }: Assessment): string[] =>
  needs.filter(({ step, have }) => step === 'consequences' && !have).map(({ what }) => what);

const lacksOf = ({ before, after }: ChangeDetail) =>
  lacksSaid([...(before?.lacks ?? []), ...(after?.lacks ?? [])]);

/** The fields of one valve; of nothing, where nothing can be calculated. */
export function changeFields(record: BuildRecord, assessment: Assessment, detail: ChangeDetail | undefined) {
  const figures = (dimension: ChangeFigure['dimension']) =>
    (detail?.figures ?? []).filter((row) => row.dimension === dimension).map(figureFields);
  const rows = detail?.gaps ?? [];
  const judged = new Set(rows.map(({ judgementId }) => judgementId));
  return {
    ratioBefore: showRatio(detail?.before),
    ratioAfter: showRatio(detail?.after),
    lengths: encoded(changeFieldsView.lengths, figures('length'), 'inch'),
    loads: encoded(changeFieldsView.loads, figures('load'), 'inch'),
    gaps: encoded(changeFieldsView.gaps, rows.map(gapFields), 'inch'),
    judgements: assessment.judgements.filter(({ id }) => judged.has(id)).map(showJudgement),
    checks: (detail?.checks ?? []).map(({ sentence }) => sentence),
    adjusters: detail?.adjusters === '' ? undefined : detail?.adjusters,
    limits: detail === undefined ? [] : limitsUsed(record, detail),
    measured: (detail === undefined ? [] : readingsUsed(record, detail)).map(({ id, kind, reading }) => ({
      readingId: id,
      kind,
      readAs: reading.readAs,
    })),
    notes: detail === undefined ? waitsFor(assessment) : lacksOf(detail),
    assumptions: detail?.assumptions ?? [],
    cautions: detail?.cautions ?? [],
  };
}

export const showChange = (record: BuildRecord, assessment: Assessment, detail: ChangeDetail) =>
  answer(changeView, {
    key: detail.key,
    about: showSubject(detail.about),
    planned: detail.plan,
    ...changeFields(record, assessment, detail),
  });
