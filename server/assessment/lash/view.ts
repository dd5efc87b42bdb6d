import { z } from 'zod';
import { fromSi } from '../../../shared/quantities/units.ts';
import { ENGINE_HEAT, LASH_MOMENTS, NUT_STATES } from '../../../shared/schemas/lash-log.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import { quantityView } from '../../api/views.ts';
import type { LashGrowth } from '../../mechanics/lash/types.ts';
import type { LashLog, LoggedLash } from '../../records/lash-log/lash-log.ts';
import { sheetReadingView, showSheetReading } from '../sheet/view.ts';

const valve = z.enum(['intake', 'exhaust']);
const nut = z.enum(keysOf(NUT_STATES));

export const lashLineView = z
  .object({
    reading: sheetReadingView.meta({ description: 'the gap as it stands on the sheet; corrected there' }),
    engine: z.enum(keysOf(ENGINE_HEAT)),
    moment: z.enum(keysOf(LASH_MOMENTS)),
    nut,
    on: z.iso.date().meta({ description: 'the day it is of' }),
    doneBy: z.string(),
  })
  .meta({ id: 'LashLine' });

export const showLashLine = ({ reading, ...rest }: LoggedLash): z.output<typeof lashLineView> => ({
  reading: showSheetReading(reading),
  ...rest,
});

export const lashLogView = z
  .object({
    lines: z.array(lashLineView),
    limit: z.object({ growth: quantityView, source: z.string() }),
    growths: z.array(
      z.object({
        cylinder: z.int(),
        valve,
        atLeast: quantityView
          .optional()
          .meta({ description: 'the least it can have grown by; negative closed' }),
        atMost: quantityView.optional(),
        nut,
        heatDiffers: z.boolean().meta({ description: 'one hot and one cold: not set against each other' }),
        again: z.boolean().meta({ description: 'it had grown over the limit before it was last set' }),
      }),
    ),
    questions: z.array(
      z.object({
        code: z.string(),
        cylinder: z.int().optional(),
        valve: valve.optional(),
        ask: z.string(),
        size: z.string(),
        test: z.string(),
      }),
    ),
    stop: z.boolean().meta({ description: 'a gap grew again after it was set again' }),
  })
  .meta({ id: 'LashLog' });

const inches = (si: number) => ({ value: fromSi(si, 'in').value, unit: 'in' as const });

const showGrowth = ({ low, high, ...rest }: LashGrowth) => ({
  ...rest,
  ...(low === undefined ? {} : { atLeast: inches(low) }),
  ...(high === undefined ? {} : { atMost: inches(high) }),
});

export function showLashLog(log: LashLog): z.output<typeof lashLogView> {
  const { value, unit } = log.limit.value;
  return {
    lines: log.lines.map(showLashLine),
    limit: { growth: { value, unit }, source: log.limit.source },
    growths: log.growths.map(showGrowth),
    questions: log.questions.map((question) => ({ ...question })),
    stop: log.again.length > 0,
  };
}
