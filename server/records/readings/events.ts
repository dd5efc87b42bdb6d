import { z } from 'zod';
import { keysOf, READING_KINDS } from '../../../shared/schemas/words.ts';
import { defineEvents } from '../../events/define-events.ts';
import { correction } from '../corrections/events.ts';

const about = {
  setUpId: z.uuid(),
  kind: z.enum(keysOf(READING_KINDS)),
  pass: z.int(),
  atLobeLift: z.string().optional(),
};
const entered = { typed: z.string(), readAs: z.string() };

/** Readings of a pass. */
export const READING_EVENTS = defineEvents({
  'reading-kept': z.object({
    ...about,
    ...entered,
    zeroReturn: z.string().optional(),
    counted: z.literal(true).optional(),
  }),
  'reading-replaced': z.object({
    ...about,
    ...correction,
    ...entered,
    /** What it was kept as before, where that was something else. */
    wasKind: z.enum(keysOf(READING_KINDS)).optional(),
  }),
  'reading-struck': z.object({ ...about, ...correction }),
});
