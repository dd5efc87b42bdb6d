import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { SPRINGS } from '../../shared/schemas/words.ts';
import { keepReading, METHOD, openCall, sendJson, startSetUp } from '../tools/call.ts';
import { htmlFaults } from '../tools/html-faults.ts';
import { at } from '../tools/numbers.ts';
import { asWritten, textOf as bare } from '../tools/page-text.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/** The ratio step shows what the assessment says, and keeps the answers to its questions. Figures by hand. */
let service: TestService;
let desk: Person;
beforeAll(async () => {
  service = await testService();
  desk = await service.person();
});
afterAll(() => service?.close());

/** A call with one arm stamped 1.6 and one set-up of it. */
async function call(method: object = {}) {
  const opened = await openCall(service, desk);
  const url = `/api/v1/builds/${opened.buildId}`;
  const send = (path: string, body: object) => sendJson(service, desk.bearer, 'POST', `${url}${path}`, body);
  const arm = { name: 'arm A', ratioStamp: '1.6', otherNumber: '', boxLabel: '' };
  const armId = String((await send('/arms', arm)).json.id);
  await send('/placements', { armId, cylinder: 1, valve: 'intake', reason: '' });
  const setUpId = await startSetUp(service, desk, opened.buildId, { ...METHOD, spring: 'light', ...method });
  const keep = (kind: string, peak: string) =>
    keepReading(service, desk, opened.buildId, setUpId, kind, peak);
  for (const lobe of ['.350 in', '.3505 in', '.3495 in']) await keep('lobe-lift', lobe);
  const get = async (path: string) => (await sendJson(service, desk.bearer, 'GET', `${url}${path}`)).json;
  const page = async (step = 'ratio') => {
    const { body } = await service.app.inject({
      url: `/calls/${opened.callId}/steps/${step}`,
      cookies: desk.cookies,
    });
    expect(htmlFaults(body)).toEqual([]);
    return body;
  };
  const answer = (fields: Record<string, string>) =>
    service.app.inject({
      method: 'POST',
      url: `/calls/${opened.callId}/answers`,
      cookies: desk.cookies,
      headers: { 'content-type': 'application/x-www-form-urlencoded', 'sec-fetch-site': 'same-origin' },
      payload: new URLSearchParams({ key: crypto.randomUUID(), ...fields }).toString(),
    });
  return { ...opened, setUpId, keep, get, page, answer, ratio: () => get(`/set-ups/${setUpId}/ratio`) };
}

const codesOf = (json: unknown): unknown[] => {
  const all = at(json, 'questions');
  return Array.isArray(all) ? all.map((each: unknown) => at(each, 'code')) : [];
};

describe('the answer', () => {
  test('is the headline word for word, largest on the page, and in JSON', async () => {
    const { keep, page, ratio } = await call();
    for (const peak of ['.560 in', '.5605 in', '.5595 in']) await keep('valve-lift', peak);
    const said = String((await ratio()).headline);
    // .560 / .350 = 1.600, level with its stamp.
    expect(said).toMatch(/^1 intake: 1\.600 ± \.\d{3} as read: agrees with the 1\.6 stamped on it\.$/);
    const html = await page();
    const largest = /<span class="headline-sentence">(.*?)<\/span><\/p>/s.exec(html)?.[1];
    expect(largest?.replace(/<[^>]*>/g, '')).toBe(said);
    // One figure for one thing: the large one below it is the same.
    expect(/class="result-value"[^>]*>([^<]*)</.exec(html)?.[1]).toBe('1.600');
    // Nominals by the interval: 1.6 alone is inside, its neighbours are not; no verdict stands beside any.
    expect(html).toContain('Light-spring ratio beside the nominals near it');
    expect(bare(html)).toContain('1.6, stamped on it holds it');
    expect(html).not.toContain('class="verdict');
  });

  test('no large figure and no word while something is lacking: a pass a turn apart is named beside it', async () => {
    const { keep, page, ratio } = await call();
    for (const peak of ['.560 in', '.5605 in', '.460 in']) await keep('valve-lift', peak);
    const json = await ratio();
    const html = await page();
    expect(String(at(json, 'missing', 0))).toContain('pass 3 entered again or struck out');
    expect(html).not.toContain('class="result-value"');
    expect(html).not.toMatch(/class="verdict/);
    expect(bare(html)).toContain(
      'Pass 3 reads .460 in, one turn of the dial under the others; it is not averaged with them.',
    );
  });

  test('a set-up without a result says what it lacks', async () => {
    const { page } = await call();
    expect(bare(await page())).toContain('Not yet: a pass of the valve lift.');
  });

  test('under a stop nobody is asked for a reading, and the page says why', async () => {
    const { callId, keep, page, get, setUpId } = await call();
    for (const peak of ['.590 in', '.5905 in', '.5895 in']) await keep('valve-lift', peak);
    await sendJson(service, desk.bearer, 'POST', `/api/v1/calls/${callId}/hold`, { reason: 'tight' });
    const html = await page();
    const text = bare(html);
    expect(text).toContain('No set-up is started and no pass is kept while the stop stands.');
    for (const words of [
      'Save reading',
      'Start another set-up',
      'Read it part of the way up',
      'small hand stand',
    ])
      expect(text).not.toContain(words);
    const { explanation } = await get(`/set-ups/${setUpId}/explanation`);
    expect(at(explanation, 'nextReading')).toBeUndefined();
  });
});

describe('an answer to a question', () => {
  const hidden = (html: string, name: string, ask: string): string => {
    const written = asWritten(html);
    const form = written.slice(written.indexOf(ask));
    return (new RegExp(`name="${name}" value="([^"]*)"`).exec(form)?.[1] ?? '').replaceAll('&quot;', '"');
  };

  const fieldsOf = (html: string, ask: string): Record<string, string> =>
    Object.fromEntries(
      ['form', 'question', 'questionId', 'code', 'step', 'setUpId'].map((name) => [
        name,
        hidden(html, name, ask),
      ]),
    );

  test('as a state says how the set-up was, and settles it', async () => {
    const { keep, page, answer, ratio, setUpId } = await call({ spring: 'not-said' });
    for (const peak of ['.560 in', '.5605 in', '.5595 in']) await keep('valve-lift', peak);
    const before = await ratio();
    expect(at(before, 'missing', 0)).toBe('which spring is on the valve');
    const fields = fieldsOf(await page(), 'Which spring is on the valve?');
    expect(fields).toMatchObject({ code: 'spring-not-said', step: 'ratio', setUpId });
    const kept = await answer({ ...fields, answer: 'light', words: 'a checking spring, running one is off' });
    expect(kept.statusCode).toBe(303);
    expect(kept.headers.location).toContain(`/steps/ratio?set-up=${setUpId}`);
    const after = await ratio();
    expect(after.quantity).toBe('light-spring ratio');
    expect(after.missing).toEqual([]);
    expect(bare(await page())).toContain('Light checking spring, “a checking spring, running one is off”');
    expect(bare(await page())).toContain(`entered as: ${SPRINGS['not-said']}`);
  });

  test('that something was looked at and is not so counts as not found', async () => {
    const { keep, page, answer, ratio } = await call();
    for (const peak of ['.560 in', '.5605 in', '.460 in']) await keep('valve-lift', peak);
    expect(codesOf(await ratio())).toContain('turn-miscounted');
    const fields = fieldsOf(await page(), 'Could one turn of the dial be missing from pass 3, .460 in?');
    await answer({ ...fields, answer: 'not-found', words: '' });
    const questions = at(await ratio(), 'questions');
    expect(questions).toContainEqual(
      expect.objectContaining({
        code: 'turn-miscounted',
        answered: expect.objectContaining({ answer: 'not found', found: false }),
      }),
    );
  });

  test('without one of the answers comes back with what was typed', async () => {
    const { keep, page, answer } = await call();
    for (const peak of ['.560 in', '.5605 in', '.460 in']) await keep('valve-lift', peak);
    const fields = fieldsOf(await page(), 'Could one turn of the dial be missing from pass 3, .460 in?');
    const back = await answer({ ...fields, words: 'five turns on the small hand' });
    expect(back.statusCode).toBe(422);
    expect(bare(back.body)).toContain('What was found must not be empty');
    expect(back.body).toContain('value="five turns on the small hand"');
  });

  test('comes back to the step it was asked in', async () => {
    const { answer } = await call();
    const back = await answer({ step: 'sheet', question: 'Was it read?', code: 'slip', words: 'yes' });
    expect(back.statusCode).toBe(422);
    expect(/<title>([^<]*)</.exec(back.body)?.[1]).toContain('Read every valve');
    const kept = await answer({ step: 'sheet', question: 'Was it read?', code: 'slip', answer: 'found' });
    expect(kept.headers.location).toMatch(/\/steps\/sheet\?kept=\d+$/);
  });
});
