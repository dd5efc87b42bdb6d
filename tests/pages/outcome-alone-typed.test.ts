import { afterAll, beforeAll, expect, test } from 'vitest';
import { type LiveCall, liveCall } from '../tools/live-call.ts';
import { postForm } from '../tools/post-form.ts';
import { type TestService, testService } from '../tools/service.ts';

/** When a phone says that an entry was typed stands beside when it arrived, and is said to be the phone’s. */
let service: TestService;
let call: LiveCall;
beforeAll(async () => {
  service = await testService();
  call = await liveCall(service);
});
afterAll(() => service.close());

const keep = (peak: string, typed: string) =>
  postForm(
    service,
    '/bench/readings',
    { form: 'reading', setUpId: call.setUpId, kind: 'lobe-lift', peak },
    { headers: { ...call.bench, prefer: 'return=minimal', 'benchcall-typed': typed } },
  );
const page = async (url: string) => (await service.request({ url, headers: call.cookie })).body;

test('an entry that was typed long before is told so on the tape, on paper and in JSON', async () => {
  const typed = new Date(Date.now() - 3 * 3_600_000).toISOString();
  expect((await keep('.330', typed)).statusCode).toBe(201);
  for (const url of [`/calls/${call.callId}/steps/ratio`, `/calls/${call.callId}/report`])
    expect(await page(url)).toMatch(
      new RegExp(`typed <time datetime="${typed}">[^<]+</time> by the phone’s clock`),
    );
  const { body } = await service.request({
    url: `/api/v1/builds/${call.buildId}/events`,
    headers: call.desk.bearer,
  });
  expect(body).toContain(`"typedAt":"${typed}"`);
});

test.each([
  ['a moment before', () => new Date(Date.now() - 60_000).toISOString()],
  ['at no time that can be read', () => 'yesterday'],
])('one that was typed %s is told by when it arrived alone', async (_, typed) => {
  const before = (await page(`/calls/${call.callId}/steps/ratio`)).split('by the phone’s clock').length;
  expect((await keep('.331', typed())).statusCode).toBe(201);
  expect((await page(`/calls/${call.callId}/steps/ratio`)).split('by the phone’s clock').length).toBe(before);
});
