import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { eventView, showEvent } from '../../server/records/whole-build/event-view.ts';
import { ALL_EVENTS } from '../../server/records/whole-build/record-parts.ts';
import { sendJson } from '../tools/call.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';
import { type WholeCall, wholeCall } from '../tools/whole-call.ts';

const entries = z.array(z.looseObject({ id: z.string() }));
const exported = z.looseObject({
  readings: entries,
  sheetReadings: entries,
  partReadings: entries,
  tipMarks: entries,
  gapScans: entries,
  workings: entries,
  events: z.array(z.looseObject({ kind: z.string() })),
});

let service: TestService;
let person: Person;
let call: WholeCall;

beforeAll(async () => {
  service = await testService();
  person = await service.person();
  call = await wholeCall(service, person);
});
afterAll(() => service.close());

async function send(method: 'POST' | 'PUT' | 'DELETE', url: string, body?: object) {
  const { json, status, text } = await sendJson(service, person.bearer, method, `/api/v1${url}`, body);
  expect(status, `${url}: ${text}`).toBeLessThan(300);
  return json;
}
const build = (rest: string, body: object) => send('POST', `/builds/${call.buildId}${rest}`, body);
const ofCall = (rest: string, body: object) => send('POST', `/calls/${call.callId}${rest}`, body);

async function everything() {
  const url = `/api/v1/builds/${call.buildId}/export`;
  return exported.parse((await sendJson(service, person.bearer, 'GET', url)).json);
}

const REASON = { reason: 'misheard' };
const VALVE = { cylinder: 1, valve: 'intake' };

/** Puts one entry of each kind in the place of another, and strikes its own successor out. */
async function correctEachKind() {
  const correct = async (
    at: string,
    of: 'readings' | 'sheetReadings' | 'partReadings' | 'tipMarks' | 'gapScans',
    instead: object,
  ) => {
    const strike = async (rest: object) => {
      const last = (await everything())[of].at(-1);
      await build(`${at}/${last?.id}/corrections`, { ...REASON, ...rest });
    };
    await strike(instead);
    await strike({});
  };
  await correct('/readings', 'readings', { peak: '.561 in' });
  await correct('/sheet/readings', 'sheetReadings', { reading: '.351 in' });
  await build('/identification/readings', { kind: 'body-width', size: '.841 in' });
  await correct('/identification/readings', 'partReadings', { size: '.842 in' });
  await correct('/tip-marks', 'tipMarks', { width: '.060 in', side: 'centred' });
  await correct('/gap-scans', 'gapScans', { lash: 'zero' });
  const working = (await everything()).workings.at(-1);
  await build(`/workings/${working?.id}/corrections`, REASON);
}

/** What a whole call has not: a mark, a lash, what the ratio does, promises kept, links ended, holds, the end. */
async function keepTheRest() {
  // Read wrong: while it stands as short, nobody turns the engine for a mark or a lash.
  const short = (await everything()).sheetReadings.find(
    ({ kind, replacedBy }) => kind === 'rocker-to-retainer' && replacedBy === undefined,
  );
  await build(`/sheet/readings/${short?.id}/corrections`, { ...REASON, reading: '.040 in' });
  await send('PUT', `/builds/${call.buildId}/units`, { units: 'metric' });
  await build('/identification/parts', { name: 'from the box' });
  const arm = await build('/arms', { name: 'arm Z' });
  await build(`/arms/${String(arm.id)}/marks`, { otherNumber: 'Z 204' });
  await build('/tip-marks', { ...VALVE, width: '.062 in', side: 'centred' });
  const readings = ['.120 in', '.110 in', '.125 in'].map((gap, index) => ({
    crankAngle: `${8 + 2 * index} deg`,
    gap,
  }));
  await build('/gap-scans', { ...VALVE, readings });
  await build('/lash', { ...VALVE, lash: '.016 in' });
  const said = { method: { lash: 'set', lashSetting: '.016 in' }, reason: 'told later' };
  await build(`/set-ups/${call.setUpId}/corrections`, said);
  const { seq } = await build(`/set-ups/${call.setUpId}/consequences`, {});
  await build(`/consequences/${String(seq)}/corrections`, REASON);
  await ofCall('/notes', { kind: 'note', body: 'rang back' });
  const promise = await ofCall('/notes', { kind: 'promise', body: 'Send the chart', due: '2026-03-14' });
  await ofCall(`/notes/${promise.id}/done`, {});
  const { link } = await ofCall('/share-links', { holder: 'B' });
  await send(
    'DELETE',
    `/calls/${call.callId}/share-links/${z.looseObject({ id: z.string() }).parse(link).id}`,
  );
  await correctEachKind();
  await ofCall('/hold', { reason: 'tight' });
  await ofCall('/hold/lift', { reason: 'looked at' });
  await ofCall('/close', { outcome: 'found' });
}

describe('every kind of event, kept through JSON', () => {
  test('is in the log and the export as the document says, with nothing beside it', async () => {
    await keepTheRest();
    const { events } = await everything();
    const kinds = new Set(events.map(({ kind }) => kind));
    expect(Object.keys(ALL_EVENTS).filter((name) => !kinds.has(name))).toEqual([]);
    for (const event of events) expect(eventView.safeParse(event).error, event.kind).toBeUndefined();
    expect([...kinds].filter((kind) => !Object.hasOwn(ALL_EVENTS, kind))).toEqual([]);
    const url = `/api/v1/builds/${call.buildId}/events?limit=500`;
    expect((await sendJson(service, person.bearer, 'GET', url)).json.events).toEqual(events);
  });
});

describe('an event that can’t be read', () => {
  const kept = { seq: 3, by: 'B', byKind: 'staff', at: new Date(0) };
  const shown = { seq: 3, by: 'B', byKind: 'staff', at: '1970-01-01T00:00:00.000Z' };
  test.each([
    ['of an unknown kind', 'chart-kept', { chart: 1 }],
    ['without what its kind has', 'working-kept', { computation: 'adjuster' }],
    ['with more than its kind has', 'working-kept', { computation: 'adjuster', title: 'A', more: true }],
  ])('%s is shown as such, whole', (_, kind, data) => {
    const view = showEvent({ ...kept, kind, data });
    expect(view).toEqual({ ...shown, kind: 'not-read', recordedAs: kind, data });
    expect(eventView.safeParse(view).error).toBeUndefined();
  });
  test('is told from one that can', () => {
    const data = { computation: 'adjuster', title: 'Adjuster' };
    expect(showEvent({ ...kept, kind: 'working-kept', data })).toEqual({
      ...shown,
      kind: 'working-kept',
      data,
    });
  });
});
