import { afterAll, beforeAll, expect, test } from 'vitest';
import { openCall, sendJson } from '../tools/call.ts';
import { makeLink } from '../tools/filled-call.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';
import { RAISED_STOPS, stoppedCall } from '../tools/stopped-call.ts';

let service: TestService;
let desk: Person;
beforeAll(async () => {
  service = await testService();
  desk = await service.person();
});
afterAll(() => service.close());

type Cookies = Readonly<Record<string, string>>;
const bodyOf = async (url: string, cookies: Cookies) => {
  const { statusCode, body } = await service.request({ url, cookies });
  expect(statusCode, url).toBe(200);
  return body;
};

/** Where the button goes that asks for a photograph. */
const wayIn = (body: string): string | undefined =>
  /<a [^>]*href="([^"]*\/photographs#[^"]*)"[^>]*>/.exec(body)?.[1];

/** It lands on the field for the picture: what its anchor names is there, and can be put in focus. */
async function landsOnForm(page: string, cookies: Cookies) {
  const body = await bodyOf(page, cookies);
  const [url = '', at = ''] = (wayIn(body) ?? '').split('#');
  expect(url, page).toMatch(/\/photographs$/);
  const inputs = (await bodyOf(url, cookies)).match(/<input [^>]*>/g) ?? [];
  const named = inputs.filter((input) => input.includes(` id="${at}"`));
  expect(named, at).toHaveLength(1);
  expect(named[0]).toContain('type="file"');
}

test.each(RAISED_STOPS.filter((kind) => kind !== 'gap-short'))(
  'stopped by %s: from its own step and from another, on both sides',
  async (kind) => {
    const { callId, bench } = await stoppedCall(service, desk, kind);
    for (const step of ['sheet', 'adjuster', 'geometry', 'notes']) {
      await landsOnForm(`/calls/${callId}/steps/${step}`, desk.cookies);
      await landsOnForm(`/bench/steps/${step}`, bench);
    }
  },
);

test('held by a person: the same, with the way to the step beside it', async () => {
  const { callId } = await openCall(service, desk, 'Held');
  await sendJson(service, desk.bearer, 'POST', `/api/v1/calls/${callId}/hold`, { reason: 'a tight spot' });
  const { bench } = await makeLink(service, desk, callId);
  await landsOnForm(`/calls/${callId}/steps/ratio`, desk.cookies);
  await landsOnForm('/bench/steps/ratio', { 'benchcall-bench': bench });
  expect(await bodyOf(`/calls/${callId}/steps/ratio`, desk.cookies)).toContain(
    `/calls/${callId}/steps/triage"`,
  );
});

test('a short gap asks for what is written down, not for a photograph', async () => {
  const { callId } = await stoppedCall(service, desk, 'gap-short');
  expect(wayIn(await bodyOf(`/calls/${callId}/steps/notes`, desk.cookies))).toBeUndefined();
});
