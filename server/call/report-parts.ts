import type { ReportPartName } from '../../shared/steps.ts';
import type { Component } from '../../views/parts/components.ts';
import type { DrawingData } from '../../views/parts/drawing.examples.ts';
import type { Fact } from '../../views/parts/facts.examples.ts';
import type { TableData } from '../../views/parts/table.examples.ts';

/** A part of the report under its own heading, which never stands alone at the foot of a page. */
export const sectionComponent = (title: string, slots: readonly Component[]): Component => ({
  template: '/pages/report/section',
  data: { title, slots },
});

/** Things beside one another where the paper is wide enough. */
export const besideComponent = (...slots: readonly Component[]): Component => ({
  template: '/pages/report/beside',
  data: { slots },
});

/** The same, where the first needs more room than the second. */
export const besideWideComponent = (...slots: readonly Component[]): Component => ({
  template: '/pages/report/beside',
  data: { slots, wide: slots.length > 1 },
});

export const columnComponent = (...slots: readonly Component[]): Component => ({
  template: '/pages/report/column',
  data: { slots },
});

/** Facts one after the other in a line, under a small name: the shortest way to print many. */
export const runComponents = (title: string, items: readonly Fact[]): Component[] =>
  items.length === 0 ? [] : [{ template: '/pages/report/run', data: { title, items } }];

/** A sentence or several under a small name. */
export const saidComponents = (title: string, texts: readonly string[]): Component[] => {
  if (texts.length === 0) return [];
  const text = texts.map((each) => each.replace(/[;.]$/, '')).join('; ');
  const sentence = `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
  return [{ template: '/pages/report/said', data: { title, text: sentence } }];
};

export const listComponents = (title: string, items: readonly string[]): Component[] =>
  items.length === 0 ? [] : [{ template: '/pages/call/list', data: { title, items } }];

/** A table without the columns that stand empty: paper is narrow. */
export function filledColumns(table: TableData): TableData {
  const kept = table.columns.map((_, index) =>
    table.rows.some(({ cells }) => {
      const cell = cells[index];
      return typeof cell === 'string'
        ? cell !== ''
        : cell !== undefined && (cell.text !== '' || cell.verdict !== undefined);
    }),
  );
  const columns = table.columns.filter((_, index) => kept[index]);
  const rows = table.rows.map((row) => ({ ...row, cells: row.cells.filter((_, index) => kept[index]) }));
  return { ...table, columns, rows };
}

/** A table without the note below it, where the report says the same elsewhere. */
export function withoutNote({ note: _, ...table }: TableData): TableData {
  return table;
}

/** On paper what a figure is asked stands on the back page, and no link leads there. */
export const withAsksBehind = (table: TableData): TableData => ({
  ...table,
  rows: table.rows.map((row) => ({
    ...row,
    cells: row.cells.map((cell) =>
      typeof cell === 'string' || (cell.asks ?? []).length === 0
        ? cell
        : { ...cell, asks: [{ text: 'see back' }] },
    ),
  })),
});

/** On paper a drawing stands without its table: the figures are beside it already. */
export function withoutTable({ table: _, ...drawing }: DrawingData): DrawingData {
  return drawing;
}

/** What is read first, and what goes on the back pages: how it was read, and what it rests on. */
export interface ReportSides {
  readonly components: readonly Component[];
  readonly back: readonly Component[];
}

/** What a step puts on the report, under the name that the plan of a goal orders it by. */
export interface ReportPart extends ReportSides {
  readonly name: ReportPartName;
}

/** All of it is read first. */
export const inFront = (components: readonly Component[]): ReportSides => ({ components, back: [] });

/** All of it is for whoever looks it up. */
export const onTheBack = (back: readonly Component[]): ReportSides => ({ components: [], back });

/** Under its heading where there is anything to put there. */
export const sectionOf = (title: string, slots: readonly Component[]): Component[] =>
  slots.length === 0 ? [] : [sectionComponent(title, slots)];
