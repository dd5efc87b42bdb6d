import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { newNote } from '../../shared/schemas/commands.ts';
import { noteView, showNote } from '../api/views.ts';
import type { Deps } from '../deps.ts';
import { commandRoute, idParams, noParams } from '../http/api-route.ts';
import { finishPromise, keepNote } from './notes.ts';

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
    run: async (tx, { caller, params, body }) => ({
      body: showNote(await keepNote(tx, caller, params.id, body)),
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
    answer: z.object({ done: z.uuid() }),
    run: async (tx, { caller, params }) => {
      await finishPromise(tx, caller, params.id, params.noteId);
      return { body: { done: params.noteId } };
    },
  });
}
