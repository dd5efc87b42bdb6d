import { z } from 'zod';
import { defineEvents } from '../../events/define-events.ts';

/** Links that let their holders see and enter readings of the build. */
export const SHARE_LINK_EVENTS = defineEvents({
  'link-made': z.object({ linkId: z.uuid(), holder: z.string(), expiresAt: z.iso.datetime() }),
  'link-revoked': z.object({ linkId: z.uuid(), holder: z.string() }),
});
