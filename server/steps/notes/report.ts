import type { Component } from '../../../views/parts/part.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import { promiseState } from '../../call/promises.ts';
import type { Note } from '../../records/notes/notes.ts';
import { momentText } from '../../web/dates.ts';

/** What was said and promised, as the report prints it. */
export function notesReport(notes: readonly Note[]): Component[] {
  if (notes.length === 0) return [];
  const data: TableData = {
    caption: 'What was said and promised',
    columns: [{ label: 'Line' }, { label: 'Words' }, { label: 'Rests on, or whose' }, { label: 'Who, when' }],
    rows: notes.map((note) => ({
      cells: [
        `${note.seq} ${note.kind}`,
        note.body,
        note.kind === 'promise' ? promiseState(note) : note.restsOn || '\u2013',
        `${note.by}, ${momentText(note.at)}`,
      ],
    })),
  };
  return [{ template: '/parts/table', data }];
}
