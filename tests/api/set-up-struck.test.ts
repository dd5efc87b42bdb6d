import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { asked, described, type Entry, passes, setUp } from '../calls/entry.ts';
import { openToPlay, type Playing } from '../calls/play.ts';
import { saidIn } from '../calls/said.ts';
import { sendJson } from '../tools/call.ts';
import { at } from '../tools/numbers.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/** A set-up that was begun by mistake is struck out with the reason, by JSON and by form. The engine is invented. */
let service: TestService;
let desk: Person;
beforeAll(async () => {
  service = await testService();
  desk = await service.person();
});
afterAll(() => service.close());

const ENTRIES: readonly Entry[] = [
  asked('none', 'apart'),
  described({ engine: { cylinders: 8, lifter: 'solid-flat' } }),
  described({
    cam: { assumedRatio: 1.5, intake: { lobeLift: '.350 in' }, exhaust: { lobeLift: '.350 in' } },
  }),
  described({ rockers: { nominalRatio: 1.5 } }),
  setUp('one'),
  ...passes('one', 'valve-lift', ['.525 in', '.525 in', '.5255 in'], { counted: true }),
  setUp('by mistake', { valve: 'exhaust' }),
];

async function played(): Promise<Playing> {
  const playing = await openToPlay(service, desk, 'verify-ratio');
  for (const entry of ENTRIES) await playing.enter(entry);
  return playing;
}
/** What is next and what is missing, as it is said. */
async function askedIn(call: Playing): Promise<string> {
  const { next, missing } = await saidIn(call);
  return [next?.sentence, ...missing.map(({ sentence }) => sentence)].join();
}

const strike = ({ buildId, kept }: Playing, name: string, body: object = { struck: true }) =>
  sendJson(service, desk.bearer, 'POST', `/api/v1/builds/${buildId}/set-ups/${kept.get(name)}/corrections`, {
    reason: 'the other valve was meant',
    ...body,
  });

describe('a set-up that was begun by mistake', () => {
  test('struck out, nothing is asked of it, and it stays on the record with the reason', async () => {
    const call = await played();
    expect((await saidIn(call)).next?.sentence).toBe(
      'Read the valve lift of 1 exhaust, three passes, small hand first.',
    );
    const { status, json } = await strike(call, 'by mistake');
    expect([status, json.struck]).toEqual([201, true]);
    expect(await askedIn(call)).not.toMatch(/1 exhaust/);
    // 1 intake has its three passes: what is left of it is whose arm it is.
    expect((await saidIn(call)).next?.action).toBe('arm');
    const { setUps } = await call.get('build/set-ups');
    expect([at(setUps, 1, 'struck'), at(setUps, 1, 'corrections', 0, 'reason')]).toEqual([
      true,
      'the other valve was meant',
    ]);
  });

  test('on the valve that waits for a reading it is gone on with; struck out, that reading is asked for again', async () => {
    const playing = await openToPlay(service, desk, 'verify-ratio');
    const next = async () => (await saidIn(playing)).next?.sentence;
    const entries: readonly Entry[] = [
      ...ENTRIES.slice(0, 1),
      described({ engine: { cylinders: 8, lifter: 'hydraulic-flat' } }),
      ...ENTRIES.slice(2, 4),
      setUp('sinks', { lifter: 'hydraulic' }),
      ...passes('sinks', 'valve-lift', ['.525 in', '.525 in', '.5255 in'], { counted: true }),
    ];
    for (const entry of entries) await playing.enter(entry);
    const before = await next();
    expect(before).toMatch(/^1 intake: take a reading on a solid or locked lifter/);
    await playing.enter(setUp('solid'));
    expect(await next()).toMatch(/^1 intake: go on with set-up 2/);
    expect((await strike(playing, 'solid')).status).toBe(201);
    expect(await next()).toBe(before);
  });

  test('nothing is read in it any more, and it is not struck out twice', async () => {
    const call = await played();
    await strike(call, 'by mistake');
    expect((await strike(call, 'by mistake')).status).toBe(409);
    const url = `/api/v1/builds/${call.buildId}/set-ups/${call.kept.get('by mistake')}/readings`;
    const kept = await sendJson(service, desk.bearer, 'POST', url, { kind: 'valve-lift', peak: '.525 in' });
    expect(kept.status).toBe(409);
    expect((await sendJson(service, desk.bearer, 'GET', url.replace('readings', 'ratio'))).status).toBe(404);
  });

  test('one whose readings stand is refused, until they are struck out', async () => {
    const call = await played();
    expect((await strike(call, 'one')).status).toBe(409);
    for (const pass of [1, 2, 3]) {
      const url = `/api/v1/builds/${call.buildId}/readings/${call.kept.get(`one valve-lift ${pass}`)}/corrections`;
      await sendJson(service, desk.bearer, 'POST', url, { reason: 'another engine' });
    }
    expect((await strike(call, 'one')).status).toBe(201);
  });

  test('it is not put right along with it', async () => {
    const call = await played();
    const { status } = await strike(call, 'by mistake', { struck: true, cylinder: 2 });
    expect(status).toBe(422);
  });

  test('by its form: with the reason alone; one that was read has no such button', async () => {
    const call = await played();
    const page = async (path: string) =>
      (await service.request({ url: `/calls/${call.callId}${path}`, cookies: desk.cookies })).body;
    const address = `/set-ups/${call.kept.get('by mistake')}`;
    expect(await page(address)).toContain('Strike it out');
    expect(await page(`/set-ups/${call.kept.get('one')}`)).not.toContain('Strike it out');
    const post = (reason: string) =>
      service.app.inject({
        method: 'POST',
        url: `/calls/${call.callId}${address}/correct`,
        cookies: desk.cookies,
        headers: { 'content-type': 'application/x-www-form-urlencoded', 'sec-fetch-site': 'same-origin' },
        payload: new URLSearchParams({ key: crypto.randomUUID(), act: 'strike', reason }).toString(),
      });
    expect((await post('')).statusCode).toBe(422);
    expect((await post('the other valve was meant')).statusCode).toBe(303);
    expect(await page('/steps/ratio')).toContain('struck out; the other valve was meant');
  });
});
