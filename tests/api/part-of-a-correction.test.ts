import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { METHOD, openCall, sendJson, startSetUp } from '../tools/call.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/** A correction that has part of an entry strikes nothing out: the mark at the edge, and its stop, stay. */
let service: TestService;
let desk: Person;
beforeAll(async () => {
  service = await testService();
  desk = await service.person();
});
afterAll(() => service.close());

const post = (url: string, body: object) => sendJson(service, desk.bearer, 'POST', url, body);

const at = (buildId: string) => `/api/v1/builds/${buildId}`;
const both = (buildId: string, name: string) => ({
  keep: `${at(buildId)}/${name}`,
  kept: `${at(buildId)}/${name}`,
});

interface Kind {
  /** Where one is kept, and where those that were kept are corrected. */
  readonly begin: (buildId: string) => Promise<{ readonly keep: string; readonly kept: string }>;
  readonly entry: object;
  /** What a program might send of it alone. */
  readonly parts: readonly object[];
  /** The field that is asked for. */
  readonly asks: string;
}

const KINDS: Readonly<Record<string, Kind>> = {
  'a tip mark': {
    begin: async (buildId) => both(buildId, 'tip-marks'),
    entry: {
      cylinder: 1,
      valve: 'intake',
      width: '.090 in',
      side: 'exhaust',
      off: '.130 in',
      stem: '11/32 in',
    },
    parts: [{ side: 'valley' }, { off: '.013 in' }, { spring: 'light' }, { pushrod: '7.85 in' }],
    asks: 'width',
  },
  'a reading of a pass': {
    begin: async (buildId) => ({
      keep: `${at(buildId)}/set-ups/${await startSetUp(service, desk, buildId, METHOD)}/readings`,
      kept: `${at(buildId)}/readings`,
    }),
    entry: { kind: 'valve-lift', peak: '.560 in' },
    parts: [{ zeroReturn: '.004 in' }],
    asks: 'peak',
  },
  'a size of the part': {
    begin: async (buildId) => both(buildId, 'identification/readings'),
    entry: { kind: 'stud-pitch', size: '.5 in', count: 10 },
    parts: [{ tool: 'micrometer' }, { count: 9 }, { within: '.002 in' }, { place: 'underside' }],
    asks: 'size',
  },
};

describe.each(Object.entries(KINDS))('%s', (_, { begin, entry, parts, asks }) => {
  test.each(parts)('put right with %j alone is refused, and stays as it was', async (part) => {
    const { buildId } = await openCall(service, desk);
    const urls = await begin(buildId);
    const kept = await post(urls.keep, entry);
    expect(kept.status, kept.text).toBe(201);
    const told = () => sendJson(service, desk.bearer, 'GET', `${at(buildId)}/assessment`);
    const before = await told();
    const corrections = `${urls.kept}/${String(kept.json.id)}/corrections`;

    const answer = await post(corrections, { ...part, reason: 'read again' });
    expect(answer.status, answer.text).toBe(422);
    expect(answer.text).toContain(`/${asks}`);
    expect(answer.text).toContain('to strike it out, send the reason alone');

    expect((await told()).json.stop).toEqual(before.json.stop);
    const struck = await post(corrections, { reason: 'read again' });
    expect([struck.status, struck.json.struck]).toEqual([201, true]);
  });
});
