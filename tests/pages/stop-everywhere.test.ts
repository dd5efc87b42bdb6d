import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { memberOf } from '../../shared/member.ts';
import { STEP_NAMES } from '../../shared/steps.ts';
import { openCall, sendJson } from '../tools/call.ts';
import { linesOf } from '../tools/call-faces.ts';
import { makeLink } from '../tools/filled-call.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';
import { RAISED_STOPS, type StoppedCall, stoppedCall, stopsOf } from '../tools/stopped-call.ts';
import { tellsToTurn } from '../tools/tells-to-turn.ts';

let service: TestService;
let desk: Person;
beforeAll(async () => {
  service = await testService();
  desk = await service.person();
});
afterAll(() => service.close());

const PARTS = [
  ...['marks', 'roller-sweep', 'linkage'].map((part) => `steps/geometry?of=${part}`),
  ...['top-dead-centre', 'centreline', 'events', 'cam-timing'].map((part) => `steps/timing?of=${part}`),
  ...['adjuster', 'lash', 'lash-hot-cold'].map((part) => `steps/adjuster?of=${part}`),
];
const SAME = [...STEP_NAMES.map((name) => `steps/${name}`), ...PARTS, 'report', 'worksheet', 'photographs'];
const DESK_ALONE = ['takeover', 'share', 'close'];

/** Every page of the call on both sides, as its lines. */
async function pagesOf({
  callId,
  bench,
  page,
}: Pick<StoppedCall, 'callId' | 'bench' | 'page'>): Promise<ReadonlyMap<string, string[]>> {
  const own = [...SAME, ...DESK_ALONE, page.slice(1)].map(
    (path) => [`/calls/${callId}/${path}`, desk.cookies] as const,
  );
  const theirs = [...SAME, page.slice(1)].map((path) => [`/bench/${path}`, bench] as const);
  const pages = new Map<string, string[]>();
  for (const [url, cookies] of [...own, ...theirs]) {
    const got = await service.request({ url, cookies });
    expect(got.statusCode, url).toBe(200);
    pages.set(url, linesOf(got.body));
  }
  return pages;
}

describe.each(RAISED_STOPS)('stopped by %s', (kind) => {
  let call: StoppedCall;
  let sentence: string;
  beforeAll(async () => {
    // Kept while nothing stops it: under the stop its pages tell it, and nobody to read it again.
    const work = { computation: 'top-dead-centre', inputs: { stopReadings: ['35.5 deg', '33.25 deg'] } };
    call = await stoppedCall(service, desk, kind, [{ to: 'workings', body: work }]);
    sentence = (await stopsOf(service, desk.bearer, call.buildId))[0]?.sentence ?? '';
  });

  test('every page of both sides says why, and none tells anybody to turn, run or set it', async () => {
    expect(sentence).toMatch(/^Do not (turn it|run it, and do not turn it yet): /);
    for (const [url, lines] of await pagesOf(call)) {
      expect(lines.join(' '), url).toContain(sentence);
      expect(lines.flatMap(tellsToTurn), url).toEqual([]);
    }
  });

  test('the list of calls and every JSON answer say the same, by the same name', async () => {
    const list = await service.request({ url: '/calls', cookies: desk.cookies });
    expect(linesOf(list.body).join(' ')).toContain(sentence);
    // With its mark and its hatch: on a black-and-white print two of the three are left.
    expect(list.body).toMatch(/class="cell-stop[^>]*>.*url\(#hatch-bad\).*class="mark[\s\S]*?stopped<\/b>/);
    const builder = await stopsOf(service, call.link, call.buildId);
    expect(await stopsOf(service, desk.bearer, call.buildId)).toEqual(builder);
    const one = await sendJson(service, call.link, 'GET', `/api/v1/calls/${call.callId}`);
    expect(one.json).toMatchObject({ stopped: true, held: false, stop: builder });
  });

  test('its question is answered with nothing turned, then the desk lifts it with a reason', async () => {
    const build = `/api/v1/builds/${call.buildId}`;
    const { json } = await sendJson(service, call.link, 'GET', `${build}/assessment`);
    const asked: unknown = Array.isArray(json.questions)
      ? json.questions.find((each: unknown) => [kind, 'lash-grew'].includes(String(memberOf(each, 'code'))))
      : undefined;
    const question = Object(asked);
    expect(String(question.test)).not.toMatch(/^Not while/);
    expect(json.next).toMatchObject({ step: question.step, turns: false });
    const lift = () =>
      sendJson(service, desk.bearer, 'POST', `/api/v1/calls/${call.callId}/hold/lift`, {
        reason: 'turned by hand only to read it again',
      });
    expect((await lift()).status).toBe(409);
    const answer = { questionId: question.id, question: question.ask, code: question.code, answer: 'looked' };
    const told = await sendJson(service, call.link, 'POST', `${build}/answers`, { ...answer, found: true });
    expect(told.status, told.text).toBe(201);
    const lifted = await lift();
    expect([lifted.status, lifted.json.stopped], lifted.text).toEqual([200, false]);
    expect(await stopsOf(service, desk.bearer, call.buildId)).toEqual([]);
  });
});

test('under a hold that a person set the phone says nothing of turning, nor does the desk', async () => {
  const { callId } = await openCall(service, desk, 'Held');
  const hold = { reason: 'a tight spot near the top' };
  await sendJson(service, desk.bearer, 'POST', `/api/v1/calls/${callId}/hold`, hold);
  const { bench } = await makeLink(service, desk, callId);
  const pages = await pagesOf({ callId, bench: { 'benchcall-bench': bench }, page: '/report' });
  expect(pages.size).toBeGreaterThan(40);
  for (const [url, lines] of pages) {
    expect(lines.join(' '), url).toContain('Do not turn it: a tight spot near the top.');
    expect(lines.flatMap(tellsToTurn), url).toEqual([]);
  }
});
