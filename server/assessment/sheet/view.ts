import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { sideView as side } from '../../../shared/schemas/answer-parts.ts';
import { out } from '../../../shared/schemas/outputs.ts';
import { encoded } from '../../compute/encode.ts';
import { sheetReadingView, showSheetReading } from '../../records/sheet/view.ts';
import { QUANTITY } from '../ratio/ratio-view.ts';
import type { OnSpring, Sheet } from './sheet.ts';
import type { Swap } from './swaps.ts';
import type { SheetCell, ValveRow } from './valve-rows.ts';

const cell = z.object({
  kind: z.string(),
  spring: z.string(),
  value: out('length', 'mean of the passes; left out between two gauges').optional(),
  low: out('length', 'the gauge that goes').optional(),
  high: out('length', 'the gauge that does not').optional(),
  passes: z.int(),
  spread: out('length', 'largest less smallest pass').optional(),
  verdict: z.enum(['clear', 'close', 'short']).optional(),
  because: z.array(z.string()),
  readingIds: z.array(z.uuid()),
});

const valve = z.object({
  cylinder: z.int(),
  valve: side,
  armId: z.uuid().optional(),
  figures: z.array(cell),
});

const ratio = z.object({
  cylinder: z.int(),
  valve: side,
  value: z.number().optional(),
  low: z.number().optional(),
  high: z.number().optional(),
});

const odd = z.object({
  cylinder: z.int(),
  valve: side,
  valveOff: out('length', 'valve lift less the median of its siblings').optional(),
  lobeOff: out('length', 'lobe lift less the median of its siblings').optional(),
  outlier: z.boolean(),
  cause: z.enum(['lobe', 'rocker-or-position', 'both', 'measure-lobe', 'cannot-tell']),
  words: z.string(),
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
      lobesDown: z.array(z.object({ cylinder: z.int(), by: out('length', 'below its siblings') })),
    }),
  ),
  swaps: z.array(
    z.object({
      side,
      armIds: z.array(z.uuid()),
      places: z.array(z.string()),
      part: out('length', 'first arm less second'),
      position: out('length', 'first place less second'),
      verdict: z.enum(['part', 'position', 'both', 'gone']),
      words: z.string(),
    }),
  ),
});

export const sheetView = z
  .object({
    order: z.enum(['firing', 'bank']),
    cylinders: z.array(z.int()),
    valves: z.array(valve),
    springs: z.array(onSpring),
    stop: z.boolean(),
    readings: z.array(sheetReadingView),
  })
  .meta({ id: 'Sheet' });

const figureOf = (cell: SheetCell) => ({
  kind: cell.kind,
  spring: cell.spring,
  value: cell.value,
  low: cell.low,
  high: cell.high,
  passes: cell.passes,
  spread: cell.spread,
  verdict: cell.verdict,
  because: cell.because,
  readingIds: cell.readings.map(({ id }) => id),
});

const valveOf = (row: ValveRow) => ({
  cylinder: row.cylinder,
  valve: row.valve,
  armId: row.armId,
  figures: row.cells.map(figureOf),
});

const swapOf = (swap: Swap) => ({
  side: swap.side,
  armIds: swap.arms,
  places: swap.places,
  part: swap.part,
  position: swap.position,
  verdict: swap.verdict,
  words: swap.words,
});

const springOf = (on: OnSpring, rows: readonly ValveRow[]) => ({
  spring: on.spring,
  quantity: QUANTITY[on.spring],
  ratios: rows.flatMap(({ cylinder, valve: at }) => {
    const found = on.ratios.get(`${cylinder} ${at}`);
    return found === undefined
      ? []
      : [{ cylinder, valve: at, value: found.value, low: found.low, high: found.high }];
  }),
  sides: on.sides,
  swaps: on.swaps.map(swapOf),
});

export const showSheet = (sheet: Sheet) =>
  answer(sheetView, {
    order: sheet.order,
    cylinders: sheet.cylinders,
    valves: encoded(sheetView.shape.valves, sheet.rows.map(valveOf), 'inch'),
    springs: encoded(
      sheetView.shape.springs,
      sheet.springs.map((on) => springOf(on, sheet.rows)),
      'inch',
    ),
    stop: sheet.stop,
    readings: sheet.readings.map(showSheetReading),
  });
