import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { sendJson } from '../tools/call.ts';
import { filledCall } from '../tools/filled-call.ts';
import { freshAddress } from '../tools/fresh-address.ts';
import { htmlFaults } from '../tools/html-faults.ts';
import { textOf } from '../tools/page-text.ts';
import { postForm } from '../tools/post-form.ts';
import { PASSWORD, type Person, type TestService, testService } from '../tools/service.ts';

/** What happens to the ways in is written down, with who and from where, for the administrator. */
let service: TestService;
beforeAll(async () => {
  service = await testService({ TRUSTED_PROXIES: '127.0.0.1' });
});
afterAll(() => service.close());

const shape = z.object({
  events: z.array(z.object({ kind: z.string(), who: z.string(), about: z.string(), from: z.string() })),
  next: z.string().optional(),
});
const listed = async (person: Person, query = '') => {
  const { status, json } = await sendJson(service, person.bearer, 'GET', `/api/v1/security-events${query}`);
  expect(status).toBe(200);
  return shape.parse(json);
};
const kinds = async (person: Person) => (await listed(person)).events.map(({ kind }) => kind);

test('sign-ins, passwords, people, keys and links, the newest first, as JSON and as a page', async () => {
  const boss = await service.person({ name: 'The boss' });
  const address = freshAddress();
  const from = { 'x-forwarded-for': address };
  const signIn = (password: string) =>
    postForm(service, '/sign-in', { email: boss.email, password }, { headers: from });
  await signIn('not this one at all');
  await signIn(PASSWORD);
  const call = await filledCall(service, boss, 'A key and a link');
  await sendJson(service, boss.bearer, 'DELETE', `/api/v1/keys/${call.keyId}`);
  await sendJson(service, boss.bearer, 'DELETE', `/api/v1/calls/${call.callId}/share-links/${call.linkId}`);
  const left = await sendJson(service, boss.bearer, 'POST', '/api/v1/staff', {
    name: 'Who leaves',
    email: `${crypto.randomUUID()}@test.invalid`,
    role: 'desk',
    password: PASSWORD,
  });
  await sendJson(service, boss.bearer, 'POST', `/api/v1/staff/${String(left.json.id)}/disable`, {});
  const change = (current: string) =>
    postForm(
      service,
      '/account/password',
      { current, password: 'four wide elm trees', key: crypto.randomUUID() },
      { cookies: boss.cookies, headers: from },
    );
  await change('not this one at all');
  expect((await change(PASSWORD)).statusCode).toBe(303);
  const { events } = await listed(boss);
  expect(events.map(({ kind }) => kind)).toEqual([
    'password-changed',
    'password-refused',
    'person-left',
    'person-added',
    'link-ended',
    'key-ended',
    'key-made',
    'link-made',
    'signed-in',
    'sign-in-failed',
  ]);
  expect(events[0]).toMatchObject({ who: 'The boss', from: address });
  expect(events.at(-1)).toMatchObject({ who: 'The boss', from: address });
  expect(events.find(({ kind }) => kind === 'person-left')).toMatchObject({ about: 'Who leaves' });
  const page = await service.request({ url: '/desk/security', cookies: boss.cookies });
  expect(page.statusCode).toBe(200);
  expect(htmlFaults(page.body)).toEqual([]);
  expect(textOf(page.body)).toContain(`The boss the password was changed ${address}`);
  const desk = await service.request({ url: '/desk', cookies: boss.cookies });
  expect(desk.body).toContain('href="/desk/security"');
}, 120_000);

describe('who may read them', () => {
  test('the administrator of the shop alone', async () => {
    const boss = await service.person();
    await postForm(service, '/sign-in', { email: boss.email, password: PASSWORD });
    expect(await kinds(boss)).toEqual(['signed-in']);
    expect(await kinds(await service.person())).toEqual([]);
    const desk = await service.person({ shopId: boss.shopId, roles: ['desk', 'quality'] });
    const refused = await sendJson(service, desk.bearer, 'GET', '/api/v1/security-events');
    expect(refused.status).toBe(403);
    expect((await service.request({ url: '/desk/security', cookies: desk.cookies })).statusCode).toBe(403);
  });

  test('an attempt on an address that nobody has is of no shop', async () => {
    const boss = await service.person();
    await postForm(service, '/sign-in', { email: 'nobody@test.invalid', password: PASSWORD });
    expect(await kinds(boss)).toEqual([]);
  });
});

test('page by page, each once, also those of one moment', async () => {
  const boss = await service.person();
  await service.database.asOwner(
    `insert into security_event (shop_id, kind, who, about, happened_at)
     select $1, 'signed-in', 'One', n::text, now() - (n / 4) * interval '1 microsecond' from generate_series(1, 30) n`,
    [boss.shopId],
  );
  const seen: string[] = [];
  let next: string | undefined;
  do {
    const page = await listed(boss, `?limit=7${next === undefined ? '' : `&after=${next}`}`);
    seen.push(...page.events.map(({ about }) => about));
    next = page.next;
  } while (next !== undefined);
  expect(seen).toHaveLength(30);
  expect(new Set(seen).size).toBe(30);
  const never = `/api/v1/security-events?after=${crypto.randomUUID()}`;
  expect((await sendJson(service, boss.bearer, 'GET', never)).status).toBe(404);
});

test('the current password can’t be guessed at without end, and the page says so', async () => {
  const person = await service.person();
  const guess = (current: string) =>
    postForm(
      service,
      '/account/password',
      { current, password: 'four wide elm trees', key: crypto.randomUUID() },
      { cookies: person.cookies },
    );
  for (let time = 0; time < 8; time += 1)
    expect(textOf((await guess('wrong')).body)).toContain('does not fit');
  const refused = await guess(PASSWORD);
  expect(refused.statusCode).toBe(422);
  expect(textOf(refused.body)).toContain('too many attempts at the current password; try again in');
  await service.database.asOwner(`update rate_limit set expire = 0 where key like '%-next:%'`);
  expect((await guess(PASSWORD)).statusCode).toBe(303);
}, 120_000);
