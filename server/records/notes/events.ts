import { z } from 'zod';
import { defineEvents } from '../../events/define-events.ts';

const kept = z.object({
  callId: z.uuid(),
  kind: z.enum(['note', 'advice', 'promise']),
  body: z.string(),
  restsOn: z.string(),
  owner: z.string(),
  due: z.iso.date().optional(),
});

/** Notes, advice given, and promises. */
export const NOTE_EVENTS = defineEvents({
  'note-kept': kept,
  'advice-kept': kept,
  'promise-kept': kept,
  'promise-done': z.object({ callId: z.uuid(), noteId: z.uuid(), body: z.string() }),
});
