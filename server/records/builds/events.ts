import { z } from 'zod';
import { defineEvents } from '../../events/define-events.ts';

/** Revisions of a build's specification. */
export const BUILD_EVENTS = defineEvents({
  'build-revised': z.object({ revision: z.int(), reason: z.string() }),
});
