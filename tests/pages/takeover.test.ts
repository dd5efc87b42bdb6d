import { expect, test } from 'vitest';
import { keepReading, openCall, sendJson, startSetUp } from '../tools/call.ts';
import { testService } from '../tools/service.ts';

test('the takeover card holds the stop, the next step, marks word for word, readings and open promises', async () => {
  const service = await testService();
  try {
    const person = await service.person();
    const { callId, buildId } = await openCall(service, person, 'Blue small block');
    const arm = await sendJson(service, person.bearer, 'POST', `/api/v1/builds/${buildId}/arms`, {
      name: 'arm A',
      ratioStamp: '1.6',
      otherNumber: 'H4',
      boxLabel: 'the box says one six',
    });
    expect(arm.status).toBe(201);
    const setUpId = await startSetUp(service, person, buildId);
    await keepReading(service, person, buildId, setUpId, 'valve-lift', '.842 in');
    await sendJson(service, person.bearer, 'POST', `/api/v1/calls/${callId}/notes`, {
      kind: 'promise',
      body: 'Send the light spring',
      owner: 'Ada',
      due: '2026-12-01',
    });
    await sendJson(service, person.bearer, 'POST', `/api/v1/calls/${callId}/hold`, {
      reason: 'metal in the oil',
    });
    const page = await service.request({ url: `/calls/${callId}/takeover`, cookies: person.cookies });
    expect(page.statusCode).toBe(200);
    for (const words of [
      'metal in the oil',
      'H4',
      'the box says one six',
      '.842 in',
      'Send the light spring',
      'Ada',
      'What is missing',
    ]) {
      expect(page.body, words).toContain(words);
    }
    // The result first, then what is done about it.
    const order = ['Found so far', 'Next', 'What is missing', 'Caller and goal', 'Raw readings'];
    const titles = [...page.body.matchAll(/<h2>([^<]*)<\/h2>/g)].map(([, title = '']) => title);
    expect(titles.filter((title) => order.includes(title))).toEqual(order);
  } finally {
    await service.close();
  }
});
