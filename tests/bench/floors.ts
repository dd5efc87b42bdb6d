import Fastify, { type FastifyInstance } from 'fastify';
import pg from 'pg';
import { createViews } from '../../views/engine.ts';
import { portOf } from './http.ts';
import type { Rendered, Statement } from './recorder.ts';

export interface Bare {
  readonly port: number;
  stop(): Promise<void>;
}

async function listening(app: FastifyInstance): Promise<Bare> {
  await app.listen({ host: '127.0.0.1', port: 0 });
  return { port: portOf(app.server), stop: () => app.close() };
}

/** A bare route that answers the body it got: what HTTP and JSON cost by themselves. */
export function bareEcho(): Promise<Bare> {
  const app = Fastify({ logger: false, bodyLimit: 8 * 1024 * 1024 });
  app.post('/echo', (request) => request.body);
  return listening(app);
}

/** A statement that fits the moment: sequence numbers go on where the recorded request had its own. */
function atSequence({ text, values }: Statement, recorded: number, now: number): [string, unknown[]] {
  return [
    text.replace(` ${recorded}'`, ` ${now}'`),
    values.map((value) => (value === recorded ? now : value)),
  ];
}

/** The statements of a request through the driver alone, in their order, on a pooled connection. */
export function bareStatements(url: string, statements: readonly Statement[], recordedSequence?: number) {
  const pool = new pg.Pool({ connectionString: url, max: 10 });
  return {
    async run(): Promise<void> {
      const client = await pool.connect();
      let sequence = recordedSequence;
      try {
        for (const statement of statements) {
          const [text, values] =
            recordedSequence === undefined || sequence === undefined
              ? [statement.text, [...statement.values]]
              : atSequence(statement, recordedSequence, sequence);
          const { rows } = await client.query<{ last_seq?: string }>(text, values);
          const last = rows?.[0]?.last_seq;
          if (last !== undefined && recordedSequence !== undefined) sequence = Number(last) + 1;
        }
      } finally {
        client.release();
      }
    },
    stop: () => pool.end(),
  };
}

/** A bare route that runs `before` and renders the same templates with the same data. */
export function barePage([page, layout]: readonly Rendered[], before?: () => Promise<void>): Promise<Bare> {
  if (page === undefined || layout === undefined) throw new Error('a page is a template inside the layout');
  const views = createViews();
  const app = Fastify({ logger: false });
  app.get('/page', async (_request, reply) => {
    await before?.();
    const body = views.render(page.template, page.data);
    return reply
      .type('text/html; charset=utf-8')
      .send(views.render(layout.template, { ...layout.data, body }));
  });
  return listening(app);
}
