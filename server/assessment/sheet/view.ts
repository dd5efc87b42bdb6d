import { z } from 'zod';
import { out } from '../../../shared/schemas/outputs.ts';
import { encoderFor } from '../../compute/encode.ts';
import { entryShape, showEntry } from '../../records/corrections/view.ts';
import type { SheetReading } from '../../records/sheet/sheet-table.ts';
import type { Sheet } from './sheet.ts';

const side = z.enum(['intake', 'exhaust']);

export const sheetReadingView = z
  .object({
    ...entryShape,
    cylinder: z.int(),
    valve: side,
    kind: z.string(),
    typed: z.string(),
    readAs: z.string(),
    unit: z.string(),
    value: z.number().optional(),
    moreThan: z.number().meta({ description: 'the gauge that goes' }).optional(),
    lessThan: z.number().meta({ description: 'the gauge that does not' }).optional(),
    tool: z.string(),
    spring: z.string(),
    lifter: z.string(),
    arms: z.string(),
    armId: z.uuid().optional(),
  })
  .meta({ id: 'SheetReading' });

export function showSheetReading(entry: SheetReading): z.output<typeof sheetReadingView> {
  const { reading, armId, ...rest } = entry;
  const { low, high, ...gauged } = reading;
  return {
    ...showEntry(rest),
    ...gauged,
    ...(low === undefined ? {} : { moreThan: low }),
    ...(high === undefined ? {} : { lessThan: high }),
    ...(armId === undefined ? {} : { armId }),
  };
}

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

const computed = z.object({ valves: z.array(valve), springs: z.array(onSpring) });

export const sheetView = z
  .object({
    order: z.enum(['firing', 'bank']),
    cylinders: z.array(z.int()),
    ...computed.shape,
    stop: z.boolean(),
    readings: z.array(sheetReadingView),
  })
  .meta({ id: 'Sheet' });

const encode = encoderFor(computed);

export const QUANTITY = {
  light: 'light-spring ratio',
  running: 'running-spring ratio',
  'not-said': 'not known',
} as const;

export function showSheet(sheet: Sheet) {
  const encoded = encode(
    {
      valves: sheet.rows.map(({ cells, ...row }) => ({
        ...row,
        figures: cells.map(({ readings, ...rest }) => ({
          ...rest,
          readingIds: readings.map(({ id }) => id),
        })),
      })),
      springs: sheet.springs.map(({ ratios, swaps, ...rest }) => ({
        ...rest,
        quantity: QUANTITY[rest.spring],
        ratios: sheet.rows.flatMap(({ cylinder, valve: at }) => {
          const found = ratios.get(`${cylinder} ${at}`);
          return found === undefined ? [] : [{ cylinder, valve: at, ...found }];
        }),
        swaps: swaps.map(({ arms, ...swap }) => ({ ...swap, armIds: arms })),
      })),
    },
    'inch',
  );
  return {
    order: sheet.order,
    cylinders: [...sheet.cylinders],
    ...(typeof encoded === 'object' && encoded !== null ? encoded : {}),
    stop: sheet.stop,
    readings: sheet.readings.map(showSheetReading),
  };
}
