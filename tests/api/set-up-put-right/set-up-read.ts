import { afterAll, beforeAll, expect } from 'vitest';
import { keepReading, METHOD, openCall, sendJson, startSetUp } from '../../tools/call.ts';
import { at } from '../../tools/numbers.ts';
import { type Person, type TestService, testService } from '../../tools/service.ts';

const UNSAID = { spring: 'not-said', lifter: 'not-said', lash: 'not-said', alignment: 'not-said' };

/** A call with lifts read, and nothing said of how: .540 and .520 short lash, over .350: 1.600. */
export async function setUpRead(service: TestService, desk: Person, method: object = UNSAID) {
  const opened = await openCall(service, desk);
  const url = `/api/v1/builds/${opened.buildId}`;
  const send = (path: string, body: object) => sendJson(service, desk.bearer, 'POST', `${url}${path}`, body);
  const get = async (path: string) => (await sendJson(service, desk.bearer, 'GET', `${url}${path}`)).json;
  await send('/arms', { name: 'A', ratioStamp: '1.6' });
  const setUpId = await startSetUp(service, desk, opened.buildId, { ...METHOD, ...method });
  const keep = (kind: string, peak: string) =>
    keepReading(service, desk, opened.buildId, setUpId, kind, peak);
  for (const lobe of ['.350 in', '.350 in', '.3505 in']) await keep('lobe-lift', lobe);
  for (const lift of ['.540 in', '.5405 in', '.540 in']) await keep('valve-lift', lift);
  const right = (body: object) => send(`/set-ups/${setUpId}/corrections`, { reason: 'told later', ...body });
  const page = async (path = `/steps/ratio?set-up=${setUpId}`) =>
    (await service.app.inject({ url: `/calls/${opened.callId}${path}`, cookies: desk.cookies })).body;
  const post = (path: string, fields: Record<string, string>) =>
    service.app.inject({
      method: 'POST',
      url: `/calls/${opened.callId}${path}`,
      cookies: desk.cookies,
      headers: { 'content-type': 'application/x-www-form-urlencoded', 'sec-fetch-site': 'same-origin' },
      payload: new URLSearchParams({ key: crypto.randomUUID(), ...fields }).toString(),
    });
  const ratio = () => get(`/set-ups/${setUpId}/ratio`);
  const setUp = async () => at(await get('/set-ups'), 'setUps', 0);
  const question = async (code: string) => {
    const { questions } = await get(`/assessment`);
    if (!Array.isArray(questions)) throw new Error('no questions');
    return questions.find((each: unknown) => at(each, 'code') === code);
  };
  return { ...opened, url, setUpId, send, get, keep, right, page, post, ratio, setUp, question };
}

/** The fields of the form that a page has under this name, as a browser would post them. */
export function fieldsOf(html: string, name: string): Record<string, string> {
  const form = html.match(new RegExp(`<form[^>]*id="${name}"[\\s\\S]*?</form>`))?.[0] ?? '';
  const attribute = (tag: string, key: string) =>
    new RegExp(`\\b${key}="([^"]*)"`).exec(tag)?.[1]?.replaceAll('&quot;', '"');
  const fields: Record<string, string> = {};
  for (const [tag] of form.matchAll(/<input\b[^>]*>/g)) {
    const key = attribute(tag, 'name');
    const isPicked = !/type="(radio|checkbox)"/.test(tag) || /\bchecked\b/.test(tag);
    if (key !== undefined && isPicked) fields[key] = attribute(tag, 'value') ?? '';
  }
  for (const [, key, options] of form.matchAll(/<select\b[^>]*name="([^"]*)"[^>]*>([\s\S]*?)<\/select>/g)) {
    const picked = /<option\b[^>]*\bselected\b[^>]*>/.exec(options ?? '')?.[0] ?? '';
    if (key !== undefined) fields[key] = attribute(picked, 'value') ?? '';
  }
  expect(Object.keys(fields).length, `a form ${name}`).toBeGreaterThan(0);
  return fields;
}

/** A service with a desk for a file of tests, and set-ups that are read there. */
export function openSetUps() {
  let service: TestService | undefined;
  let desk: Person | undefined;
  const open = () => {
    if (service === undefined || desk === undefined) throw new Error('the service is not open yet');
    return { service, desk };
  };
  beforeAll(async () => {
    service = await testService();
    desk = await service.person();
  });
  afterAll(() => service?.close());
  return {
    open,
    read: (method?: object) => setUpRead(open().service, open().desk, method),
  };
}
