import type { Eta } from 'eta';
import type pg from 'pg';
import { memberOf } from '../../shared/member.ts';

/** A statement as it went to the driver. */
export interface Statement {
  readonly text: string;
  readonly values: readonly unknown[];
}

/** A template with the data it was given. */
export interface Rendered {
  readonly template: string;
  readonly data: object;
}

function valuesOf(args: readonly unknown[]): readonly unknown[] {
  const values: unknown = args[1];
  return Array.isArray(values) ? values : [];
}

/**
 * Listens to what a service asks of its database and of its templates, so that a floor does the very same
 * without the service around it.
 */
export function recorder(pool: pg.Pool, views: Eta) {
  let statements: Statement[] | undefined;
  let rendered: Rendered[] | undefined;
  pool.on('connect', (client) => {
    const query = memberOf(client, 'query');
    if (typeof query !== 'function') throw new Error('a client without query()');
    const heard = (...args: unknown[]): unknown => {
      if (statements !== undefined && typeof args[0] === 'string')
        statements.push({ text: args[0], values: valuesOf(args) });
      return query.apply(client, args);
    };
    Object.assign(client, { query: heard });
  });
  const render = views.render.bind(views);
  // A template that includes another comes by here again; only what the service itself asked for is noted.
  let depth = 0;
  const noted = (template: string, data: object): string => {
    if (depth === 0) rendered?.push({ template, data });
    depth += 1;
    try {
      return render(template, data);
    } finally {
      depth -= 1;
    }
  };
  Object.assign(views, { render: noted });
  return {
    async during<T>(work: () => Promise<T>) {
      statements = [];
      rendered = [];
      const answer = await work();
      const heard = { answer, statements, rendered };
      statements = undefined;
      rendered = undefined;
      return heard;
    },
  };
}
