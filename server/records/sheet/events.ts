import { z } from 'zod';
import { SHEET_ARMS, SHEET_COLUMNS, SHEET_KINDS, TOOLS } from '../../../shared/schemas/sheet.ts';
import { keysOf, LIFTERS, SPRINGS, VALVES } from '../../../shared/schemas/words.ts';
import { defineEvents } from '../../events/define-events.ts';
import { correction } from '../corrections/events.ts';

const about = {
  cylinder: z.int(),
  valve: z.enum(keysOf(VALVES)),
  kind: z.enum(keysOf(SHEET_KINDS)),
};

const how = z.object({
  spring: z.enum(keysOf(SPRINGS)).optional(),
  lifter: z.enum(keysOf(LIFTERS)).optional(),
  tool: z.enum(keysOf(TOOLS)).optional(),
});

/** Readings of the per-valve sheet; those entered together are one event. */
export const SHEET_EVENTS = defineEvents({
  'sheet-readings-kept': z.object({
    spring: z.enum(keysOf(SPRINGS)),
    lifter: z.enum(keysOf(LIFTERS)),
    tool: z.enum(keysOf(TOOLS)),
    arms: z.enum(keysOf(SHEET_ARMS)),
    /** How a column was read, where it differs from the rest. */
    columns: z.partialRecord(z.enum(keysOf(SHEET_COLUMNS)), how).default({}),
    /** Travel of the dial in one turn, in metres, where the sheet had a dial of its own. */
    perTurn: z.number().optional(),
    count: z.int(),
    readings: z.array(z.object({ ...about, readAs: z.string() })),
  }),
  'sheet-reading-replaced': z.object({ ...about, ...correction, readAs: z.string() }),
  'sheet-reading-struck': z.object({ ...about, ...correction }),
});
