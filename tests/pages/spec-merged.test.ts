import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openCall, sendJson } from '../tools/call.ts';
import { postForm } from '../tools/post-form.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/**
 * Parts of a card that were read at the same revision and kept one after the other, as a phone sends them that had no
 * signal. What must come of it is said by no standard: each part keeps its own fields, and only the same one collides.
 */
let service: TestService;
let owner: Person;
beforeAll(async () => {
  service = await testService();
  owner = await service.person();
});
afterAll(() => service.close());

async function card() {
  const { callId, buildId } = await openCall(service, owner);
  const post = (fields: Record<string, string>) =>
    postForm(
      service,
      `/calls/${callId}/spec/cam`,
      { form: 'cam', part: '', revision: '1', ...fields },
      { cookies: owner.cookies, headers: { prefer: 'return=minimal' } },
    );
  const spec = async () => {
    const { json } = await sendJson(service, owner.bearer, 'GET', `/api/v1/builds/${buildId}`);
    return json.spec;
  };
  return { post, spec };
}

describe('a card that was read before another part of it was kept', () => {
  test('keeps its own fields and leaves the others as they are', async () => {
    const { post, spec } = await card();
    expect((await post({ 'cam.intake.lobeLift': '.350 in', 'cam.intake.lash': '' })).statusCode).toBe(201);
    expect((await post({ 'cam.exhaust.lobeLift': '.340 in' })).statusCode).toBe(201);
    // The whole card again, as the first page had it: what it leaves empty was empty then, and is not emptied now.
    const whole = { 'cam.card': 'Invented 1', 'cam.intake.lobeLift': '', 'cam.exhaust.lobeLift': '' };
    expect((await post(whole)).statusCode).toBe(201);
    expect(await spec()).toMatchObject({
      cam: {
        card: 'Invented 1',
        intake: { lobeLift: { value: 0.35 } },
        exhaust: { lobeLift: { value: 0.34 } },
      },
    });
  });

  test('collides where both changed the same to something else, and says how it stands', async () => {
    const { post, spec } = await card();
    expect((await post({ 'cam.intake.lobeLift': '.350 in' })).statusCode).toBe(201);
    const again = await post({ 'cam.intake.lobeLift': '.350 in', 'cam.card': 'Invented 2' });
    expect(again.statusCode).toBe(201);
    const other = await post({ 'cam.intake.lobeLift': '.360 in', 'cam.card': 'Invented 2' });
    expect(other.statusCode).toBe(412);
    expect(other.body).toContain(
      'you read revision 1; it is now at revision 3: Lobe lift, intake is .350 in now',
    );
    expect(await spec()).toMatchObject({
      cam: { card: 'Invented 2', intake: { lobeLift: { value: 0.35 } } },
    });
  });

  test('rows of durations are one entry: those of others are not mixed with one’s own', async () => {
    const { post, spec } = await card();
    const row = (lift: string, duration: string) => ({
      'cam.intake.durations.0.atLift': lift,
      'cam.intake.durations.0.duration': duration,
    });
    expect((await post(row('.050 in', '230'))).statusCode).toBe(201);
    expect((await post(row('.050 in', '236'))).statusCode).toBe(412);
    expect(await spec()).toMatchObject({ cam: { intake: { durations: [{ duration: { value: 230 } }] } } });
  });
});
