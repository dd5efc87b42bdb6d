import type { Fact, FactsData } from '../../views/parts/facts.examples.ts';
import type { Component } from '../../views/parts/part.ts';
import type { TableData } from '../../views/parts/table.examples.ts';

/** A part of the report under its own heading, which never stands alone at the foot of a page. */
export const section = (title: string, slots: readonly Component[]): Component => ({
  template: '/pages/report/section',
  data: { title, slots },
});

/** Things beside one another where the paper is wide enough. */
export const beside = (...slots: readonly Component[]): Component => ({
  template: '/pages/report/beside',
  data: { slots },
});

/** The same, where the first needs more room than the second. */
export const besideWide = (...slots: readonly Component[]): Component => ({
  template: '/pages/report/beside',
  data: { slots, wide: slots.length > 1 },
});

export const column = (...slots: readonly Component[]): Component => ({
  template: '/pages/report/column',
  data: { slots },
});

/** Facts one after the other in a line, under a small name: the shortest way to print many. */
export const run = (title: string, items: readonly Fact[]): Component[] =>
  items.length === 0 ? [] : [{ template: '/pages/report/run', data: { title, items } }];

/** A sentence or several under a small name. */
export const said = (title: string, texts: readonly string[]): Component[] => {
  if (texts.length === 0) return [];
  const text = texts.map((each) => each.replace(/[;.]$/, '')).join('; ');
  const sentence = `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
  return [{ template: '/pages/report/said', data: { title, text: sentence } }];
};

export const notice = (text: string, kind?: 'caution'): Component => ({
  template: '/parts/notice',
  data: { text, ...(kind === undefined ? {} : { kind }) },
});

export const list = (title: string, items: readonly string[]): Component[] =>
  items.length === 0 ? [] : [{ template: '/pages/call/list', data: { title, items } }];

/** The text of a notice that a step's page shows. */
export const textOf = ({ data }: Component): string => String(Reflect.get(data, 'text') ?? '');

const isTable = (data: object): data is TableData => 'columns' in data && 'rows' in data;

/** A table without the columns that stand empty: paper is narrow. */
export function filledColumns(slot: Component): Component {
  const { template, data } = slot;
  if (!isTable(data)) return slot;
  const kept = data.columns.map((_, index) =>
    data.rows.some(({ cells }) => {
      const cell = cells[index];
      return typeof cell === 'string'
        ? cell !== ''
        : cell !== undefined && (cell.text !== '' || cell.verdict);
    }),
  );
  const columns = data.columns.filter((_, index) => kept[index]);
  const rows = data.rows.map((row) => ({ ...row, cells: row.cells.filter((_, index) => kept[index]) }));
  return { template, data: { ...data, columns, rows } };
}

const hasItems = (data: object): data is FactsData => 'items' in data;

/** The facts of a block that a step's page shows. */
export const itemsOf = ({ data }: Component): readonly Fact[] => (hasItems(data) ? data.items : []);

/** A table without the note below it, where the report says the same elsewhere. */
export const withoutNote = ({ template, data }: Component): Component => ({
  template,
  data: { ...data, note: undefined },
});

/** What a step puts on the report, under the name that the plan of a goal orders it by. */
export interface ReportPart {
  readonly name: ReportPartName;
  readonly components: readonly Component[];
}

/** Parts of the report in the usual order. */
export const REPORT_PARTS = [
  'ratio',
  'sheet',
  'consequences',
  'part',
  'marks',
  'lash',
  'workings',
  'photographs',
  'notes',
  'arms',
  'build',
] as const;
export type ReportPartName = (typeof REPORT_PARTS)[number];

/** Questions as a line each: what is asked, and what settles it. */
export const askedTexts = (questions: readonly { readonly ask: string; readonly test: string }[]): string[] =>
  questions.map(({ ask, test }) => `${ask} ${test.charAt(0).toUpperCase()}${test.slice(1)}`);
