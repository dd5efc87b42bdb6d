import { afterAll, beforeAll, expect, test } from 'vitest';
import { openCall, sendJson, startSetUp } from '../tools/call.ts';
import { textOf } from '../tools/page-text.ts';
import { postForm } from '../tools/post-form.ts';
import { type TestService, testService } from '../tools/service.ts';

let service: TestService;
beforeAll(async () => {
  service = await testService();
});
afterAll(() => service.close());

test('what was typed before a stop comes back in a note that needs its button alone', async () => {
  const desk = await service.person();
  const { callId, buildId } = await openCall(service, desk);
  const setUpId = await startSetUp(service, desk, buildId);
  const reason = 'It binds near the top';
  await sendJson(service, desk.bearer, 'POST', `/api/v1/calls/${callId}/hold`, { reason });
  const fields = { form: 'reading', setUpId, kind: 'valve-lift', peak: '5 turns 85', returned: '' };
  const options = { cookies: desk.cookies };
  const refused = await postForm(service, `/calls/${callId}/readings`, fields, options);
  expect(refused.statusCode).toBe(422);
  expect(textOf(refused.body)).toContain('Not kept: a stop stands');
  expect(textOf(refused.body)).not.toContain('put this right first');
  const note = /<form[^>]*action="[^"]*\/notes"[\s\S]*?<\/form>/.exec(refused.body)?.[0] ?? '';
  const body = /<textarea[^>]*name="body"[^>]*>([^<]*)</.exec(note)?.[1] ?? '';
  expect(body).toContain('valve lift, peak 5 turns 85');
  expect(body).not.toContain(setUpId);
  const kept = await postForm(
    service,
    `/calls/${callId}/notes`,
    { kind: 'note', form: 'note', body },
    options,
  );
  expect(kept.statusCode).toBe(303);
});
