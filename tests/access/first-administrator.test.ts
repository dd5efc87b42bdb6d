import { afterAll, beforeAll, expect, test } from 'vitest';
import { hashOf, newSecret } from '../../server/auth/secrets.ts';
import { cookieIn, postForm } from '../tools/post-form.ts';
import { type TestService, testService } from '../tools/service.ts';

/** The link of a new service that makes its first administrator (B1, C1, C7). */
let service: TestService;
beforeAll(async () => {
  service = await testService();
});
afterAll(() => service.close());

async function makeLink(hours = 24): Promise<string> {
  const { secret, hash } = newSecret('first');
  // One is open at a time.
  await service.database.asOwner('delete from first_administrator_link where used_at is null');
  await service.database.asOwner(
    `insert into first_administrator_link (token_hash, expires_at) values ($1, now() + $2 * interval '1 hour')`,
    [hash, hours],
  );
  return `/first-administrator/${secret}`;
}

const PERSON = { shop: 'North shop', name: 'A first person', password: 'three tall oak trees' };
const someone = () => ({ ...PERSON, email: `${crypto.randomUUID()}@test.invalid` });
async function counts(email: string): Promise<number> {
  const { rows } = await service.database.asOwner(
    'select count(*)::int as n from staff s join shop on shop.id = s.shop_id where s.email = $1',
    [email],
  );
  return Number(rows[0]?.n);
}

test('used once, it makes a shop with its administrator, who then signs in', async () => {
  const link = await makeLink();
  const person = someone();
  const made = await postForm(service, link, person);
  expect([made.statusCode, made.headers.location]).toEqual([303, '/sign-in']);
  const signed = await postForm(service, '/sign-in', { email: person.email, password: person.password });
  expect(signed.statusCode).toBe(303);
  const desk = await service.request({
    url: '/desk',
    cookies: { 'benchcall-desk': cookieIn(signed, 'benchcall-desk').value },
  });
  expect(desk.statusCode).toBe(200);
});

test('used a second time by somebody else, it makes nothing', async () => {
  const link = await makeLink();
  const first = someone();
  expect((await postForm(service, link, first)).statusCode).toBe(303);
  const second = someone();
  const refused = await postForm(service, link, second);
  expect(refused.statusCode).toBe(404);
  expect(await counts(second.email)).toBe(0);
  // The right address with another password is somebody else too.
  const guessed = await postForm(service, link, { ...first, password: 'four wide elm trees' });
  expect(guessed.statusCode).toBe(404);
});

test('used by two at the same moment, it makes one shop', async () => {
  const link = await makeLink();
  const people = Array.from({ length: 6 }, someone);
  const answers = await Promise.all(people.map((person) => postForm(service, link, person)));
  expect(answers.map((each) => each.statusCode).sort()).toEqual([303, 404, 404, 404, 404, 404]);
  const made = await Promise.all(people.map((person) => counts(person.email)));
  expect(made.reduce((sum, each) => sum + each, 0)).toBe(1);
});

test('a double click is one row, and both clicks get the same answer', async () => {
  const link = await makeLink();
  const person = someone();
  const both = await Promise.all([postForm(service, link, person), postForm(service, link, person)]);
  expect(both.map((each) => [each.statusCode, each.headers.location])).toEqual([
    [303, '/sign-in'],
    [303, '/sign-in'],
  ]);
  expect(await counts(person.email)).toBe(1);
});

test('looked at, it is not spent; past its time it makes nothing; one that never was is nowhere', async () => {
  const link = await makeLink();
  for (let time = 0; time < 3; time += 1) expect((await service.request({ url: link })).statusCode).toBe(200);
  expect((await postForm(service, link, someone())).statusCode).toBe(303);
  const late = someone();
  expect((await postForm(service, await makeLink(-1), late)).statusCode).toBe(404);
  const never = `/first-administrator/${newSecret('first').secret}`;
  expect((await postForm(service, never, late)).statusCode).toBe(404);
  expect((await postForm(service, '/first-administrator/x', late)).statusCode).toBe(404);
  expect(await counts(late.email)).toBe(0);
});

test('only its hash is kept, and its page is kept to itself', async () => {
  const link = await makeLink();
  const secret = link.split('/').at(-1) ?? '';
  const { rows } = await service.database.asOwner(
    'select first_administrator_link::text as row from first_administrator_link',
  );
  const all = rows.map(({ row }) => String(row)).join();
  expect(all).toContain(hashOf(secret));
  expect(all).not.toContain(secret.slice(4));
  const { headers } = await service.request({ url: link });
  expect([headers['referrer-policy'], headers['cache-control']]).toEqual(['no-referrer', 'no-store']);
});

test('faults show the page again with what was typed, and the link is not spent', async () => {
  const link = await makeLink();
  const shop = '  <b>“North” & shop</b>  ';
  const refused = await postForm(service, link, { ...someone(), shop, password: 'password1' });
  expect(refused.statusCode).toBe(422);
  expect(refused.body).toContain('<title>Error: ');
  expect(refused.body.indexOf('error-summary')).toBeLessThan(refused.body.indexOf('<h1'));
  expect(refused.body).toContain('href="#f-password"');
  const typed =
    /name="shop"[^>]*value="([^"]*)"/.exec(refused.body) ??
    /value="([^"]*)"[^>]*name="shop"/.exec(refused.body);
  expect(
    typed?.[1]
      ?.replaceAll('&lt;', '<')
      .replaceAll('&gt;', '>')
      .replaceAll('&quot;', '"')
      .replaceAll('&amp;', '&'),
  ).toBe(shop);
  expect(refused.body).not.toContain('password1');
  expect(refused.body).toContain('novalidate');
  expect(refused.body).not.toMatch(/maxlength|type="number"/);
  const empty = await postForm(service, link, {});
  for (const name of ['shop', 'name', 'email', 'password']) expect(empty.body).toContain(`href="#f-${name}"`);
  expect((await postForm(service, link, someone())).statusCode).toBe(303);
});
