import { SHEET_KINDS } from '../../../shared/schemas/sheet.ts';
import type { Component } from '../../../views/parts/part.ts';
import type { Look } from '../../records/sheet/paste-sheet.ts';

/** What pasted rows would put on the sheet; nothing of it is kept yet. */
export function lookTable({ readings }: Look): Component {
  return {
    template: '/parts/table',
    data: {
      caption: 'As it was read; nothing of it is kept yet',
      columns: [
        { label: 'Line' },
        { label: 'Valve' },
        { label: 'What' },
        { label: 'Read as', number: true },
        { label: 'Stands already' },
      ],
      rows: readings.map((each) => ({
        cells: [
          String(each.line),
          `${each.cylinder} ${each.valve}`,
          SHEET_KINDS[each.kind],
          each.reading.readAs,
          each.already === undefined ? '' : `${each.already}; a second pass`,
        ],
      })),
      empty: 'No row could be read.',
    },
  };
}
