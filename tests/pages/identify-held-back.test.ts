import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openCall, sendJson } from '../tools/call.ts';
import { loadDemoCatalogue, SORREL } from '../tools/demo-catalogue.ts';
import { textOf } from '../tools/page-text.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

let service: TestService;
let owner: Person;
beforeAll(async () => {
  service = await testService();
  owner = await service.person();
  await loadDemoCatalogue(service, owner);
});
afterAll(() => service.close());

/** All that is read of the part but its roller. */
const BUT_ROLLER = SORREL.filter(({ kind }) => kind !== 'roller-diameter');

async function facesWith(readings: readonly object[]) {
  const { buildId, callId } = await openCall(service, owner, 'Held back');
  for (const body of readings) {
    const url = `/api/v1/builds/${buildId}/identification/readings`;
    const { status, text } = await sendJson(service, owner.bearer, 'POST', url, body);
    expect(status, text).toBe(201);
  }
  const pages = await Promise.all(
    ['steps/identify', 'report', 'takeover', 'worksheet'].map(async (name) => {
      const { body } = await service.request({ url: `/calls/${callId}/${name}`, cookies: owner.cookies });
      return [name, textOf(body)] as const;
    }),
  );
  const json = await sendJson(service, owner.bearer, 'GET', `/api/v1/builds/${buildId}/identification`);
  const whole = await sendJson(service, owner.bearer, 'GET', `/api/v1/builds/${buildId}/assessment`);
  return [...pages, ['identification', json.text] as const, ['assessment', whole.text] as const];
}

/** A chance in words or figures, and what would follow from a family. */
const CHANCE = /\d %|nearly settled|Likely\.|Possible\.|Unlikely\.|If it is |"probability"|"rightFirst"/i;
// A part of the catalogue that is wide is said to be so, with its chance, once it is named.
const BY_NAME = /Sorrel 160-B stands first, \d+ %/;

describe('chances of families on every face', () => {
  test.each([
    ['one odd reading', { kind: 'roller-diameter', size: '.350 in' }],
    ['another odd reading', { kind: 'body-width', size: '1.080 in' }],
  ])('%s: no family is named, and nowhere stands a chance or what would follow', async (_, odd) => {
    const faces = await facesWith([...BUT_ROLLER, odd]);
    expect(faces.find(([name]) => name === 'assessment')?.[1]).toContain('no family is named yet');
    for (const [name, text] of faces) expect(CHANCE.exec(text)?.[0], name).toBeUndefined();
  });

  test('once one is named they stand beside it', async () => {
    const faces = new Map(await facesWith([...BUT_ROLLER, { kind: 'roller-diameter', size: '.496 in' }]));
    for (const name of ['steps/identify', 'report', 'assessment', 'identification'])
      expect(faces.get(name), name).toMatch(BY_NAME);
    expect(faces.get('identification')).toContain('"probability"');
    expect(faces.get('report')).toContain('If it is Sorrel 160-B');
  });
});
