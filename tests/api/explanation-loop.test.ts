import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { evidenceOf } from '../../server/assessment/evidence.ts';
import type { Principal } from '../../server/auth/principal.ts';
import type { Tx } from '../../server/database/database.ts';
import { ratioRead } from '../../server/mechanics/assessment/ratio/ratio.ts';
import { indicatorPlaces } from '../../server/mechanics/assessment/ratio/read/indicator-places.ts';
import { callOf } from '../../server/records/whole-build/build-record.ts';
import { readBuildRecord } from '../../server/records/whole-build/load-build.ts';
import { METHOD, openCall, sendJson, startSetUp } from '../tools/call.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/**
 * What is said on the pages reaches the inference: a reading part of the way up, a small hand that was read, a zero
 * that came back, entries read back, lash taken out without the indicator being moved.
 */
let service: TestService;
let desk: Person;
beforeAll(async () => {
  service = await testService();
  desk = await service.person();
});
afterAll(() => service?.close());

const asPrincipal = <T>(work: (tx: Tx, principal: Principal) => Promise<T>): Promise<T> =>
  service.database.db.shopTransaction(desk.shopId, (tx) =>
    work(tx, {
      kind: 'program',
      shopId: desk.shopId,
      id: crypto.randomUUID(),
      name: 'test',
      scopes: ['read'],
    }),
  );

const RUNNING = { ...METHOD, spring: 'light', lash: 'set', alignment: 'not-said' };

async function fresh(method: object = RUNNING) {
  const { buildId, callId } = await openCall(service, desk);
  const read = async () => {
    const record = await asPrincipal((tx, principal) => readBuildRecord(tx, principal, { buildId }));
    return ratioRead(evidenceOf(record, callOf(record, callId)));
  };
  const setUpId = await startSetUp(service, desk, buildId, method);
  const at = `/api/v1/builds/${buildId}`;
  return {
    buildId,
    setUpId,
    send: (path: string, body: unknown) => sendJson(service, desk.bearer, 'POST', `${at}${path}`, body),
    keep: (body: unknown, on = setUpId) =>
      sendJson(service, desk.bearer, 'POST', `${at}/set-ups/${on}/readings`, body),
    read,
    input: async () => {
      const { explained } = await read();
      return explained.find(({ group }) => group.cylinder === 1)?.given?.input;
    },
    explanation: () => sendJson(service, desk.bearer, 'GET', `${at}/set-ups/${setUpId}/explanation`),
  };
}

describe('a reading part of the way up', () => {
  it('is kept with the lobe lift it was read at, and reaches the inference as a station', async () => {
    const call = await fresh();
    await call.keep({ kind: 'valve-lift', peak: '.557 in' });
    const { status, json } = await call.keep({
      kind: 'valve-lift-at',
      peak: '.320 in',
      atLobeLift: '.200 in',
    });
    expect(status).toBe(201);
    expect(json.atLobeLift).toMatchObject({ value: 0.2, unit: 'in', readAs: '.200 in' });
    const input = await call.input();
    expect(input?.readings[1]?.atLobeLift).toBeCloseTo(0.2, 12);
    expect(input?.readings[1]?.pass).toBe(2);
  });
  it('never counts as a pass of the full lift', async () => {
    const call = await fresh({ ...RUNNING, lobeSource: 'card' });
    await call.keep({ kind: 'valve-lift-at', peak: '.320 in', atLobeLift: '.200 in' });
    expect(await call.input()).toBeUndefined();
    const { json } = await call.explanation();
    expect(json.missing).toEqual(['a pass of the valve lift']);
  });
  it.each([
    [{ kind: 'valve-lift-at', peak: '.320 in' }, '/atLobeLift', 'required'],
    [{ kind: 'valve-lift', peak: '.320 in', atLobeLift: '.2 in' }, '/atLobeLift', 'not-allowed'],
    [{ kind: 'valve-lift-at', peak: '.320 in', atLobeLift: 'high' }, '/atLobeLift', 'not-a-number'],
  ])('%o is refused at %s', async (body, pointer, code) => {
    const call = await fresh();
    const { status, json } = await call.keep(body);
    expect(status).toBe(422);
    expect(json.errors).toEqual([expect.objectContaining({ pointer, code })]);
  });
  it('keeps its lobe lift when it is corrected', async () => {
    const call = await fresh();
    const { json } = await call.keep({ kind: 'valve-lift-at', peak: '.320 in', atLobeLift: '.200 in' });
    const later = await call.send(`/readings/${String(json.id)}/corrections`, {
      peak: '.322 in',
      reason: 'read again',
    });
    expect(later.json.atLobeLift).toMatchObject({ value: 0.2, unit: 'in' });
  });
});

describe('what was said of a reading', () => {
  it('a small hand that was read takes the doubt of the turns from this reading alone', async () => {
    const call = await fresh();
    await call.keep({ kind: 'valve-lift', peak: '.557 in' });
    await call.keep({ kind: 'valve-lift', peak: '.557 in', counted: true });
    expect((await call.input())?.readings.map((each) => each.counted)).toEqual([undefined, true]);
  });
  it('an answer that the turns are right holds for the set-up, whenever it was said', async () => {
    const call = await fresh();
    await call.keep({ kind: 'valve-lift', peak: '.557 in' });
    await call.send('/answers', {
      question: 'Could one turn of the dial be missing?',
      code: 'turn-miscounted',
      setUpId: call.setUpId,
      answer: 'five turns on the small hand',
      found: false,
    });
    await call.keep({ kind: 'valve-lift', peak: '.557 in' });
    expect((await call.input())?.readings.map((each) => each.counted)).toEqual([true, true]);
  });
  it('a zero that came back is told, and one that did not is told as found', async () => {
    const call = await fresh();
    await call.keep({ kind: 'valve-lift', peak: '.557 in', zeroReturn: '.002 in' });
    expect((await call.input())?.answers).toEqual([{ ask: 'zero-return', found: false }]);
    const other = await fresh();
    await other.keep({ kind: 'valve-lift', peak: '.557 in', zeroReturn: '-.003 in' });
    expect((await other.input())?.answers).toEqual([{ ask: 'zero-return', found: true }]);
    // Beside one that came back it is in no figure.
    await call.keep({ kind: 'valve-lift', peak: '.557 in', zeroReturn: '-.003 in' });
    expect((await call.input())?.readings).toHaveLength(1);
  });
  it('entries read back are told with what was found, and must say it', async () => {
    const call = await fresh();
    await call.keep({ kind: 'valve-lift', peak: '.557 in' });
    const question = {
      question: 'Read the entries back',
      code: 'read-back',
      setUpId: call.setUpId,
      answer: 'yes',
    };
    const refused = await call.send('/answers', question);
    expect(refused.status).toBe(422);
    expect(refused.json.errors).toEqual([expect.objectContaining({ pointer: '/found', code: 'required' })]);
    expect((await call.send('/answers', { ...question, found: false })).status).toBe(201);
    expect((await call.input())?.answers).toEqual([{ ask: 'read-back', found: false }]);
  });
});

describe('where the indicator stands', () => {
  it('is the same when lash or plunger is put right, and again when spring, lifter or valve changes', async () => {
    const call = await fresh();
    const more = async (method: object, on: object = {}) =>
      String((await call.send('/set-ups', { cylinder: 1, valve: 'intake', method, ...on })).json.id);
    const zeroed = await more({ ...RUNNING, lash: 'zero' });
    const straight = await more({ ...RUNNING, lash: 'zero', alignment: 'parallel' });
    const again = await more({ ...RUNNING, lash: 'zero', alignment: 'parallel' });
    const running = await more({ ...RUNNING, lash: 'zero', alignment: 'parallel', spring: 'running' });
    const other = await more({ ...RUNNING, lash: 'zero', spring: 'running' }, { cylinder: 3 });
    const places = indicatorPlaces((await call.read()).reads.map(({ setUp }) => setUp));
    expect([call.setUpId, zeroed, straight, again, running, other].map((id) => places.get(id))).toEqual([
      0, 0, 0, 1, 2, 3,
    ]);
    await call.keep({ kind: 'valve-lift', peak: '.557 in' });
    await call.keep({ kind: 'valve-lift', peak: '.573 in' }, zeroed);
    const input = await call.input();
    expect(input?.readings.map(({ setUp, lashSet }) => ({ setUp, lashSet }))).toEqual([
      { setUp: 0, lashSet: undefined },
      { setUp: 0, lashSet: true },
    ]);
  });
});
