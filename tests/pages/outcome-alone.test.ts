import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type LiveCall, liveCall } from '../tools/live-call.ts';
import { asWritten } from '../tools/page-text.ts';
import { postForm } from '../tools/post-form.ts';
import { problemIn } from '../tools/problem.ts';
import { type TestService, testService } from '../tools/service.ts';

/**
 * A form that a program posts for the person who filled it. `Prefer: return=minimal` and `Preference-Applied` are of
 * RFC 7240, sections 3 and 4.2; 201 with Location is of RFC 9110, section 15.3.2; problems are of RFC 9457.
 */
let service: TestService;
let call: LiveCall;
beforeAll(async () => {
  service = await testService();
  call = await liveCall(service);
});
afterAll(() => service.close());

const READING = { form: 'reading', kind: 'valve-lift', peak: '.566' };
const fields = (more: Record<string, string> = {}) => ({
  key: crypto.randomUUID(),
  ...READING,
  setUpId: call.setUpId,
  ...more,
});
const send = (typed: Record<string, string>, headers: Record<string, string> = {}) =>
  postForm(service, '/bench/readings', typed, {
    headers: { ...call.bench, prefer: 'return=minimal', ...headers },
  });

describe('a form that asks for the outcome alone', () => {
  it('is told where what was kept can be seen, and no page', async () => {
    const kept = await send(fields());
    expect([kept.statusCode, kept.body, kept.headers['preference-applied']]).toEqual([
      201,
      '',
      'return=minimal',
    ]);
    expect(kept.headers.location).toMatch(/^\/bench\/steps\/ratio\?.*kept=\d+/);
    expect(kept.headers['cache-control']).toBe('no-store');
  });

  it('sent again with its key is kept once and answers the same', async () => {
    const typed = fields();
    const before = await call.newest();
    const first = await send(typed);
    const again = await send(typed);
    expect([again.statusCode, again.headers.location]).toEqual([201, first.headers.location]);
    expect(await call.newest()).toBe(before + 1);
  });

  it('is refused in the sentence that the page has', async () => {
    const typed = fields({ peak: 'about nine' });
    const page = await postForm(service, '/bench/readings', typed, { headers: call.bench });
    const refused = await send(typed);
    const { detail = '' } = problemIn(refused, 422, 'invalid-input');
    expect(detail).toMatch(/^Reading at full lift /);
    const summary = /class="error-summary"[\s\S]*?<\/ul>/.exec(page.body)?.[0] ?? '';
    expect(asWritten(summary)).toContain(detail.replaceAll('"', '&quot;').replaceAll("'", '&#39;'));
  });

  it('is told the code where a page would only show the words', async () => {
    const typed = fields();
    await send(typed);
    const other = await send({ ...typed, peak: '.567' });
    problemIn(other, 422, 'key-reused');
  });

  it.each([
    ['return=minimal', 201],
    ['respond-async, return = "minimal"; x=1', 201],
    ['return=representation', 303],
    ['', 303],
  ])('is known by Prefer: %s', async (prefer, status) => {
    expect((await send(fields(), { prefer })).statusCode).toBe(status);
  });
});

describe('an entry that names the link it was typed under', () => {
  it('goes in under that link', async () => {
    expect((await send(fields(), { 'benchcall-link': call.linkId })).statusCode).toBe(201);
  });

  it('is not taken under another, and nothing is kept', async () => {
    const before = await call.newest();
    const other = await send(fields(), { 'benchcall-link': crypto.randomUUID() });
    problemIn(other, 401, 'sign-in-required');
    expect(await call.newest()).toBe(before);
  });
});
