import { z } from 'zod';
import { PART_KINDS } from '../../../shared/schemas/part-words.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import { defineEvents } from '../../events/define-events.ts';
import { correction } from '../corrections/events.ts';

/** `part`: what the part was called then; empty for the first one. */
const about = {
  kind: z.enum(keysOf(PART_KINDS)),
  partId: z.uuid().optional(),
  part: z.string().default(''),
};
/** `how`: tool and half-width as they are read out, `by rule, ± .016 in`. */
const entered = { place: z.string(), typed: z.string(), readAs: z.string(), how: z.string().default('') };

/** What is read, seen or found written on a part in the hand. */
export const PART_READING_EVENTS = defineEvents({
  'part-read': z.object({ ...about, ...entered }),
  'part-reading-replaced': z.object({ ...about, ...correction, ...entered }),
  'part-reading-struck': z.object({ ...about, ...correction }),
  'part-in-hand-named': z.object({
    partId: z.uuid().optional(),
    name: z.string(),
    was: z.string(),
    armId: z.uuid().optional(),
    /** What that arm was called then. */
    arm: z.string(),
  }),
});
