import type { InputFaults } from '../../../shared/problems/faults.ts';
import { importCatalogue } from '../../../shared/schemas/catalogue.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import type { Tx } from '../../database/database.ts';
import { COLUMNS, type Column } from '../../records/catalogue/columns.ts';
import { type Loaded, loadCatalogue } from '../../records/catalogue/import.ts';
import type { RowFault } from '../../records/catalogue/read-file.ts';
import { tableComponent } from '../../web/components.ts';
import { areaField, type FormState, summaryOf } from '../../web/forms/fields.ts';
import type { FormFault } from '../../web/forms/read-form.ts';
import type { PageRequest } from '../../web/page-request.ts';
import type { Page } from '../../web/pages/render.ts';

const LABEL = 'The file, as text';

/** A refused file, told beside the field it was pasted into. */
export function loadFaults(error: InputFaults): FormFault[] {
  return error.faults.map(({ detail }) => ({ field: 'csv', detail }));
}

function allowedIn(column: Column): string {
  if (column.holds === 'text') return `words, ${column.most} characters at the most`;
  if (column.holds === 'word') return `${Object.keys(column.words).join(', ')}, or empty`;
  if (column.holds === 'length') return 'inches, or with its unit: .4375, 7/16, 11.11 mm; empty is not known';
  return 'a number, or empty';
}

function columnTable(): TableData {
  return {
    caption: 'Columns of the file',
    columns: [{ label: 'Column' }, { label: 'What goes there' }],
    rows: COLUMNS.map((column) => ({
      cells: [
        column.name,
        `${allowedIn(column)}${column.holds === 'text' && column.required ? '; must be there' : ''}`,
      ],
    })),
    note: 'Any order. Columns may be left out; what a family has there already stays. Weight says how often the family comes in against the others, 1 when empty.',
  };
}

function faultTable(faults: readonly RowFault[]): TableData {
  return {
    caption: 'Rows with a fault',
    columns: [
      { label: 'Row' },
      { label: 'Column' },
      { label: 'On record there' },
      { label: 'What is wrong' },
    ],
    rows: faults.map(({ row, field, typed, detail }) => ({
      cells: [String(row), field || 'whole row', typed || 'nothing', detail],
    })),
    note: 'The header is row 1.',
  };
}

function trialComponents(trial: Loaded): Component[] {
  const { rows, added, changed, unchanged, faults } = trial;
  const bad = new Set(faults.map(({ row }) => row)).size;
  const text = `Nothing is loaded yet. Of ${rows} rows ${added} are new, ${changed} change a family, ${unchanged} are as they stand, and ${bad} have a fault.`;
  return [
    { template: '/parts/notice', data: { text } },
    ...(bad === 0 ? [] : [tableComponent(faultTable(faults))]),
  ];
}

async function trialOf(tx: Tx, req: PageRequest, shown: FormState): Promise<Loaded | undefined> {
  if (shown.typed.do !== 'try') return undefined;
  const read = importCatalogue.safeParse({ csv: shown.typed.csv, dryRun: true });
  return read.success ? loadCatalogue(tx, req.principal, read.data, new Date(0)) : undefined;
}

/** Loading a file: paste it, see what it would do, then load it. */
export async function loadPage(tx: Tx, req: PageRequest, shown: FormState): Promise<Page> {
  const trial = await trialOf(tx, req, shown);
  return {
    template: 'plain',
    title: 'Load part families',
    place: '/catalogue',
    data: {
      title: 'Load part families',
      intro:
        'Open your parts list in a spreadsheet, copy it with its heading row, and paste it here; or paste a CSV file. A code that is known changes that family, a new code adds one.',
      errors: summaryOf(shown, { csv: LABEL }),
      sections: [
        ...(trial === undefined ? [] : trialComponents(trial)),
        {
          template: '/parts/form',
          data: {
            action: '/catalogue/load',
            key: crypto.randomUUID(),
            slots: [areaField(shown, 'csv', LABEL, { rows: 10, hint: 'The first row names the columns.' })],
            buttons: [
              {
                kind: trial === undefined ? 'primary' : 'plain',
                label: 'See what it would do',
                name: 'do',
                value: 'try',
              },
              {
                kind: trial === undefined ? 'plain' : 'primary',
                label: 'Load all rows or none',
                name: 'do',
                value: 'all',
              },
              { label: 'Load the rows without a fault', name: 'do', value: 'partial' },
            ],
          },
        },
        tableComponent(columnTable()),
      ],
    },
  };
}
