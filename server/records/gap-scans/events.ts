import { z } from 'zod';
import { SHEET_ARMS } from '../../../shared/schemas/sheet.ts';
import { keysOf, LASH_STATES, LIFTERS, SPRINGS, VALVES } from '../../../shared/schemas/words.ts';
import { defineEvents } from '../../events/define-events.ts';
import { correction } from '../corrections/events.ts';

const about = { cylinder: z.int(), valve: z.enum(keysOf(VALVES)) };

/** Scans of piston to valve over the crank. */
export const GAP_SCAN_EVENTS = defineEvents({
  'gap-scan-kept': z.object({
    ...about,
    readAs: z.string(),
    count: z.int(),
    spring: z.enum(keysOf(SPRINGS)),
    lifter: z.enum(keysOf(LIFTERS)),
    lash: z.enum(keysOf(LASH_STATES)),
    arms: z.enum(keysOf(SHEET_ARMS)),
  }),
  'gap-scan-replaced': z.object({ ...about, ...correction, readAs: z.string() }),
  'gap-scan-struck': z.object({ ...about, ...correction }),
});
