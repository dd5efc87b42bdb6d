import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { enteredView, valveView } from '../../../shared/schemas/answer-parts.ts';
import { SHEET_ARMS, TOOLS } from '../../../shared/schemas/sheet.ts';
import { keysOf, LASH_STATES, LIFTERS, SPRINGS } from '../../../shared/schemas/words.ts';
import { entryFields, entryShape } from '../corrections/view.ts';
import type { GapScan, ScanReading } from './gap-scan-table.ts';

export const scanReadingView = z.object({
  crankAngle: enteredView.meta({ description: 'after top dead centre; negative before' }),
  typed: z.string(),
  readAs: z.string(),
  unit: z.string(),
  gap: z.number().optional(),
  moreThan: z.number().optional().meta({ description: 'the gauge that goes' }),
  lessThan: z.number().optional().meta({ description: 'the gauge that does not' }),
});

export const gapScanView = z
  .object({
    ...entryShape,
    cylinder: z.int(),
    valve: valveView,
    readings: z.array(scanReadingView),
    readAs: z.string(),
    tool: z.enum(keysOf(TOOLS)),
    spring: z.enum(keysOf(SPRINGS)),
    lifter: z.enum(keysOf(LIFTERS)),
    lash: z.enum(keysOf(LASH_STATES)),
    lashSetting: enteredView.optional(),
    arms: z.enum(keysOf(SHEET_ARMS)),
    armId: z.uuid().optional(),
  })
  .meta({ id: 'GapScan' });

export const showScanReading = ({ crankAngle, gap }: ScanReading) =>
  answer(scanReadingView, {
    crankAngle,
    typed: gap.typed,
    readAs: gap.readAs,
    unit: gap.unit,
    gap: gap.value,
    moreThan: gap.low,
    lessThan: gap.high,
  });

export const showGapScan = (scan: GapScan) =>
  answer(gapScanView, {
    ...entryFields(scan),
    cylinder: scan.cylinder,
    valve: scan.valve,
    readings: scan.readings.map(showScanReading),
    readAs: scan.readAs,
    tool: scan.tool,
    spring: scan.spring,
    lifter: scan.lifter,
    lash: scan.lash,
    lashSetting: scan.lashSetting,
    arms: scan.arms,
    armId: scan.armId,
  });
