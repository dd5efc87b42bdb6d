import { z } from 'zod';
import { keysOf } from '../../../shared/schemas/words.ts';
import { defineEvents } from '../../events/define-events.ts';
import { SHOWS } from './new-photograph.ts';

/** Photographs and what they prove. */
export const PHOTOGRAPH_EVENTS = defineEvents({
  'photograph-kept': z.object({
    photographId: z.uuid(),
    shows: z.enum(keysOf(SHOWS)),
    caption: z.string(),
    readingId: z.uuid().optional(),
    armId: z.uuid().optional(),
  }),
});
