import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { demoCatalogueFile } from '../../server/records/catalogue/demo.ts';
import { openCall, sendJson } from '../tools/call.ts';
import { makeLink } from '../tools/filled-call.ts';
import { htmlFaults } from '../tools/html-faults.ts';
import { textOf as text } from '../tools/page-text.ts';
import { postForm } from '../tools/post-form.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

let service: TestService;
let owner: Person;
let callId: string;
let buildId: string;
let bench: { 'benchcall-bench': string };

beforeAll(async () => {
  service = await testService();
  owner = await service.person();
  ({ callId, buildId } = await openCall(service, owner, 'Part in the hand'));
  bench = { 'benchcall-bench': (await makeLink(service, owner, callId)).bench };
});
afterAll(() => service.close());

const see = (url: string, cookies: Record<string, string> = owner.cookies) =>
  service.request({ method: 'GET', url, cookies });
const post = (url: string, fields: Record<string, string>, cookies: Record<string, string> = owner.cookies) =>
  postForm(service, url, fields, { cookies });

describe('the catalogue', () => {
  test('empty: says what goes there and offers the first action', async () => {
    const page = await see('/catalogue');
    expect(page.statusCode).toBe(200);
    expect(htmlFaults(page.body)).toEqual([]);
    expect(text(page.body)).toContain('No part family yet');
    expect(page.body).toContain('href="/catalogue/load"');
    const step = await see(`/calls/${callId}/steps/identify`);
    expect(text(step.body)).toContain('The shop has no catalogue yet');
  });

  test('a trial loads nothing, a fault comes back with everything typed, then the file is loaded', async () => {
    const faulty = 'code,name,hole_in\nA,One,.4375\nB,<b>,wide';
    const trial = await post('/catalogue/load', { csv: faulty, do: 'try' });
    expect(trial.statusCode).toBe(200);
    expect(htmlFaults(trial.body)).toEqual([]);
    expect(text(trial.body)).toContain('Of 2 rows 1 are new');
    expect(trial.body).toContain('B,&lt;b&gt;,wide');
    const refused = await post('/catalogue/load', { csv: faulty, do: 'all' });
    expect(refused.statusCode).toBe(422);
    expect(refused.body).toContain('<title>Error: ');
    expect(htmlFaults(refused.body)).toEqual([]);
    expect(text(refused.body)).toContain('row 3, hole_in');
    const done = await post('/catalogue/load', { csv: demoCatalogueFile(), do: 'all' });
    expect(done.statusCode).toBe(303);
    const list = await see(String(done.headers.location));
    expect(text(list.body)).toContain('Loaded: 69 added, 0 changed');
    expect(htmlFaults(list.body)).toEqual([]);
  });

  test('search, one family, and the file', async () => {
    const list = await see('/catalogue?search=melilot');
    expect(text(list.body)).toContain('Melilot 157-H');
    expect(text(list.body)).not.toContain('Sorrel');
    const href = /href="(\/catalogue\/[0-9a-f-]{36})"/.exec(list.body)?.[1] ?? '';
    const family = await see(href);
    expect(family.statusCode).toBe(200);
    expect(htmlFaults(family.body)).toEqual([]);
    expect(text(family.body)).toContain('only a valve proves a ratio');
    const file = await see('/catalogue/file');
    expect(file.headers['content-type']).toContain('text/csv');
    expect(file.body.split('\r\n')).toHaveLength(71);
    expect((await see('/catalogue/file', {})).statusCode).toBe(303);
    const stranger = await service.person();
    expect((await see(href, stranger.cookies)).statusCode).toBe(404);
  });
});

describe('the step', () => {
  test('every thing asked has its drawing and its one entry, on both sides', async () => {
    for (const kind of [
      'hole-across-trunnion',
      'width-across-trunnion',
      'roller-diameter',
      'body-width',
      'pivot-to-tip',
      'pivot-to-cup',
      'rings',
      'tip',
      'mount',
    ]) {
      for (const [url, cookies] of [
        [`/calls/${callId}/steps/identify?ask=${kind}`, owner.cookies],
        [`/bench/steps/identify?ask=${kind}`, bench],
      ] as const) {
        const page = await see(url, cookies);
        expect(page.statusCode, url).toBe(200);
        expect(htmlFaults(page.body), url).toEqual([]);
        expect(page.body).toContain(`name="kind" value="${kind}"`);
        expect(page.body).toContain('id="part-drawing-desc"');
      }
    }
  });

  test('begins with the hole; what the bench reads, the desk sees, with the families ranked', async () => {
    const first = await see('/bench/steps/identify', bench);
    expect(first.body).toContain('name="kind" value="hole-across-trunnion"');
    expect(first.body).not.toContain('id="candidates-title"');
    const kept = await post(
      '/bench/part-readings',
      { form: 'part', kind: 'hole-across-trunnion', size: '.4355' },
      bench,
    );
    expect(kept.statusCode).toBe(303);
    const desk = text((await see(`/calls/${callId}/steps/identify`)).body);
    expect(desk).toContain('From 1 reading against 69 part families');
    expect(desk).toContain('None of these');
    // The call waits for the hole a quarter turn round: nothing else is offered beside it.
    expect(desk).not.toContain('would tell most');
    await post('/bench/part-readings', { form: 'part', kind: 'hole-across-trunnion', size: '.4352' }, bench);
    const then = (await see(`/calls/${callId}/steps/identify`)).body;
    // What is asked now is what tells most: said why, and no second way to anything else.
    expect(text(then)).toContain('would tell most.');
    // No family is named from one kind of reading, and no chance stands on the page.
    expect(text(then)).toContain('While no family is named no chance stands beside one.');
    expect(text(then)).not.toMatch(/\d %/);
    expect(then).not.toMatch(/>Measure (?!it<)/);
    expect(desk).toContain('7/16-14 UNC or 7/16-20 UNF');
    expect(desk).toMatch(/agrees hole across the trunnion \.4355 in ± \.002 against \.4375 in/);
  });

  test('a fault: 422, as typed, linked to its field', async () => {
    const page = await post(`/calls/${callId}/part-readings`, {
      form: 'part',
      kind: 'roller-diameter',
      size: '.496 <b>',
      place: 'at the tip',
    });
    expect(page.statusCode).toBe(422);
    expect(htmlFaults(page.body)).toEqual([]);
    expect(page.body).toContain('value=".496 &lt;b&gt;"');
    expect(page.body).toContain('value="at the tip"');
    expect(page.body).toContain('href="#part-f-size"');
    const far = await post(`/calls/${callId}/part-readings`, {
      form: 'part',
      kind: 'roller-diameter',
      size: '95 in',
    });
    expect(far.statusCode).toBe(422);
    expect(text(far.body)).toContain('Roller diameter is 95 in; .200 in to 1.200 in is allowed');
  });

  test('three marks, each from its own field alone', async () => {
    const none = await post(`/calls/${callId}/part-marks`, { form: 'marks' });
    expect(none.statusCode).toBe(422);
    const done = await post(`/calls/${callId}/part-marks`, {
      form: 'marks',
      'ratio-stamp.mark': '16',
      'box-label.mark': '<i>1.6</i> "set"',
      'box-label.place': 'lid',
    });
    expect(done.statusCode).toBe(303);
    const { json } = await sendJson(service, owner.bearer, 'GET', `/api/v1/builds/${buildId}/identification`);
    const readings: unknown = json.readings;
    const marks = Array.isArray(readings)
      ? readings.filter((each: { size?: unknown }) => each.size === undefined)
      : [];
    expect(marks.map((each: { kind: string; typed: string }) => [each.kind, each.typed])).toEqual([
      ['ratio-stamp', '16'],
      ['box-label', '<i>1.6</i> "set"'],
    ]);
    const page = await see(`/calls/${callId}/steps/identify`);
    expect(page.body).not.toContain('<i>1.6');
    expect(text(page.body)).toContain('“16” has no dot');
    expect(htmlFaults(page.body)).toEqual([]);
  });

  test('a correction keeps the old line on the tape, struck through, with its reason', async () => {
    const page = await see(`/calls/${callId}/steps/identify`);
    const href = /href="(\/calls\/[^"]+\/part-readings\/[0-9a-f-]{36})"/.exec(page.body)?.[1] ?? '';
    const form = await see(href);
    expect(form.statusCode).toBe(200);
    expect(htmlFaults(form.body)).toEqual([]);
    const empty = await post(`${href}/correct`, {
      form: 'correct-part',
      act: 'replace',
      size: '',
      reason: 'x',
    });
    expect(empty.statusCode).toBe(422);
    const done = await post(`${href}/correct`, {
      form: 'correct-part',
      act: 'replace',
      size: '.4362',
      reason: 'jaws cocked',
    });
    expect(done.statusCode).toBe(303);
    const after = await see(`/calls/${callId}/steps/identify`);
    expect(text(after.body)).toContain('struck out: jaws cocked.');
    expect(text(after.body)).toContain('in place of .4355 in');
    const rejected = await post(`${href}/correct`, {
      form: 'correct-part',
      act: 'strike',
      reason: 'once more',
    });
    expect(rejected.statusCode).toBe(422);
    expect(text(rejected.body)).toContain('has been replaced already');
  });
});
