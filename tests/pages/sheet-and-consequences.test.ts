import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { describeBuild, keepReading, METHOD, openCall, sendJson, startSetUp } from '../tools/call.ts';
import { makeLink } from '../tools/filled-call.ts';
import { htmlFaults } from '../tools/html-faults.ts';
import { textOf as text } from '../tools/page-text.ts';
import { postForm } from '../tools/post-form.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

let service: TestService;
let owner: Person;
let callId: string;
let buildId: string;
let setUpId: string;
let bench: { 'benchcall-bench': string };

const SPEC = {
  engine: { cylinders: 8, firingOrder: '1-8-4-3-6-5-7-2', lifter: 'solid-flat', rockerMounting: 'stud' },
  cam: { assumedRatio: 1.5, intake: { lobeLift: '.350 in' } },
  springs: { installedHeight: '1.900 in', seatLoad: '130 lbf', rate: '350 lbf/in', solidHeight: '1.310 in' },
};

beforeAll(async () => {
  service = await testService();
  owner = await service.person();
  ({ callId, buildId } = await openCall(service, owner, 'Sheet of a build'));
  await describeBuild(service, owner, buildId, SPEC);
  setUpId = await startSetUp(service, owner, buildId, { ...METHOD, spring: 'light' });
  for (const kind of ['lobe-lift', 'valve-lift'])
    for (let pass = 0; pass < 3; pass += 1)
      await keepReading(service, owner, buildId, setUpId, kind, kind === 'lobe-lift' ? '.350 in' : '.560 in');
  bench = { 'benchcall-bench': (await makeLink(service, owner, callId)).bench };
});
afterAll(() => service.close());

const see = (url: string, cookies: Record<string, string> = owner.cookies) =>
  service.request({ method: 'GET', url, cookies });
const post = (url: string, fields: Record<string, string>, cookies: Record<string, string> = owner.cookies) =>
  postForm(service, url, fields, { cookies });
/** The gap that was read short stops the build: the desk strikes it out, so that more can be read. */
async function strikeShortGap(): Promise<void> {
  const { rows } = await service.database.asOwner(
    "select id from valve_reading where build_id = $1 and kind = 'slot-to-stud'",
    [buildId],
  );
  const url = `/api/v1/builds/${buildId}/sheet/readings/${String(rows[0]?.id)}/corrections`;
  const done = await sendJson(service, owner.bearer, 'POST', url, { reason: 'the wire was bent' });
  expect(done.status, done.text).toBe(201);
}
const keyOf = (html: string, form: string) =>
  new RegExp(`id="${form}"[\\s\\S]*?name="key" value="([^"]+)"`).exec(html)?.[1] ?? '';

describe('what the ratio does', () => {
  test('before and after side by side; a short gap stops it', async () => {
    const page = await see(`/calls/${callId}/steps/consequences`);
    expect(page.statusCode).toBe(200);
    expect(htmlFaults(page.body)).toEqual([]);
    const words = text(page.body);
    // 1.900 − .560 − 1.310 = .030, by hand; 1.5 × .350 leaves .065.
    expect(words).toMatch(/Room to coil bind.*?\.065 ± .*?\.030 ±/);
    expect(words).toContain(
      'Do not run it: room to coil bind on 1 intake with the measured 1.600 comes out short',
    );
    expect(words).toContain('qualified shop');
    expect(words).toMatch(/Rocker slot to stud.*?not known lacks a measured gap/);
    expect(words).not.toMatch(/\bsafe\b/i);
    expect(page.body).toContain('id="margins-1-intake-title"');
    expect(words).toContain('lacks the distance with the valve shut');
  });

  test('the builder sees the same at the bench', async () => {
    const page = await see('/bench/steps/consequences', bench);
    expect(page.statusCode).toBe(200);
    expect(htmlFaults(page.body)).toEqual([]);
    expect(text(page.body)).toMatch(/Room to coil bind.*?\.030 ±/);
  });

  test('what is lacking is entered there, and the figures go on the tape', async () => {
    const before = await see(`/calls/${callId}/steps/consequences`);
    const revision = /name="revision" value="(\d+)"/.exec(before.body)?.[1] ?? '';
    const wrong = await post(`/calls/${callId}/spec/clearances`, {
      form: 'clearances',
      revision,
      'rockers.pivotToTip': 'long',
    });
    expect(wrong.statusCode).toBe(422);
    expect(wrong.body).toContain('value="long"');
    const kept = await post(`/calls/${callId}/spec/clearances`, {
      form: 'clearances',
      revision,
      'clearances.intake.pushrodToHead': '.120',
      'rockers.pivotToTip': '1.48',
    });
    expect(kept.statusCode).toBe(303);
    const page = await see(`/calls/${callId}/steps/consequences`);
    // With the arms that are on it is .120 ± .005; with the card's 1.5 it is .120 less .062, the cup's move from 1.5 to 1.6 on a
    // 1.48 arm: trade practice, calculated there. Until it is said which, both ends count.
    expect(text(page.body)).toMatch(/Pushrod to head .*?\.120 \(\.0[2-5]\d to \.125\)/);
    expect(text(page.body)).toContain('With which arms was pushrod to head of the intake valves read');
    const done = await post(`/calls/${callId}/consequences`, {
      key: keyOf(page.body, 'keep-1-intake'),
      about: '1-intake',
    });
    expect(done.statusCode).toBe(303);
    const after = await see(String(done.headers.location));
    expect(text(after.body)).toMatch(/What the ratio does on 1 intake: short: coil bind/);
  });
});

describe('the per-valve sheet', () => {
  const HOW = { spring: 'light', lifter: 'solid', tool: 'indicator', arms: 'these' };

  test('a valve at a time, and the next one in firing order stands ready', async () => {
    const page = await see(`/calls/${callId}/steps/sheet`);
    expect(page.statusCode).toBe(200);
    expect(htmlFaults(page.body)).toEqual([]);
    const kept = await post(`/calls/${callId}/sheet`, {
      ...HOW,
      form: 'valve',
      cylinder: '1',
      valve: 'intake',
      'figures.lobe-lift': '.350',
      'figures.valve-lift': '.560',
      'figures.slot-to-stud': 'more than .024, less than .028',
    });
    expect(kept.statusCode).toBe(303);
    const next = await see(`/calls/${callId}/steps/sheet`);
    expect(htmlFaults(next.body)).toEqual([]);
    expect(text(next.body)).toContain('.024 to .028');
    // What is next reads the others of the side that was begun: the form offers one of those, in firing order.
    expect(next.body).toMatch(/name="cylinder"[^>]*value="8"/);
    expect(next.body).toMatch(/<option value="intake" selected/);
  });

  test('nothing filled in, and a wrong figure: 422 with what was typed', async () => {
    const empty = await post(`/calls/${callId}/sheet`, {
      ...HOW,
      form: 'valve',
      cylinder: '1',
      valve: 'intake',
    });
    expect(empty.statusCode).toBe(422);
    expect(text(empty.body)).toContain('nothing was filled in');
    const wrong = await post(
      '/bench/sheet',
      { ...HOW, form: 'valve', cylinder: '2', valve: 'intake', 'figures.valve-lift': '<b>high</b>' },
      bench,
    );
    expect(wrong.statusCode).toBe(422);
    expect(htmlFaults(wrong.body)).toEqual([]);
    expect(wrong.body).toContain('&lt;b&gt;high&lt;/b&gt;');
  });

  test('pasted rows are looked at before anything is kept', async () => {
    await strikeShortGap();
    const lines = [0.56, 0.561, 0.56, 0.559, 0.525, 0.56, 0.561, 0.56];
    const rows = lines.map((lift, index) => `${index + 1}\tintake\t.350\t${lift}`);
    const good = ['cylinder\tvalve\tlobe lift\tvalve lift', ...rows.slice(1)].join('\n');
    const fields = { ...HOW, form: 'paste', unit: 'in', text: good };
    const count = async () =>
      (await sendJson(service, owner.bearer, 'GET', `/api/v1/builds/${buildId}/sheet`)).json;
    const readings = async (): Promise<number> => {
      const { readings: all } = await count();
      return Array.isArray(all) ? all.length : -1;
    };
    const before = await readings();
    const faulty = await post(`/calls/${callId}/sheet/paste`, {
      ...fields,
      text: `${good}\n9\tintake\tx\t.56`,
      act: 'look',
    });
    expect(faulty.statusCode).toBe(422);
    expect(text(faulty.body)).toContain('line 9, lobe lift');
    const look = await post(`/calls/${callId}/sheet/paste`, { ...fields, act: 'look' });
    expect(look.statusCode).toBe(200);
    expect(htmlFaults(look.body)).toEqual([]);
    expect(text(look.body)).toContain('nothing of it is kept yet');
    expect(await readings()).toBe(before);
    const kept = await post(`/calls/${callId}/sheet/paste`, { ...fields, act: 'keep' });
    expect(kept.statusCode).toBe(303);
    expect(await readings()).toBe(before + 14);
  });

  test('the odd valve is marked, drawn and told what settles it', async () => {
    const page = await see(`/calls/${callId}/steps/sheet?order=bank`);
    expect(htmlFaults(page.body)).toEqual([]);
    expect(text(page.body)).toContain('5 intake odd one');
    expect(text(page.body)).toContain('on a lobe like the others’: the rocker or its position');
    expect(page.body).toContain('id="drawing-light-intake-title"');
    const there = await see('/bench/steps/sheet', bench);
    expect(htmlFaults(there.body)).toEqual([]);
  });

  test('a reading is put right with a reason; without one it is not', async () => {
    const page = await see(`/calls/${callId}/steps/sheet`);
    const url = /href="(\/calls\/[^"]+\/sheet\/readings\/[^"]+)"/.exec(page.body)?.[1] ?? '';
    const form = await see(url);
    expect(form.statusCode).toBe(200);
    expect(htmlFaults(form.body)).toEqual([]);
    const without = await post(url, { form: 'correct-sheet', act: 'replace', reading: '.351', reason: '' });
    expect(without.statusCode).toBe(422);
    const done = await post(url, {
      form: 'correct-sheet',
      act: 'replace',
      reading: '.351',
      reason: 'read again',
    });
    expect(done.statusCode).toBe(303);
    const rejected = await post(url, { form: 'correct-sheet', act: 'strike', reason: 'twice' });
    expect(rejected.statusCode).toBe(422);
    expect(text(rejected.body)).toMatch(
      /has been replaced already: .+ put \.351 in .*?in its place, \d{4}-\d\d-\d\d \d\d:\d\d UTC\. Line (\d+) stands now/,
    );
    const line = /Line (\d+) stands now/.exec(text(rejected.body))?.[1];
    expect(rejected.body).toContain(`<a href="#line-${line}">`);
    expect(rejected.body).toContain(`id="line-${line}"`);
  });
});

describe('limits', () => {
  test('an administrator sets one with its source; nobody else sees the page', async () => {
    const page = await see('/desk/limits?limit=cover');
    expect(page.statusCode).toBe(200);
    expect(htmlFaults(page.body)).toEqual([]);
    const without = await post('/desk/limits', { name: 'cover', value: '.1', source: '' });
    expect(without.statusCode).toBe(422);
    const done = await post('/desk/limits', {
      name: 'cover',
      value: '.100',
      source: 'invented maker, sheet 2',
    });
    expect(done.statusCode).toBe(303);
    expect(text((await see('/desk/limits')).body)).toMatch(/\.100 in invented maker, sheet 2/);
    const desk = await service.person({ shopId: owner.shopId, roles: ['desk'] });
    expect((await see('/desk/limits', desk.cookies)).statusCode).toBe(403);
  });
});
