import { z } from 'zod';
import { keysOf, UNIT_SYSTEMS } from '../../../shared/schemas/words.ts';
import { defineEvents } from '../../events/define-events.ts';

/** Revisions of a build's specification, and the units its calls are spoken in. */
export const BUILD_EVENTS = defineEvents({
  'units-chosen': z.object({ units: z.enum(keysOf(UNIT_SYSTEMS)) }),
  'build-revised': z.object({ revision: z.int(), reason: z.string() }),
});
