import { z } from 'zod';
import { MARK_FOUND, PUSHROD_OVER } from '../../../shared/schemas/tip-mark.ts';
import { keysOf, SPRINGS, VALVES } from '../../../shared/schemas/words.ts';
import { defineEvents } from '../../events/define-events.ts';
import { correction } from '../corrections/events.ts';

const about = { cylinder: z.int(), valve: z.enum(keysOf(VALVES)) };
const measured = { readAs: z.string(), found: z.enum(keysOf(MARK_FOUND)) };

/** Marks on stem ends. */
export const TIP_MARK_EVENTS = defineEvents({
  'tip-mark-kept': z.object({
    ...about,
    ...measured,
    spring: z.enum(keysOf(SPRINGS)),
    pushrodOver: z.enum(keysOf(PUSHROD_OVER)),
  }),
  'tip-mark-replaced': z.object({ ...about, ...correction, ...measured }),
  'tip-mark-struck': z.object({ ...about, ...correction }),
});
