import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { moment } from '../../../shared/schemas/answer-parts.ts';
import type { Note } from './notes.ts';

export const noteView = z
  .object({
    id: z.uuid(),
    callId: z.uuid(),
    kind: z.string(),
    body: z.string(),
    restsOn: z.string(),
    owner: z.string(),
    due: z.string().optional(),
    doneAt: moment.optional(),
    seq: z.int(),
    by: z.string(),
    at: moment,
  })
  .meta({ id: 'Note' });

export const showNote = (note: Note) =>
  answer(noteView, {
    id: note.id,
    callId: note.callId,
    kind: note.kind,
    body: note.body,
    restsOn: note.restsOn,
    owner: note.owner,
    due: note.due,
    doneAt: note.doneAt?.toISOString(),
    seq: note.seq,
    by: note.by,
    at: note.at.toISOString(),
  });
