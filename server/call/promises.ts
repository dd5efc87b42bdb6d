import type { Note } from '../records/notes/notes.ts';
import { momentText, pickedDayText } from '../web/dates.ts';

/** Promises that nobody has marked as done. */
export const openPromises = (notes: readonly Note[]): Note[] =>
  notes.filter((note) => note.kind === 'promise' && note.doneAt === undefined);

/** Whose it is, by when, and whether it is done. */
export function promiseState(note: Note): string {
  if (note.doneAt !== undefined) return `done ${momentText(note.doneAt)}`;
  return `${note.owner || 'no owner named'}${note.due === undefined ? ', no date' : `, by ${pickedDayText(note.due, note.at)}`}`;
}
