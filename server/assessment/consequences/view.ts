import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { out } from '../../../shared/schemas/outputs.ts';
import { encoded } from '../../compute/encode.ts';
import type { FigureRow } from '../../mechanics/consequences/types.ts';
import type { SetUpConsequences } from './consequences.ts';

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
});

const figureOf = (dimension: FigureRow['dimension']) =>
  z.object({
    name: z.string(),
    title: z.string(),
    before: out(dimension, 'with the ratio the card assumes').optional(),
    after: out(dimension, 'with the measured ratio').optional(),
    halfWidth: out(dimension, 'half-width of the figure after, 95 %, from the ratio').optional(),
    missing: z.array(z.string()),
  });

const ratioView = z.object({
  value: z.number(),
  halfWidth: z.number().meta({ description: 'half-width of the 95 % interval' }),
});

/** The consequences of a set-up's ratio as JSON has them. */
export const consequencesView = z
  .object({
    setUpId: z.uuid(),
    revision: z.object({ setUp: z.int(), now: z.int() }),
    ratioBefore: ratioView.optional(),
    ratioAfter: ratioView.extend({ spring: z.enum(['light', 'running']) }).optional(),
    lengths: z.array(figureOf('length')),
    loads: z.array(figureOf('load')),
    gaps: z.array(gapView),
    stop: z.boolean(),
    adjusters: z.string(),
    limits: z.array(z.object({ name: z.string(), source: z.string(), revision: z.int() })),
    measured: z.array(z.object({ readingId: z.uuid(), kind: z.string(), readAs: z.string() })),
    notes: z.array(z.string()),
    assumptions: z.array(z.string()),
    cautions: z.array(z.string()),
  })
  .meta({ id: 'Consequences' });

/** The gap less its limit, where there is one figure for it. */
export const marginOf = (row: SetUpConsequences['gaps'][number]): number | undefined =>
  row.after?.value === undefined ? undefined : row.after.value - row.limit.value;

type Figure = SetUpConsequences['figures'][number];
type GapRow = SetUpConsequences['gaps'][number];

const figureFields = (row: Figure) => ({
  name: row.name,
  title: row.title,
  before: row.before,
  after: row.after,
  halfWidth: row.halfWidth,
  missing: row.missing,
});

const gapFields = (row: GapRow) => ({
  name: row.name,
  title: row.title,
  before: row.before,
  after: row.after,
  limit: row.limit,
  margin: marginOf(row),
  verdict: row.verdict,
  because: row.because,
  missing: row.missing,
  measure: row.measure,
});

export function showConsequences(found: SetUpConsequences) {
  const { lengths, loads, gaps } = consequencesView.shape;
  const figures = (dimension: Figure['dimension']) =>
    found.figures.filter((row) => row.dimension === dimension).map(figureFields);
  return answer(consequencesView, {
    setUpId: found.found.setUp.id,
    revision: found.revision,
    ratioBefore: found.input.before,
    ratioAfter: found.input.after,
    lengths: encoded(lengths, figures('length'), 'inch'),
    loads: encoded(loads, figures('load'), 'inch'),
    gaps: encoded(gaps, found.gaps.map(gapFields), 'inch'),
    stop: found.stop,
    adjusters: found.adjusters,
    limits: found.limits,
    measured: found.measured.map(({ id, kind, reading }) => ({
      readingId: id,
      kind,
      readAs: reading.readAs,
    })),
    notes: found.notes,
    assumptions: found.assumptions,
    cautions: found.cautions,
  });
}
