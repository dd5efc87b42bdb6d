import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { answer } from '../../shared/schemas/answer.ts';
import { newNote } from '../../shared/schemas/commands.ts';
import { finishPromise, keepNote } from '../records/notes/notes.ts';
import { noteView, showNote } from '../records/notes/view.ts';
import { commandRoute, idParams, noParams } from '../web/api-route.ts';
import type { Deps } from '../web/deps.ts';

const doneView = z.object({ done: z.uuid() });

/** JSON routes of notes, advice and promises. */
export function notesApi(app: FastifyInstance, deps: Deps): void {
  const tag = 'calls';
  commandRoute(app, deps, {
    operationId: 'keepNote',
    tag,
    summary: 'Keep a note, advice given, or a promise with owner and date',
    method: 'POST',
    url: '/api/v1/calls/:id/notes',
    params: idParams,
    body: newNote,
    status: 201,
    answer: noteView,
    run: async (tx, { principal, params, body }) => ({
      body: showNote(await keepNote(tx, principal, params.id, body)),
    }),
  });
  commandRoute(app, deps, {
    operationId: 'finishPromise',
    tag,
    summary: 'Mark a promise as kept',
    method: 'POST',
    url: '/api/v1/calls/:id/notes/:noteId/done',
    params: z.strictObject({ id: z.uuid(), noteId: z.uuid() }),
    body: noParams,
    status: 200,
    answer: doneView,
    run: async (tx, { principal, params }) => {
      await finishPromise(tx, principal, params.id, params.noteId);
      return { body: answer(doneView, { done: params.noteId }) };
    },
  });
}
