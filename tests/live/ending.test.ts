import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { memberOf } from '../../shared/member.ts';
import { sendJson } from '../tools/call.ts';
import { benchStream, type LiveCall, liveCall } from '../tools/live-call.ts';
import { type TestService, testService } from '../tools/service.ts';
import { openStream } from '../tools/stream-client.ts';

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

async function revoke(): Promise<void> {
  const { status, text } = await sendJson(
    service,
    call.desk.bearer,
    'DELETE',
    `/api/v1/calls/${call.callId}/share-links/${call.linkId}`,
  );
  if (status >= 300) throw new Error(text);
}

describe('a link that is ended', () => {
  it('ends its open stream in another process at once, and opens no other', async () => {
    const stream = await benchStream(base, call);
    await stream.until((client) => client.retry !== undefined);
    await revoke();
    await stream.over;
    expect(stream.seqs()).toEqual([]);
    const again = await benchStream(base, call);
    expect(again.status).toBe(401);
    await again.over;
  });

  it('leaves the streams of others open', async () => {
    const desk = await openStream(
      `${base}/live/calls/${call.callId}?after=${await call.newest()}`,
      call.cookie,
    );
    await desk.until((client) => client.retry !== undefined);
    await revoke();
    await desk.until((client) => client.seqs().length === 1);
    await call.keep();
    await desk.until((client) => client.seqs().length === 2);
    desk.cut();
  });
});

describe('a right that is ended', () => {
  const streamOf = async (headers: Record<string, string>) => {
    const stream = await openStream(`${base}/live/calls/${call.callId}`, headers);
    await stream.until((client) => client.seqs().length > 0);
    return stream;
  };

  // The clock of the beats stands still in this file: what ends a stream here is the hint alone.
  it('a session: its stream in another process ends at once, those of others go on', async () => {
    const stream = await streamOf(call.cookie);
    const out = await service.app.inject({ method: 'POST', url: '/sign-out', headers: call.cookie });
    expect(out.statusCode).toBe(303);
    await stream.over;
    expect((await openStream(`${base}/live/calls/${call.callId}`, call.cookie)).status).toBe(401);
  });

  it('a key', async () => {
    const { json } = await sendJson(service, call.desk.bearer, 'POST', '/api/v1/keys', {
      name: 'a system',
      scopes: ['read'],
    });
    const bearer = { authorization: `Bearer ${String(json.secret)}` };
    const stream = await openStream(`${base}/api/v1/builds/${call.buildId}/live`, bearer);
    await stream.until((client) => client.seqs().length > 0);
    const id = String(memberOf(json.key, 'id'));
    await sendJson(service, call.desk.bearer, 'DELETE', `/api/v1/keys/${id}`);
    await stream.over;
  });

  it('a person who is taken off the desk', async () => {
    const stream = await streamOf(call.cookie);
    const boss = await service.person({ shopId: call.desk.shopId, roles: ['administrator'] });
    const { status } = await sendJson(
      service,
      boss.bearer,
      'POST',
      `/api/v1/staff/${call.desk.staffId}/disable`,
      {},
    );
    expect(status).toBe(200);
    await stream.over;
  });
});

describe('a stranger', () => {
  it('who is not signed in is asked to', async () => {
    for (const url of ['/live/bench', `/live/calls/${call.callId}`, `/api/v1/builds/${call.buildId}/live`])
      expect((await openStream(base + url, {})).status, url).toBe(401);
  });

  it('from another shop finds nothing', async () => {
    const other = await service.person({ name: 'Somebody else' });
    const cookie = { cookie: `benchcall-desk=${other.cookies['benchcall-desk']}` };
    expect((await openStream(`${base}/live/calls/${call.callId}`, cookie)).status).toBe(404);
    expect((await openStream(`${base}/api/v1/builds/${call.buildId}/live`, other.bearer)).status).toBe(404);
  });

  it('with a link to another build finds nothing', async () => {
    const other = await liveCall(service);
    expect((await openStream(`${base}/live/calls/${other.callId}`, call.bench)).status).toBe(401);
    const stream = await openStream(`${base}/live/bench`, call.bench);
    const before = await call.newest();
    await other.keep();
    await call.keep();
    await stream.until((client) => client.seqs().at(-1) === before + 1);
    expect(stream.seqs()).toHaveLength(before + 1);
    stream.cut();
  });
});

describe('a process that ends', () => {
  it('ends its streams, and close() returns though their clients never let go', async () => {
    const second = await service.secondProcess();
    const own = await second.listen();
    const streams = await Promise.all([benchStream(own, call), benchStream(own, call)]);
    for (const stream of streams) await stream.until((client) => client.retry !== undefined);
    await second.close();
    for (const stream of streams) await stream.over;
    const { rows } = await service.database.asOwner('select who from presence where build_id = $1', [
      call.buildId,
    ]);
    expect(rows).toEqual([]);
  });

  it('lets a stream go that is asked for while it drains', async () => {
    const second = await service.secondProcess();
    const own = await second.listen();
    second.deps.hub.drain();
    const late = await benchStream(own, call);
    await late.over;
    await second.close();
  });
});
