import type { ApiOperationData } from '../../../views/pages/reference/pages.ts';
import type { FactsData } from '../../../views/parts/facts.examples.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import type { ApiOperation, PlacedOperation, SchemaNode } from './document.ts';
import { type FieldRow, fieldRows, typeOf } from './field-rows.ts';

type Content = NonNullable<ApiOperation['requestBody']>['content'];

const schemaIn = (content: Content): SchemaNode | undefined => Object.values(content ?? {})[0]?.schema;

export function fieldTable(caption: string, rows: readonly FieldRow[]): TableData {
  return {
    caption,
    columns: [{ label: 'Field' }, { label: 'What it is' }, { label: 'Type' }],
    rows: rows.map(({ name, type, about, required }) => ({
      cells: [name, { text: about, ...(required ? {} : { why: 'may be left out' }) }, type],
    })),
    empty: 'No fields.',
  };
}

function parameterTable(operation: ApiOperation): TableData | undefined {
  if (operation.parameters.length === 0) return undefined;
  return {
    caption: 'In the address',
    columns: [{ label: 'Name' }, { label: 'What it is' }, { label: 'Type' }],
    rows: operation.parameters.map(({ name, in: place, required, description, schema }) => ({
      cells: [
        place === 'path' ? `{${name}}` : `?${name}=`,
        { text: description ?? '', ...(required ? {} : { why: 'may be left out' }) },
        schema === undefined ? 'text' : typeOf(schema),
      ],
    })),
  };
}

function answerTables(operation: ApiOperation): { facts: FactsData; tables: TableData[] } {
  const good = Object.entries(operation.responses).filter(([status]) => status.startsWith('2'));
  const facts = good.map(([status, response]) => {
    const schema = schemaIn(response.content);
    return { label: `Answers ${status}`, value: schema === undefined ? 'no body' : typeOf(schema) };
  });
  const tables = good.flatMap(([, response]) => {
    const schema = schemaIn(response.content);
    const rows = schema === undefined ? [] : fieldRows(schema);
    return rows.length === 0 ? [] : [fieldTable('The answer', rows)];
  });
  return { facts: { items: facts }, tables };
}

/** One operation as the page shows it. The fields of a computation stand on the page of its own. */
export function operationView({ method, path, operation }: PlacedOperation): ApiOperationData {
  const computation = /^\/api\/v1\/compute\/([a-z0-9-]+)$/.exec(path)?.[1];
  const body = schemaIn(operation.requestBody?.content);
  const answer = answerTables(operation);
  const parameters = parameterTable(operation);
  const tables = [
    ...(parameters === undefined ? [] : [parameters]),
    ...(body === undefined ? [] : [fieldTable('The body, JSON', fieldRows(body))]),
    ...answer.tables,
  ];
  return {
    id: `op-${operation.operationId}`,
    method,
    path,
    summary: operation.summary,
    needsKey: operation.security.length > 0,
    computation,
    facts: answer.facts,
    tables: computation === undefined ? tables : [],
  };
}
