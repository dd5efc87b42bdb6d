import { z } from 'zod';
import { PART_KINDS } from '../../../shared/schemas/part-words.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import { defineEvents } from '../../events/define-events.ts';
import { correction } from '../corrections/events.ts';

const about = { kind: z.enum(keysOf(PART_KINDS)) };
const entered = { place: z.string(), typed: z.string(), readAs: z.string() };

/** What is read, seen or found written on a part in the hand. */
export const PART_READING_EVENTS = defineEvents({
  'part-read': z.object({ ...about, ...entered }),
  'part-reading-replaced': z.object({ ...about, ...correction, ...entered }),
  'part-reading-struck': z.object({ ...about, ...correction }),
});
