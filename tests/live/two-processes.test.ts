import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { BUILDER, benchStream, type LiveCall, liveCall, range } from '../tools/live-call.ts';
import { type TestService, testService } from '../tools/service.ts';
import { openStream, type StreamClient } from '../tools/stream-client.ts';

/*
 * Looks by the clock are switched off here: what arrives at the second process was told by the database.
 * The form of the stream is that of WHATWG HTML, section 9.2 (server-sent events).
 */
let service: TestService;
let base: string;
let call: LiveCall;

beforeAll(async () => {
  vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
  service = await testService();
  base = await (await service.secondProcess()).listen();
});
afterAll(async () => {
  await service.close();
  vi.useRealTimers();
});
beforeEach(async () => {
  call = await liveCall(service);
});

const present = (client: StreamClient): unknown =>
  client.events.findLast((event) => event.name === 'presence')?.data;

describe('an entry made through one process', () => {
  it('arrives on a stream of another, with its number and who made it', async () => {
    const stream = await benchStream(base, call);
    expect(stream.status).toBe(200);
    const before = await call.newest();
    await call.keep();
    await stream.until((client) => client.seqs().length === 1);
    expect(stream.events.find((event) => event.name === 'entry')).toMatchObject({
      id: before + 1,
      data: { seq: before + 1, kind: 'reading-kept', by: 'Robin at the desk', byKind: 'staff' },
    });
    stream.cut();
  });

  it('comes once and in order through a connection that is lost in the middle of fifty', async () => {
    const before = await call.newest();
    const first = await benchStream(base, call);
    const burst = (async () => {
      for (let made = 0; made < 50; made += 1) await call.keep();
    })();
    await first.until((client) => client.seqs().length >= 20);
    first.cut();
    await first.over;
    const got = first.seqs();
    // A browser sends Last-Event-ID together with the address of the first time.
    const second = await openStream(`${base}/live/bench?step=ratio&after=${before}`, {
      ...call.bench,
      'last-event-id': String(got.at(-1)),
    });
    await burst;
    await second.until((client) => client.seqs().at(-1) === before + 50);
    expect([...got, ...second.seqs()]).toEqual(range(before + 1, before + 50));
    second.cut();
  });

  it('comes also when more happened than one look takes', async () => {
    const stream = await benchStream(base, call, 0);
    await service.database.asOwner(
      `insert into event (shop_id, build_id, seq, kind, data, by_kind, by_id, by_name)
       select shop_id, id, last_seq + n, 'note-kept', '{}', 'staff', $2, 'Many' from build, generate_series(1, 450) n where id = $1`,
      [call.buildId, call.desk.staffId],
    );
    await service.database.asOwner('update build set last_seq = last_seq + 450 where id = $1', [
      call.buildId,
    ]);
    await call.keep();
    const last = await call.newest();
    await stream.until((client) => client.seqs().at(-1) === last);
    expect(stream.seqs()).toEqual(range(1, last));
    stream.cut();
  });
});

describe('the stream', () => {
  it('is an event stream that nobody keeps, and says when to try again', async () => {
    const stream = await benchStream(base, call);
    await stream.until((client) => client.retry !== undefined);
    expect(stream.headers).toMatchObject({
      'content-type': 'text/event-stream; charset=utf-8',
      'cache-control': 'no-store',
      'x-accel-buffering': 'no',
      'x-content-type-options': 'nosniff',
    });
    expect(stream.retry).toBe(1000);
    stream.cut();
  });

  it('sends a comment with each beat, so that proxies keep it open', async () => {
    const stream = await benchStream(base, call);
    await stream.until((client) => client.retry !== undefined);
    vi.advanceTimersByTime(15_000);
    await stream.until((client) => client.comments.length > 0);
    vi.advanceTimersByTime(15_000);
    await stream.until((client) => client.comments.length > 1);
    stream.cut();
  });
});

describe('who is here', () => {
  it('is told on both sides when somebody comes and when they go', async () => {
    const own = await service.listen();
    const desk = await openStream(`${own}/live/calls/${call.callId}?step=parts`, call.cookie);
    await desk.until((client) => present(client) !== undefined);
    expect(present(desk)).toEqual([]);
    const bench = await benchStream(base, call);
    await bench.until((client) => present(client) !== undefined);
    expect(present(bench)).toEqual([{ who: 'Robin at the desk', kind: 'staff', step: 'parts' }]);
    await desk.until((client) => JSON.stringify(present(client)).includes(BUILDER));
    expect(present(desk)).toEqual([{ who: BUILDER, kind: 'builder', step: 'ratio' }]);
    bench.cut();
    await desk.until((client) => JSON.stringify(present(client)) === '[]');
    desk.cut();
  });
});
