import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { valveView } from '../../../shared/schemas/answer-parts.ts';
import { entryFields, entryShape } from '../corrections/view.ts';
import type { SheetReading } from './sheet-table.ts';

export const sheetReadingView = z
  .object({
    ...entryShape,
    cylinder: z.int(),
    valve: valveView,
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

export const showSheetReading = (entry: SheetReading) =>
  answer(sheetReadingView, {
    ...entryFields(entry),
    cylinder: entry.cylinder,
    valve: entry.valve,
    kind: entry.kind,
    typed: entry.reading.typed,
    readAs: entry.reading.readAs,
    unit: entry.reading.unit,
    value: entry.reading.value,
    moreThan: entry.reading.low,
    lessThan: entry.reading.high,
    tool: entry.tool,
    spring: entry.spring,
    lifter: entry.lifter,
    arms: entry.arms,
    armId: entry.armId,
  });
