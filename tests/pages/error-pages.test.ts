import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openCall, sendJson } from '../tools/call.ts';
import { htmlFaults } from '../tools/html-faults.ts';
import { textOf } from '../tools/page-text.ts';
import { cookieIn, postForm } from '../tools/post-form.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/** What a person reads when there is no page: what happened, whether it ever was there, and whom to call. */
let service: TestService;
let person: Person;
let callId: string;
beforeAll(async () => {
  service = await testService({ DESK_PHONE: 'extension 7, invented' });
  person = await service.person();
  ({ callId } = await openCall(service, person, 'Blue block'));
});
afterAll(() => service.close());

const read = async (url: string, cookies: Record<string, string> = {}) => {
  const page = await service.request({ url, cookies });
  expect(htmlFaults(page.body)).toEqual([]);
  return { status: page.statusCode, text: textOf(page.body) };
};

describe('an address', () => {
  test('that no page has was never there', async () => {
    const { status, text } = await read('/calls-of-yesterday');
    expect(status).toBe(404);
    expect(text).toContain('This page was not found');
    expect(text).toContain('There was never a page at this address');
    expect(text).toContain('Who to call: the desk that you work with, extension 7, invented');
  });

  test('of a call that the shop does not have may be another shop’s', async () => {
    const { status, text } = await read(`/calls/${crypto.randomUUID()}/steps/ratio`, person.cookies);
    expect(status).toBe(404);
    expect(text).toContain('There are pages like this one, but none with this name or number in your shop');
    expect(text).toContain('Calls are never deleted');
    expect(text).not.toContain('There was never a page');
  });

  test('of the bench without a link says to open the link once more', async () => {
    const { status, text } = await read('/bench/steps/ratio');
    expect(status).toBe(401);
    expect(text).toContain('Open the link that the desk sent you once more');
    expect(text).toContain('Your build is not open in this browser');
    // The way back would lead here again; nothing had ended, and nobody signs in at the bench.
    expect(text).not.toMatch(/To your build|This link has ended|Sign in first/);
    expect(text).toContain('extension 7, invented');
  });
});

describe('a page that is not there', () => {
  test('says eight characters of its number, which the answer carries whole', async () => {
    const page = await service.request({ url: '/none' });
    const [, said = ''] = /<b class="num">([^<]*)<\/b>/.exec(page.body) ?? [];
    expect(said).toMatch(/^[0-9a-f]{8}$/);
    expect(String(page.headers['x-request-id']).startsWith(said)).toBe(true);
  });

  test('keeps the menu of whoever is signed in', async () => {
    expect((await read('/none', person.cookies)).text).toMatch(/Calls Catalogue .*Your account/);
    expect((await read('/none')).text).not.toContain('Your account');
  });
});

describe('a builder’s link', () => {
  const make = async () => {
    const made = await sendJson(service, person.bearer, 'POST', `/api/v1/calls/${callId}/share-links`, {
      holder: 'Lin',
      days: 1,
    });
    return { secret: String(made.json.secret), id: /"id":"([^"]+)"/.exec(made.text)?.[1] ?? '' };
  };
  const end = (id: string) =>
    postForm(service, `/calls/${callId}/share/${id}/end`, {}, { cookies: person.cookies });

  test('that is open offers the build', async () => {
    const { secret } = await make();
    const { status, text } = await read(`/b/${secret}`);
    expect(status).toBe(200);
    expect(text).toContain('Open the build that the desk shares with you');
  });

  test('that has ended offers nothing, says when, and whom to ask', async () => {
    const { secret, id } = await make();
    expect((await end(id)).statusCode).toBe(303);
    const { status, text } = await read(`/b/${secret}`);
    expect(status).toBe(410);
    expect(text).toMatch(/This link ended on \d{1,2} \w+/);
    expect(text).toContain('It was there, and it has ended.');
    expect(text).toContain('Ask the desk for a new link');
    expect(text).not.toContain('Open my build');
    expect((await postForm(service, `/b/${secret}`, {})).statusCode).toBe(410);
  });

  test('that has ended while its pages are open says one thing: that it has ended', async () => {
    const { secret, id } = await make();
    const opened = await postForm(service, `/b/${secret}`, {});
    const bench = { 'benchcall-bench': cookieIn(opened, 'benchcall-bench').value };
    expect((await end(id)).statusCode).toBe(303);
    const { status, text } = await read('/bench/steps/ratio', bench);
    expect(status).toBe(401);
    expect(text).toContain('This link has ended');
    expect(text).toContain('Ask the desk for a new one');
    expect(text).not.toMatch(/Sign in first|once more|[Oo]pen your link again|To your build/);
  });

  test('that was never made is told from one that has ended', async () => {
    const { status, text } = await read(`/b/bcl_${'a'.repeat(43)}`);
    expect(status).toBe(404);
    expect(text).toContain('This link was never made here, or a part of it was lost on the way');
    expect(text).not.toContain('Open my build');
  });
});

test('signing out ends what this browser had open, the builder’s side too, and says so', async () => {
  const made = await sendJson(service, person.bearer, 'POST', `/api/v1/calls/${callId}/share-links`, {
    holder: 'Lin',
    days: 1,
  });
  const opened = await postForm(service, `/b/${String(made.json.secret)}`, {});
  const bench = { 'benchcall-bench': cookieIn(opened, 'benchcall-bench').value };
  const other = await service.person({ shopId: person.shopId });
  expect((await read('/bench/report', bench)).status).toBe(200);
  const out = await postForm(service, '/sign-out', {}, { cookies: { ...other.cookies, ...bench } });
  expect(out.headers.location).toBe('/sign-in?out=1');
  expect((await read('/bench/report', bench)).status).toBe(401);
  expect((await service.request({ url: '/calls', cookies: other.cookies })).statusCode).toBe(303);
  expect((await read('/sign-in?out=1')).text).toContain('You are signed out');
  // The link itself stays: its holder opens it again elsewhere.
  expect((await read(`/b/${String(made.json.secret)}`)).status).toBe(200);
});

describe('the skip link', () => {
  test.each([
    ['/', 'Skip to what this is'],
    ['/sign-in', 'Skip to the entries'],
    ['/reference', 'Skip to the computations'],
    ['/reference/lift', 'Skip to the computation'],
    ['/calls', 'Skip to the list of calls'],
    ['/calls/{call}/steps/ratio', 'Skip to this step of the call'],
    ['/calls/{call}/report', 'Skip to the report'],
    ['/calls/{call}/worksheet', 'Skip to the worksheet'],
    ['/calls/{call}/takeover', 'Skip to the card'],
    ['/none', 'Skip to what went wrong'],
  ])('of %s says where it goes', async (url, words) => {
    // Whoever is signed in is led from the start to the calls.
    const cookies = url === '/' ? {} : person.cookies;
    const page = await service.request({ url: url.replace('{call}', callId), cookies });
    const [, target = '', said = ''] = /class="skip" href="#([^"]*)">([^<]*)</.exec(page.body) ?? [];
    expect(said).toBe(words);
    expect(page.body).toContain(`id="${target}"`);
  });
});
