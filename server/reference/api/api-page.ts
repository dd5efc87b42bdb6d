import type { TableData } from '../../../views/parts/table.examples.ts';
import { PROBLEMS } from '../../problems/registry.ts';
import type { Page } from '../../web/pages/render.ts';
import { faultTable } from '../problems/fault-table.ts';
import { operationsOf, readDocument, type SchemaNode } from './document.ts';
import { fieldRows, shapeOf, shapesOf } from './field-rows.ts';
import { fieldTable, operationView } from './operation-view.ts';

function problemTable(): TableData {
  return {
    caption: 'Problems',
    columns: [{ label: 'Code' }, { label: 'Status', number: true }, { label: 'What it says' }],
    rows: Object.entries(PROBLEMS).map(([code, { status, title }]) => ({
      cells: [code, String(status), { text: title, href: `/problems/${code}` }],
    })),
  };
}

/** The fields of a shape; of one that is one of several, which ones. */
function shapeTable(name: string, schema: SchemaNode): TableData {
  const shapes = shapesOf(schema);
  if (shapes.length === 0) return fieldTable(name, fieldRows(schema));
  return {
    caption: name,
    columns: [{ label: 'One of' }],
    rows: shapes.map((shape) => ({ cells: [{ text: shape, href: `#shape-${shape}` }] })),
  };
}

/** The published document, laid out to be read on a phone: operations by subject, each folded until it is wanted. */
export function apiPage(published: unknown): Page {
  const document = readDocument(published);
  const operations = operationsOf(document).map((each) => ({
    tag: each.operation.tags[0] ?? 'service',
    // Each computation has two operations; the one that describes it is told of once, above the list.
    hidden: each.method === 'GET' && /\/compute\/./.test(each.path),
    view: operationView(each),
  }));
  const known = new Set(document.tags.map(({ name }) => name));
  const unnamed = [...new Set(operations.map(({ tag }) => tag))].filter((tag) => !known.has(tag));
  const subjects = [...document.tags, ...unnamed.map((name) => ({ name, description: '' }))]
    .map(({ name, description }) => ({
      name,
      title: `${name.charAt(0).toUpperCase()}${name.slice(1)}`,
      description,
      operations: operations.filter(({ tag, hidden }) => tag === name && !hidden).map(({ view }) => view),
    }))
    .filter((subject) => subject.operations.length > 0);
  const shapes = Object.entries(document.components.schemas).map(([name, schema]) => ({
    id: `shape-${shapeOf(name)}`,
    name,
    table: shapeTable(name, schema),
  }));
  return {
    template: 'reference-api',
    title: 'The JSON API',
    place: '/reference',
    data: { subjects, shapes, problems: problemTable(), faults: faultTable() },
  };
}
