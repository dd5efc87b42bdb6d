import Fastify from 'fastify';
import pg from 'pg';
import type { BenchService } from './bench-service.ts';

/** A bare route that answers the body it got: what HTTP and JSON cost by themselves. */
export async function bareEcho(): Promise<{ port: number; stop: () => Promise<void> }> {
  const app = Fastify({ logger: false, bodyLimit: 8 * 1024 * 1024 });
  app.post('/echo', (request) => request.body);
  await app.listen({ host: '127.0.0.1', port: 0 });
  const address = app.server.address();
  return {
    port: typeof address === 'object' && address !== null ? address.port : 0,
    stop: () => app.close(),
  };
}

/** The statements of keeping a reading, through the driver alone, on one pooled connection at a time. */
export function bareReading(service: BenchService): { keep: () => Promise<void>; stop: () => Promise<void> } {
  const pool = new pg.Pool({ connectionString: service.url, max: 10 });
  const { shopId, staffId, buildId, setUpId } = service;
  return {
    async keep() {
      const client = await pool.connect();
      try {
        await client.query('begin');
        await client.query(`set local app.shop = '${shopId}'`);
        const { rows } = await client.query<{ last_seq: string }>(
          'select id, label, revision, last_seq from build where shop_id = $1 and id = $2 for update',
          [shopId, buildId],
        );
        const seq = Number(rows[0]?.last_seq ?? 0) + 1;
        await client.query('select hold_reason from call where shop_id = $1 and build_id = $2 and held', [
          shopId,
          buildId,
        ]);
        await client.query('select * from set_up where shop_id = $1 and build_id = $2 and id = $3', [
          shopId,
          buildId,
          setUpId,
        ]);
        await client.query(
          `insert into event (shop_id, build_id, seq, kind, data, by_kind, by_id, by_name) values ($1, $2, $3, 'reading-kept', $4, 'staff', $5, 'bench')`,
          [
            shopId,
            buildId,
            seq,
            JSON.stringify({ setUpId, kind: 'valve-lift', pass: 1, typed: '.842 in', readAs: '.842 in' }),
            staffId,
          ],
        );
        await client.query(
          `insert into reading (shop_id, build_id, set_up_id, seq, kind, pass, typed, value, unit, read_as, by_kind, by_id, by_name)
           values ($1, $2, $3, $4, 'valve-lift', 1, '.842 in', .842, 'in', '.842 in', 'staff', $5, 'bench') returning *`,
          [shopId, buildId, setUpId, seq, staffId],
        );
        await client.query('update build set last_seq = $3 where shop_id = $1 and id = $2', [
          shopId,
          buildId,
          seq,
        ]);
        await client.query(`select pg_notify('benchcall_event', $1)`, [`${buildId} ${seq}`]);
        await client.query('commit');
      } finally {
        client.release();
      }
    },
    stop: () => pool.end(),
  };
}
