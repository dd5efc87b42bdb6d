import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { memberOf } from '../../shared/member.ts';
import { sendJson } from '../tools/call.ts';
import { htmlFaults } from '../tools/html-faults.ts';
import { textOf } from '../tools/page-text.ts';
import { postForm } from '../tools/post-form.ts';
import { PASSWORD, type Person, type TestService, testService } from '../tools/service.ts';

/** People come, change their role, leave and come back; passwords are theirs alone. Needs no source. */
let service: TestService;
beforeAll(async () => {
  service = await testService();
});
afterAll(() => service.close());

const post = (person: Person, url: string, body: object = {}) =>
  sendJson(service, person.bearer, 'POST', `/api/v1${url}`, body);
const signIn = async (email: string, password: string) => {
  const { status, json } = await sendJson(service, {}, 'POST', '/api/v1/sessions', { email, password });
  return { status, bearer: { authorization: `Bearer ${String(memberOf(json, 'token'))}` } };
};
const address = () => `${crypto.randomUUID()}@test.invalid`;

async function shop() {
  const boss = await service.person({ name: 'The boss', roles: ['administrator', 'desk', 'quality'] });
  const email = address();
  const added = await post(boss, '/staff', {
    name: 'Robin',
    email,
    role: 'administrator',
    password: PASSWORD,
  });
  expect(added.status).toBe(201);
  expect(added.json.secret).toBeUndefined();
  const { bearer } = await signIn(email, PASSWORD);
  return { boss, email, id: String(added.json.id), bearer };
}

test('somebody who is invited sets their own password, once, by the link', async () => {
  const boss = await service.person({ roles: ['administrator'] });
  const email = address();
  const { status, json } = await post(boss, '/staff', { name: 'Kim', email, role: 'desk' });
  expect(status).toBe(201);
  expect(json).toMatchObject({ invited: true, secret: expect.stringMatching(/^bcp_/) });
  expect((await signIn(email, '')).status).toBe(422);
  expect((await signIn(email, PASSWORD)).status).toBe(401);
  const link = `/password/${String(json.secret)}`;
  const page = await service.request(link);
  expect(htmlFaults(page.body)).toEqual([]);
  expect(textOf(page.body)).toContain(`For Kim, who signs in as ${email}`);
  expect(page.headers['referrer-policy']).toBe('no-referrer');
  const weak = await postForm(service, link, { password: 'password1' });
  expect(weak.statusCode).toBe(422);
  expect((await postForm(service, link, { password: PASSWORD })).statusCode).toBe(303);
  expect((await signIn(email, PASSWORD)).status).toBe(201);
  expect((await postForm(service, link, { password: 'three small ash trees' })).statusCode).toBe(404);
  expect((await service.request(link)).statusCode).toBe(404);
  expect((await service.request(`/password/bcp_${'a'.repeat(43)}`)).statusCode).toBe(404);
});

test('a forgotten password: the link takes its place and ends every session; a newer link ends the older', async () => {
  const { boss, email, id, bearer } = await shop();
  const [first, second] = [
    await post(boss, `/staff/${id}/password-links`),
    await post(boss, `/staff/${id}/password-links`),
  ];
  const use = (secret: unknown, password: string) =>
    sendJson(service, {}, 'POST', '/api/v1/password-links/use', { secret: String(secret), password });
  expect((await use(first.json.secret, 'three small ash trees')).status).toBe(404);
  // Until it is used, what they have stays good.
  expect((await sendJson(service, bearer, 'GET', '/api/v1/me')).status).toBe(200);
  expect((await use(second.json.secret, 'robin')).status).toBe(422);
  expect((await use(second.json.secret, 'three small ash trees')).status).toBe(204);
  expect((await sendJson(service, bearer, 'GET', '/api/v1/me')).status).toBe(401);
  expect((await signIn(email, PASSWORD)).status).toBe(401);
  expect((await signIn(email, 'three small ash trees')).status).toBe(201);
});

test('keys end with who made them, when they leave and when they are no administrator any more', async () => {
  const { boss, email, id, bearer } = await shop();
  const keyOf = async (owner: { authorization: string }, name: string) => {
    const made = await sendJson(service, owner, 'POST', '/api/v1/keys', { name, scopes: ['read'] });
    expect(made.status).toBe(201);
    expect(memberOf(made.json.key, 'owner')).toBe(id);
    return { authorization: `Bearer ${String(made.json.secret)}` };
  };
  const works = async (key: { authorization: string }) =>
    (await sendJson(service, key, 'GET', '/api/v1/calls')).status;
  const first = await keyOf(bearer, 'one system');
  expect(await works(first)).toBe(200);
  expect((await post(boss, `/staff/${id}/role`, { role: 'desk' })).json).toMatchObject({ roles: ['desk'] });
  expect(await works(first)).toBe(401);
  expect(
    (await sendJson(service, bearer, 'POST', '/api/v1/keys', { name: 'no', scopes: ['read'] })).status,
  ).toBe(403);
  await post(boss, `/staff/${id}/role`, { role: 'administrator' });
  const second = await keyOf(bearer, 'another system');
  await post(boss, `/staff/${id}/disable`);
  expect(await works(second)).toBe(401);
  expect((await sendJson(service, bearer, 'GET', '/api/v1/me')).status).toBe(401);
  const back = await post(boss, `/staff/${id}/bring-back`);
  expect(back.json).toMatchObject({ id, invited: true });
  // What they knew before opens nothing.
  expect((await signIn(email, PASSWORD)).status).toBe(401);
  const secret = String(back.json.secret);
  await sendJson(service, {}, 'POST', '/api/v1/password-links/use', {
    secret,
    password: 'three small ash trees',
  });
  expect((await signIn(email, 'three small ash trees')).status).toBe(201);
  expect(await works(second)).toBe(401);
  expect((await post(boss, `/staff/${id}/bring-back`)).status).toBe(404);
});

describe('the last administrator', () => {
  test('stays one', async () => {
    const boss = await service.person({ roles: ['administrator'] });
    const { id } = (await sendJson(service, boss.bearer, 'GET', '/api/v1/me')).json;
    const refused = await post(boss, `/staff/${String(id)}/role`, { role: 'desk' });
    expect(refused.status).toBe(409);
    expect(refused.json.detail).toMatch(/last administrator/);
  });

  test('two who take each other off at once: one of them stays', async () => {
    for (let round = 0; round < 5; round += 1) {
      const { boss, id, bearer } = await shop();
      const own = String((await sendJson(service, boss.bearer, 'GET', '/api/v1/me')).json.id);
      const answers = await Promise.all([
        post(boss, `/staff/${id}/disable`),
        sendJson(service, bearer, 'POST', `/api/v1/staff/${own}/role`, { role: 'quality' }),
      ]);
      expect(answers.filter(({ status }) => status === 200)).toHaveLength(1);
      const left = await service.database.asOwner(
        `select count(*)::int as n from staff where shop_id = $1 and disabled_at is null and 'administrator' = any (roles)`,
        [boss.shopId],
      );
      expect(left.rows[0]).toEqual({ n: 1 });
    }
  });
});

test('one’s own sessions are listed and ended, and nobody else’s', async () => {
  const { boss, email, bearer } = await shop();
  const other = await signIn(email, PASSWORD);
  const third = await signIn(email, PASSWORD);
  const { sessions } = (await sendJson(service, bearer, 'GET', '/api/v1/me/sessions')).json;
  if (!Array.isArray(sessions)) throw new Error('no list');
  expect(sessions).toHaveLength(3);
  expect(sessions.filter((each) => memberOf(each, 'own') === true)).toHaveLength(1);
  const own = sessions.find((each) => memberOf(each, 'own') === true);
  const ended = await sendJson(
    service,
    boss.bearer,
    'DELETE',
    `/api/v1/me/sessions/${String(memberOf(own, 'id'))}`,
  );
  expect(ended.status).toBe(404);
  const theirs = (await sendJson(service, other.bearer, 'GET', '/api/v1/me/sessions')).json.sessions;
  const current = Array.isArray(theirs) ? theirs.find((each) => memberOf(each, 'own') === true) : undefined;
  await sendJson(service, bearer, 'DELETE', `/api/v1/me/sessions/${String(memberOf(current, 'id'))}`);
  expect((await sendJson(service, other.bearer, 'GET', '/api/v1/me')).status).toBe(401);
  expect((await post({ ...boss, bearer }, '/me/sessions/end-others')).json).toEqual({ ended: 1 });
  expect((await sendJson(service, third.bearer, 'GET', '/api/v1/me')).status).toBe(401);
  expect((await sendJson(service, bearer, 'GET', '/api/v1/me')).status).toBe(200);
});

test('the same on the pages: invite, forget, role, leave, come back, and ending sessions', async () => {
  const boss = await service.person({ name: 'The boss', roles: ['administrator', 'desk'] });
  const at = (url: string, fields: Record<string, string>) =>
    postForm(service, url, { ...fields, key: crypto.randomUUID() }, { cookies: boss.cookies });
  const email = address();
  const invited = await at('/desk/staff', { name: 'Kim', email, role: 'desk', password: '' });
  expect(invited.statusCode).toBe(201);
  expect(htmlFaults(invited.body)).toEqual([]);
  const link = /\/password\/bcp_[\w-]{43}/.exec(invited.body)?.[0] ?? '';
  expect((await postForm(service, link, { password: PASSWORD })).statusCode).toBe(303);
  const person = String(
    (await service.database.asOwner('select id from staff where email = $1', [email])).rows[0]?.id,
  );
  expect((await at('/desk/staff/role', { 'whose-role': person, 'new-role': 'quality' })).statusCode).toBe(
    303,
  );
  expect((await at('/desk/staff/leave', { 'who-leaves': person })).statusCode).toBe(303);
  const back = await at('/desk/staff/back', { 'who-is-back': person });
  expect(textOf(back.body)).toContain('invited, no password set yet');
  expect((await at('/desk/staff/password-link', { 'who-forgot': person })).body).toMatch(/\/password\/bcp_/);
  const page = await service.request({ url: '/desk', cookies: boss.cookies });
  expect(textOf(page.body)).toMatch(/Kim .* quality/);
  const own = String(
    (await service.database.asOwner('select id from staff where email = $1', [boss.email])).rows[0]?.id,
  );
  const refused = await at('/desk/staff/role', { 'whose-role': own, 'new-role': 'desk' });
  expect(refused.statusCode).toBe(422);
  expect(textOf(refused.body)).toContain('this is the last administrator');
  const session = await signIn(boss.email, PASSWORD);
  const account = await service.request({ url: '/account', cookies: boss.cookies });
  expect(htmlFaults(account.body)).toEqual([]);
  expect(textOf(account.body)).toContain('End the other one');
  expect((await at('/account/sessions/end-others', {})).statusCode).toBe(303);
  expect((await sendJson(service, session.bearer, 'GET', '/api/v1/me')).status).toBe(401);
});
