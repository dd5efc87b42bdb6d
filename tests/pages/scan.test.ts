import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openCall, sendJson } from '../tools/call.ts';
import { htmlFaults } from '../tools/html-faults.ts';
import { textBesideDrawings as words } from '../tools/page-text.ts';
import { postForm } from '../tools/post-form.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';
import { inField } from './measured-pages.ts';

/** Scans as a browser without scripts has them: forms posted, pages read. */
let service: TestService;
let person: Person;
let callId: string;
let buildId: string;

beforeAll(async () => {
  service = await testService();
  person = await service.person();
});
afterAll(() => service.close());

const freshCall = async () => {
  ({ callId, buildId } = await openCall(service, person));
};

const post = (path: string, fields: Record<string, string>) =>
  postForm(
    service,
    `/calls/${callId}${path}`,
    { key: crypto.randomUUID(), ...fields },
    { cookies: person.cookies },
  );

async function seen(at: string): Promise<string> {
  const answer = await service.request({ url: `/calls/${callId}${at}`, cookies: person.cookies });
  expect(answer.statusCode).toBe(200);
  expect(htmlFaults(answer.body)).toEqual([]);
  return answer.body;
}

const HOW = {
  cylinder: '3',
  spring: 'light',
  lifter: 'solid',
  lash: 'zero',
  lashSetting: '',
  tool: 'indicator',
  arms: 'these',
};

/** The rows of the form, every 2° from 4° before TDC on an intake; .0005·(θ − 9)² over .090, read from 4° to 16°. */
const gapAt = (angle: number, least = 0.09) => (least + 0.0005 * (angle - 9) ** 2).toFixed(4);
const rows = (least = 0.09) =>
  Object.fromEntries(
    Array.from({ length: 14 }, (_, row) => {
      const angle = -4 + 2 * row;
      const gap = angle >= 4 && angle <= 16 ? gapAt(angle, least) : '';
      return [
        [`readings.${row}.crankAngle`, String(angle)],
        [`readings.${row}.gap`, gap],
      ];
    }).flat(),
  );
const TOLD =
  'Scan of 3 intake: least .090 in ± .002 at about 9° after TDC, at zero lash, against .080 in: clear.';

describe('row by row', () => {
  test('kept, told, drawn with its limit, and as a table; then on report, takeover card and tape', async () => {
    await freshCall();
    const before = await seen('/steps/scan');
    // Nobody’s valve is presumed: the angles go over both sides of TDC.
    expect(before).toMatch(/<option value="" selected[^>]*>Not said/);
    expect([0, 21].map((row) => inField(before, `readings.${row}.crankAngle`))).toEqual(['-22', '20']);
    const kept = await post('/gap-scans', { form: 'scan', valve: 'intake', ...HOW, ...rows() });
    expect([kept.statusCode, kept.headers.location]).toEqual([303, `/calls/${callId}/steps/scan?kept=2`]);
    const html = await seen('/steps/scan');
    expect(words(html)).toContain(TOLD);
    expect(html).toContain('draw-limit');
    expect(words(html)).toContain('Gaps of the scan, in order of the crank');
    for (const face of ['/report', '/takeover']) expect(words(await seen(face))).toContain(TOLD);
    expect(words(await seen('/report'))).toContain('8° after TDC .0905 in');
    expect(words(html)).toContain('Scan 3 intake');
    expect(words(await seen('/steps/sheet'))).toContain('.090');
  });

  test('what came wrong stays typed, and each fault stands at its own cell', async () => {
    await freshCall();
    const wrong = { ...rows(), 'readings.5.gap': 'wide enough', 'readings.6.crankAngle': '368' };
    const bad = await post('/gap-scans', { form: 'scan', valve: 'intake', ...HOW, ...wrong });
    expect(bad.statusCode).toBe(422);
    expect(htmlFaults(bad.body)).toEqual([]);
    expect(bad.body).toContain('href="#scan-f-readings-5-gap"');
    expect(bad.body).toContain('href="#scan-f-readings-6-crankAngle"');
    expect([inField(bad.body, 'readings.5.gap'), inField(bad.body, 'readings.6.crankAngle')]).toEqual([
      'wide enough',
      '368',
    ]);
    const nothing = await post('/gap-scans', {
      form: 'scan',
      valve: 'intake',
      ...HOW,
      ...rows(),
      ...Object.fromEntries(
        Object.keys(rows())
          .filter((name) => name.endsWith('gap'))
          .map((name) => [name, '']),
      ),
    });
    expect([nothing.statusCode, words(nothing.body)]).toEqual([
      422,
      expect.stringContaining('nothing was filled in'),
    ]);
  });
});

describe('pasted', () => {
  const text = [4, 6, 8, 10, 12, 14, 16].map((angle) => `${angle} BTDC ${gapAt(angle, 0.11)}`).join('\n');
  const fields = { form: 'paste-scan', valve: 'exhaust', ...HOW, text, unit: 'in' };

  test('looked at first, nothing kept; then kept', async () => {
    await freshCall();
    const look = await post('/gap-scans/paste', { ...fields, act: 'look' });
    expect(words(look.body)).toContain('As it was read; nothing of it is kept yet');
    expect(words(look.body)).toContain('Scan of 3 exhaust: least .110 in ± .002 at about 9° before TDC');
    expect(words(await seen('/steps/scan'))).not.toContain('Scans on record');
    const kept = await post('/gap-scans/paste', { ...fields, act: 'keep' });
    expect(kept.statusCode).toBe(303);
    expect(words(await seen('/steps/scan'))).toContain('Scans on record');
  });

  test('a row that can’t be read is told by its line, and the text stays', async () => {
    await freshCall();
    const bad = await post('/gap-scans/paste', { ...fields, text: `${text}\nnorth, .080`, act: 'keep' });
    expect(bad.statusCode).toBe(422);
    expect(words(bad.body)).toContain('line 8, crank angle');
    expect(bad.body).toContain('north, .080');
  });

  test('angles told on the wrong side are asked before they are kept, and put right on their own page', async () => {
    await freshCall();
    const wrong = { ...fields, text: text.replaceAll('BTDC', 'ATDC') };
    const look = await post('/gap-scans/paste', { ...wrong, act: 'look' });
    expect(words(look.body)).toContain(
      'Was 3 exhaust read before top dead centre, or was it the other valve?',
    );
    await post('/gap-scans/paste', { ...wrong, act: 'keep' });
    const html = await seen('/steps/scan');
    expect(words(html)).toContain('no word yet, it needs');
    const id = /\/gap-scans\/([0-9a-f-]{36})/.exec(html)?.[1] ?? '';
    const form = await seen(`/gap-scans/${id}`);
    expect(form).toContain('4\t.1225 in');
    const right = {
      ...HOW,
      form: 'correct-scan',
      act: 'replace',
      valve: 'exhaust',
      unit: 'in',
      text,
      reason: 'signs put right',
    };
    expect((await post(`/gap-scans/${id}`, right)).statusCode).toBe(303);
    const after = words(await seen('/steps/scan'));
    expect(after).toContain(
      'Scan of 3 exhaust: least .110 in ± .002 at about 9° before TDC, at zero lash, against .100 in: clear.',
    );
    expect(after).toContain('signs put right');
    const newest = /\/gap-scans\/([0-9a-f-]{36})/.exec(await seen('/steps/scan'))?.[1] ?? '';
    expect(newest).not.toBe(id);
    await post(`/gap-scans/${newest}`, { ...right, act: 'strike', reason: 'indicator had slipped' });
    expect(words(await seen('/report'))).toContain('indicator had slipped');
    const other = await service.person();
    const stranger = await service.request({
      url: `/calls/${callId}/gap-scans/${newest}`,
      cookies: other.cookies,
    });
    expect(stranger.statusCode).toBe(404);
  });
});

test('a worksheet for what a ratio does has lines for both valves, until one was read', async () => {
  const opened = await sendJson(service, person.bearer, 'POST', '/api/v1/calls', {
    goal: 'choose-ratio',
    buildLabel: 'Invented build',
    callerName: 'A caller',
  });
  [callId, buildId] = [String(opened.json.id), String(opened.json.buildId)];
  expect(words(await seen('/worksheet'))).toContain('piston to valve at 2°, 4° … 20° after TDC');
  const readings = [{ crankAngle: '8 deg', gap: '.120 in' }];
  const scan = { cylinder: 1, valve: 'intake', readings };
  const kept = await sendJson(service, person.bearer, 'POST', `/api/v1/builds/${buildId}/gap-scans`, scan);
  expect(kept.status).toBe(201);
  expect(words(await seen('/worksheet'))).not.toContain('piston to valve at 2°');
});
