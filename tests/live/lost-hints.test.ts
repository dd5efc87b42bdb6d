import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { benchStream, liveCall, range } from '../tools/live-call.ts';
import { type TestService, testService } from '../tools/service.ts';

let service: TestService;

beforeEach(async () => {
  service = await testService();
});
afterEach(async () => {
  vi.useRealTimers();
  await service.close();
});

/** The processes of the server that listen for a process of ours. */
async function listeners(): Promise<number[]> {
  const { rows } = await service.database.asOwner(
    `select pid from pg_stat_activity
     where datname = current_database() and application_name = 'benchcall live' and query like 'listen%' and state = 'idle'`,
  );
  return rows.map((row) => Number(row.pid));
}

async function listening(count: number, but: readonly number[] = []): Promise<number[]> {
  for (;;) {
    const found = (await listeners()).filter((pid) => !but.includes(pid));
    if (found.length === count) return found;
  }
}

describe('while the connection that listens is cut', () => {
  it('what is committed arrives all the same, and hints are heard again afterwards', async () => {
    // No look by the clock: only listening again can bring what was missed.
    vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
    const second = await service.secondProcess();
    const call = await liveCall(service);
    const before = await call.newest();
    const stream = await benchStream(await second.listen(), call);
    const old = await listening(2);
    for (const pid of old) await service.database.asOwner('select pg_terminate_backend($1, 5000)', [pid]);
    expect((await listeners()).filter((pid) => old.includes(pid))).toEqual([]);
    await call.keep();
    await call.keep();
    await stream.until((client) => client.seqs().length === 2);
    await listening(2, old);
    await call.keep();
    await stream.until((client) => client.seqs().length === 3);
    expect(stream.seqs()).toEqual(range(before + 1, before + 3));
    stream.cut();
  });

  it('leaves one listener for each process behind, however often it is cut', async () => {
    await service.secondProcess();
    let cut: number[] = [];
    for (let times = 0; times < 3; times += 1) {
      const now = await listening(2, cut);
      for (const pid of now) await service.database.asOwner('select pg_terminate_backend($1, 5000)', [pid]);
      cut = [...cut, ...now];
    }
    await listening(2, cut);
    const { rows } = await service.database.asOwner(
      `select count(*)::int as count from pg_stat_activity where datname = current_database() and application_name = 'benchcall live'`,
    );
    expect(rows[0]?.count).toBe(2);
  });
});

describe('where no hint ever comes, as behind a pooler in transaction mode', () => {
  it('the record is looked at every few seconds', async () => {
    vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
    // Port 1 of loopback refuses: this process never listens.
    const deaf = new URL(service.database.serviceUrl);
    deaf.port = '1';
    const second = await service.secondProcess({ listenUrl: deaf.href });
    const call = await liveCall(service);
    const stream = await benchStream(await second.listen(), call);
    await stream.until((client) => client.events.some((event) => event.name === 'presence'));
    const before = await call.newest();
    await call.keep();
    await call.keep();
    expect(stream.seqs()).toEqual([]);
    vi.advanceTimersByTime(5_000);
    await stream.until((client) => client.seqs().length === 2);
    expect(stream.seqs()).toEqual([before + 1, before + 2]);
    stream.cut();
  });
});
