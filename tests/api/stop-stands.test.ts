import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { sendJson } from '../tools/call.ts';
import { postForm } from '../tools/post-form.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';
import { RAISED_STOPS as KINDS, type StoppedCall, stoppedCall, stopsOf } from '../tools/stopped-call.ts';

let service: TestService;
let desk: Person;
beforeAll(async () => {
  service = await testService();
  desk = await service.person();
});
afterAll(() => service.close());

const STRIKE = { reason: 'read wrong' };
const code = (json: Record<string, unknown>) => String(json.type).split('/').at(-1);

/** What a builder would put in the place of the entry, so that nothing stops any more. */
const HARMLESS = {
  'gap-short': { reading: '.151 in' },
  'lash-grew-again': { reading: '.017 in' },
  'lobe-worn': { reading: '.341 in' },
  'mark-at-the-edge': { width: '.040 in', side: 'centred' },
} as const;

describe('a reading that a stop rests on', () => {
  test.for(KINDS)('%s: a builder neither strikes it out nor replaces it, by JSON or form', async (kind) => {
    const call = await stoppedCall(service, desk, kind);
    const before = await stopsOf(service, desk.bearer, call.buildId);
    expect(before.map((each) => each.code)).toEqual([kind]);
    for (const body of [STRIKE, { ...HARMLESS[kind], ...STRIKE }]) {
      const refused = await sendJson(service, call.link, 'POST', call.corrections, body);
      expect([refused.status, code(refused.json)]).toEqual([409, 'stop-rests-on-it']);
      expect(refused.json.detail).toContain('struck out by the desk');
    }
    const form = await postForm(
      service,
      `/bench${call.page}`,
      { act: 'strike', reason: 'read wrong' },
      { cookies: call.bench },
    );
    expect(form.statusCode).not.toBe(303);
    expect(form.body).toContain('struck out by the desk');
    expect(await stopsOf(service, desk.bearer, call.buildId)).toEqual(before);
  });

  test.for(KINDS)('%s: the builder’s page offers no form and says why; the desk’s has it', async (kind) => {
    const call = await stoppedCall(service, desk, kind);
    const bench = await service.request({ url: `/bench${call.page}`, cookies: call.bench });
    expect(bench.body).toContain('A reading that a stop rests on is struck out by the desk');
    expect(bench.body).not.toContain('Strike it out');
    const own = await service.request({ url: `/calls/${call.callId}${call.page}`, cookies: desk.cookies });
    expect(own.body).toContain('Strike it out');
  });

  test.for(KINDS)('%s: the desk strikes it out with the reason, and the stop is gone', async (kind) => {
    const call = await stoppedCall(service, desk, kind);
    const done = await sendJson(service, desk.bearer, 'POST', call.corrections, STRIKE);
    expect(done.status, done.text).toBe(201);
    expect(await stopsOf(service, desk.bearer, call.buildId)).toEqual([]);
  });
});

describe('nothing else that a builder does takes a stop away', () => {
  test('a sibling of a worn lobe is corrected by the desk: the stop rests on all of them', async () => {
    const call = await stoppedCall(service, desk, 'lobe-worn');
    const one = await siblingOf(call);
    const refused = await sendJson(
      service,
      call.link,
      'POST',
      `/api/v1/builds/${call.buildId}/sheet/readings/${one}/corrections`,
      { reading: '.330 in', reason: 'read wrong' },
    );
    expect([refused.status, code(refused.json)]).toEqual([409, 'stop-rests-on-it']);
  });

  test('contact that was told is not taken back from the bench', async () => {
    const call = await stoppedCall(service, desk, 'gap-short');
    const told = (contact: string, who: { authorization?: string } = call.link) =>
      sendJson(service, who, 'PUT', `/api/v1/calls/${call.callId}/triage`, { engineState: 'apart', contact });
    expect((await told('something')).status).toBe(200);
    const back = await told('none');
    expect([back.status, code(back.json)]).toEqual([409, 'stop-rests-on-it']);
    expect((await told('none', desk.bearer)).status).toBe(200);
  });

  test('history that would explain a growth away is told to the desk', async () => {
    const call = await stoppedCall(service, desk, 'lash-grew-again');
    const history = { cylinder: 2, valve: 'intake', lash: '.026 in', moment: 'set', engine: 'cold' };
    const line = { ...history, readOn: '2026-02-03', nut: 'not-looked' };
    const refused = await sendJson(service, call.link, 'POST', `/api/v1/builds/${call.buildId}/lash`, line);
    expect([refused.status, code(refused.json)]).toEqual([409, 'stop-rests-on-it']);
    const other = { ...line, valve: 'exhaust', readOn: '2026-01-01' };
    const kept = await sendJson(service, call.link, 'POST', `/api/v1/builds/${call.buildId}/lash`, other);
    expect(kept.status, kept.text).toBe(201);
  });

  async function siblingOf(call: StoppedCall): Promise<string> {
    const { rows } = await service.database.asOwner(
      'select id from valve_reading where build_id = $1 and cylinder = 1',
      [call.buildId],
    );
    return String(rows[0]?.id);
  }
});
