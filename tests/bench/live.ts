import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';
import { openDatabase } from '../../server/database/database.ts';
import { serviceUrl } from '../../server/database/service-role.ts';
import { startThrowaway } from '../tools/throwaway-postgres.ts';
import { type BenchCall, openCalls, post, somebody } from './live/calls.ts';
import { startService } from './live/processes.ts';
import { type Watcher, watcher } from './live/watcher.ts';
import { median } from './measure.ts';

/*
 * Two processes over one database: readings come in through the first, streams hang on the second. Measured is
 * the time from the answer to the one who entered a reading to the event on the other's stream.
 */
const CALLS = 200;
/** `npm run bench -- live 40`: a machine that is busy otherwise can't take the whole rate. */
const PER_SECOND = Number(process.argv[3] ?? 100);
const SECONDS = 20;
/** Streams that are cut five seconds into the run, and for how long. */
const SHORT = { count: 40, seconds: 3 };
const LONG = { count: 10, seconds: 30 };

const say = (line: string) => process.stdout.write(`${line}\n`);
const p99 = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.ceil(values.length * 0.99) - 1] ?? 0;
const shown = (values: readonly number[]) =>
  `median ${median(values).toFixed(1)} ms, p99 ${p99(values).toFixed(1)} ms (${values.length})`;

/** One reading's row, event and number by the driver alone, on a table of its own: the database's own time. */
async function bareCommit(client: pg.Client): Promise<number> {
  const start = performance.now();
  await client.query('begin');
  await client.query(`insert into bench_commit (data) values ('{"kind":"valve-lift"}')`);
  await client.query('commit');
  return performance.now() - start;
}

/** Sends at the steady rate whatever the answers take; answers when each was acknowledged. */
async function enterSteadily(base: string, bearer: string, calls: readonly BenchCall[], owner: pg.Client) {
  const acknowledged = new Map<string, number>();
  const took: number[] = [];
  const commits: number[] = [];
  const open = new Set<Promise<void>>();
  let refused = 0;
  const start = performance.now();
  for (let sent = 0; sent < PER_SECOND * SECONDS; sent += 1) {
    const due = start + (sent * 1000) / PER_SECOND;
    if (due > performance.now()) await pause(due - performance.now());
    const call = calls[sent % calls.length];
    if (call === undefined) continue;
    const began = performance.now();
    const path = `/api/v1/builds/${call.buildId}/set-ups/${call.setUpId}/readings`;
    const done = post(base, bearer, path, { kind: 'valve-lift', peak: '.842 in' })
      .then(
        ({ json, at }) => {
          acknowledged.set(`${call.buildId} ${String(json.seq)}`, at);
          took.push(at - began);
        },
        () => {
          refused += 1;
        },
      )
      .finally(() => open.delete(done));
    open.add(done);
    if (sent % 10 === 0) commits.push(await bareCommit(owner));
  }
  await Promise.all(open);
  return { acknowledged, took, commits, refused, seconds: (performance.now() - start) / 1000 };
}

async function cutFor(watchers: readonly Watcher[], seconds: number): Promise<void> {
  await pause(5_000);
  for (const each of watchers) each.cut();
  await pause(seconds * 1000);
  await Promise.all(watchers.map((each) => each.open()));
}

/** What is missing, and what came twice or out of order, over all streams. */
function faultsOf(watchers: readonly Watcher[], newest: ReadonlyMap<string, number>) {
  let missing = 0;
  let doubled = 0;
  for (const each of watchers) {
    const seqs = each.entries().map((entry) => entry.id ?? 0);
    const last = newest.get(each.call.buildId) ?? 0;
    missing += last - each.before - new Set(seqs).size;
    doubled += seqs.filter((seq, index) => index > 0 && seq <= (seqs[index - 1] ?? 0)).length;
  }
  return { missing, doubled };
}

/** The newest number of each build's record. */
async function newestOf(owner: pg.Client): Promise<Map<string, number>> {
  const { rows } = await owner.query<{ id: string; last_seq: string }>('select id, last_seq from build');
  return new Map(rows.map((row) => [row.id, Number(row.last_seq)]));
}

async function untilAll(watchers: readonly Watcher[], newest: ReadonlyMap<string, number>): Promise<void> {
  const enough = () =>
    watchers.every((each) => (each.entries().at(-1)?.id ?? 0) >= (newest.get(each.call.buildId) ?? 0));
  for (const end = performance.now() + 15_000; !enough() && performance.now() < end; ) await pause(50);
}

const server = await startThrowaway();
const first = await startService(server.ownerUrl);
const second = await startService(server.ownerUrl);
const db = openDatabase(serviceUrl(server.ownerUrl), { poolSize: 2, onIdleError: () => undefined });
const owner = new pg.Client({ connectionString: server.ownerUrl });
try {
  await owner.connect();
  await owner.query('create table bench_commit (id bigserial primary key, data jsonb not null)');
  const bearer = await somebody(db);
  const calls = await openCalls(first.base, bearer, CALLS);
  const before = await newestOf(owner);
  const watchers = calls.map((call) => watcher(second.base, bearer, call, before.get(call.buildId) ?? 0));
  await Promise.all(watchers.map((each) => each.open()));
  const short = watchers.slice(0, SHORT.count);
  const long = watchers.slice(SHORT.count, SHORT.count + LONG.count);

  const [run] = await Promise.all([
    enterSteadily(first.base, bearer, calls, owner),
    cutFor(short, SHORT.seconds),
    cutFor(long, LONG.seconds),
  ]);
  const newest = await newestOf(owner);
  await untilAll(watchers, newest);

  const waits = watchers
    .filter((each) => !each.wasCut)
    .flatMap((each) =>
      each.entries().flatMap((entry) => {
        const at = run.acknowledged.get(`${each.call.buildId} ${entry.id}`);
        return at === undefined ? [] : [entry.at - at];
      }),
    );
  const { missing, doubled } = faultsOf(watchers, newest);
  say(`Two processes, ${CALLS} calls with a stream each on the second, readings through the first.`);
  say(
    `Entered: ${run.took.length} readings in ${run.seconds.toFixed(1)} s, ${(run.took.length / run.seconds).toFixed(0)} a second; ${run.refused} refused.`,
  );
  say(`From sending a reading to its acknowledgement: ${shown(run.took)}`);
  say(`A bare insert and commit by the driver in the same run: ${shown(run.commits)}`);
  say(`From the acknowledgement to the event on the other process: ${shown(waits)}`);
  say(
    `Cut: ${SHORT.count} streams for ${SHORT.seconds} s, ${LONG.count} for ${LONG.seconds} s. Lost: ${missing}. Doubled or out of order: ${doubled}.`,
  );
  if (missing + doubled > 0) process.exitCode = 1;
} finally {
  const codes = [await second.stop(), await first.stop()];
  say(`Both processes ended by SIGTERM, exit codes ${codes.join(' and ')}.`);
  await owner.end();
  await db.close();
  await server.stop();
}
