import { z } from 'zod';
import { defineEvents } from '../../events/define-events.ts';
import { correction } from '../corrections/events.ts';

/** Computations made within a call; what went in and what came out is in the working itself. */
export const WORKING_EVENTS = defineEvents({
  'working-kept': z.object({ computation: z.string(), title: z.string() }),
  'working-struck': z.object({ computation: z.string(), ...correction }),
});
