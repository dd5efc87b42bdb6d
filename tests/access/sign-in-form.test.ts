import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { freshAddress } from '../tools/fresh-address.ts';
import { asWritten } from '../tools/page-text.ts';
import { postForm } from '../tools/post-form.ts';
import { PASSWORD, type TestService, testService } from '../tools/service.ts';

let service: TestService;
beforeAll(async () => {
  service = await testService({ TRUSTED_PROXIES: '127.0.0.1' });
});
afterAll(() => service.close());

describe('the form', () => {
  test('a refusal is 422 with what was typed byte for byte, its summary above the heading, and no password', async () => {
    const email = ' “Nobody” & <co>@test.invalid ';
    const response = await postForm(
      service,
      '/sign-in',
      { email, password: 'unheard-of words', next: '/desk' },
      {
        headers: { 'x-forwarded-for': freshAddress() },
      },
    );
    expect(response.statusCode).toBe(422);
    expect(response.body).toContain('<title>Error: Sign in');
    expect(response.body.indexOf('error-summary')).toBeLessThan(response.body.indexOf('<h1'));
    const value = /name="email"[^>]* value="([^"]*)"/.exec(response.body)?.[1] ?? '';
    const plain = value
      .replaceAll('&lt;', '<')
      .replaceAll('&gt;', '>')
      .replaceAll('&quot;', '"')
      .replaceAll('&#39;', "'")
      .replaceAll('&amp;', '&');
    expect(plain).toBe(email);
    expect(response.body).not.toContain('unheard-of words');
    expect(response.body).toContain('name="next" value="/desk"');
    expect(response.body).toContain('novalidate');
    expect(response.body).not.toMatch(/maxlength|type="number"|onpaste/);
    expect(response.body).toContain('autocomplete="current-password"');
  });

  test('empty fields are named, each linked from the summary', async () => {
    const response = await postForm(service, '/sign-in', { email: '', password: '' });
    expect(response.statusCode).toBe(422);
    for (const name of ['email', 'password']) expect(response.body).toContain(`href="#f-${name}"`);
  });

  test('too many attempts are told on the page with 429 and when to come again', async () => {
    const address = freshAddress();
    const send = () =>
      postForm(
        service,
        '/sign-in',
        { email: 'one@test.invalid', password: 'x' },
        { headers: { 'x-forwarded-for': address } },
      );
    for (let time = 0; time < 8; time += 1) expect((await send()).statusCode).toBe(422);
    const refused = await send();
    expect(refused.statusCode).toBe(429);
    expect(Number(refused.headers['retry-after'])).toBeGreaterThan(0);
    expect(asWritten(refused.body)).toMatch(/try again in \d+ (s|min)/);
  }, 120_000);

  test('a double click signs in, and the person is there once', async () => {
    const person = await service.person();
    const send = () =>
      postForm(
        service,
        '/sign-in',
        { email: person.email, password: PASSWORD },
        { headers: { 'x-forwarded-for': freshAddress() } },
      );
    const both = await Promise.all([send(), send()]);
    expect(both.map((each) => each.statusCode)).toEqual([303, 303]);
    const { rows } = await service.database.asOwner('select count(*)::int as n from staff where email = $1', [
      person.email,
    ]);
    expect(rows[0]).toEqual({ n: 1 });
  });
});
