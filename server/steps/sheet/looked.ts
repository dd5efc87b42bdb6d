import type { Component } from '../../../views/parts/components.ts';
import { type PastedQuestion, questionsOfPasted } from '../../assessment/sheet/pasted.ts';
import type { CallContext } from '../../call/context.ts';
import type { RejectedForm } from '../../call/forms.ts';
import { listComponents } from '../../call/report-parts.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import { type Look, previewOf } from '../../records/sheet/paste-sheet.ts';
import { newestDial } from '../../records/sheet/said-in-turns.ts';
import { tableComponent } from '../../web/components.ts';
import { readPaste } from './forms.ts';
import { askedOfColumns, lookTable } from './paste-preview.ts';

/** Pasted rows as they were read, with what they would be asked. */
const componentsOf = (look: Look, asked: readonly PastedQuestion[]): Component[] => [
  ...listComponents('Asked of whole columns', askedOfColumns(asked)),
  tableComponent(lookTable(look, asked)),
];

/** Rows that came to be looked at, as they were read; left out where none came, or they cannot be read as rows. */
export function lookedAt(
  { record, call }: CallContext,
  rejected: RejectedForm | undefined,
): { readonly sound: boolean; readonly components: readonly Component[] } | undefined {
  const paste = rejected?.typed.form === 'paste' ? readPaste(rejected.typed) : undefined;
  if (paste?.ok !== true) return undefined;
  const look = previewOf(paste.data, stillStanding(record.sheetReadings), newestDial(record.setUps));
  const asked = questionsOfPasted(record, call, paste.data, look);
  return { sound: look.faults.length === 0, components: componentsOf(look, asked) };
}
