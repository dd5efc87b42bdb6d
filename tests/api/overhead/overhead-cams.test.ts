import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { describeBuild, openCall, sendJson } from '../../tools/call.ts';
import { linesOf } from '../../tools/call-faces.ts';
import { htmlFaults } from '../../tools/html-faults.ts';
import { postForm } from '../../tools/post-form.ts';
import { type Person, type TestService, testService } from '../../tools/service.ts';

/*
 * Calls about overhead cams over HTTP: buckets with shims and two intakes, and finger followers. Every face says the
 * same. The figures are invented; what they come to is by hand, beside each.
 */
let service: TestService;
let person: Person;
let callId: string;
let buildId: string;

beforeAll(async () => {
  service = await testService();
  person = await service.person();
});
afterAll(() => service.close());

async function freshCall(spec: object, goal: string): Promise<void> {
  ({ callId, buildId } = await openCall(service, person, 'Test build', goal));
  await revise(spec);
}
const revise = (spec: object) => describeBuild(service, person, buildId, spec);

async function page(at: string): Promise<string> {
  const answer = await service.request({ url: `/calls/${callId}/${at}`, cookies: person.cookies });
  expect([at, answer.statusCode]).toEqual([at, 200]);
  expect(htmlFaults(answer.body)).toEqual([]);
  return answer.body;
}
const text = async (at: string) => linesOf(await page(at)).join(' ');
const json = (at: string) =>
  sendJson(service, person.bearer, 'GET', `/api/v1/builds/${buildId}/${at}`).then((answer) => answer.json);

const BUCKETS = {
  engine: {
    valveGear: 'bucket',
    cylinders: 2,
    intakeValves: 2,
    lifter: 'solid-flat',
    shimStock: '2.60 mm, 2.75 mm',
  },
  cam: {
    lashAt: 'cold',
    intake: { lobeLift: '9.0 mm', lash: '.20 mm' },
    exhaust: { lobeLift: '8.6 mm', lash: '.25 mm' },
  },
};

/** Found and fitted, and by hand what goes in: fitted + found − wanted. */
const LASHES = [
  // 2.70 + .10 − .20 = 2.60
  { cylinder: 1, valve: 'intake', lash: '.10 mm', shim: '2.70 mm' },
  // 2.65 + .21 − .20 = 2.66: within .025 of its own.
  { cylinder: 1, valve: 'intake-2', lash: '.21 mm', shim: '2.65 mm' },
  // 2.60 + .35 − .25 = 2.70: that of the first intake.
  { cylinder: 1, valve: 'exhaust', lash: '.35 mm', shim: '2.60 mm' },
] as const;

const SHIMS = [
  /^1 intake: 0\.10 mm found, 0\.20 mm wanted: too tight\. 2\.60 mm .* goes in for its 2\.70 mm/,
  /^1 intake 2: 0\.21 mm found, 0\.20 mm wanted: near enough\. Its own 2\.65 mm shim stays\.$/,
  /^1 exhaust: 0\.35 mm found, 0\.25 mm wanted: too wide\. 2\.70 mm from 1 intake goes in for its 2\.60 mm, which leaves 0\.25 mm\.$/,
];

const shimSentences = async (): Promise<string[]> => {
  const { shims } = await json('lash');
  return Array.isArray(shims) ? shims.map((each: { sentence?: unknown }) => String(each.sentence)) : [];
};

describe('a bucket engine', () => {
  test('in three orders of entry the same shims, on every face', async () => {
    for (const order of [LASHES, LASHES.toReversed(), [LASHES[1], LASHES[2], LASHES[0]]]) {
      await freshCall(BUCKETS, 'adjuster');
      for (const line of order) {
        const kept = await sendJson(service, person.bearer, 'POST', `/api/v1/builds/${buildId}/lash`, {
          ...line,
          engine: 'cold',
        });
        expect([kept.status, kept.json.shim]).toEqual([201, expect.objectContaining({ typed: line.shim })]);
      }
      const said = await shimSentences();
      expect(said).toHaveLength(3);
      for (const [index, pattern] of SHIMS.entries()) expect(said[index]).toMatch(pattern);
      for (const at of ['steps/adjuster', 'report', 'takeover']) {
        const shown = await text(at);
        for (const sentence of said) expect([at, shown.includes(sentence)]).toEqual([at, true]);
      }
    }
  });

  test('what is not covered stands on the first page, the report, the card, and in JSON; steps without use are gone', async () => {
    await freshCall(BUCKETS, 'verify-ratio');
    const { notCovered } = await json('assessment');
    const told = Array.isArray(notCovered)
      ? notCovered.map(
          ({ sentence, instead }: { sentence: string; instead: string }) => `${sentence} Instead: ${instead}`,
        )
      : [];
    expect(told.length).toBeGreaterThan(2);
    for (const at of ['steps/triage', 'steps/build', 'report', 'takeover']) {
      const shown = await text(at);
      for (const each of told) expect([at, shown.includes(each)]).toEqual([at, true]);
    }
    const first = await page('steps/triage');
    for (const step of ['ratio', 'parts', 'identify', 'consequences', 'geometry'])
      expect([step, first.includes(`/steps/${step}"`)]).toEqual([step, false]);
    for (const step of ['sheet', 'adjuster', 'timing'])
      expect([step, first.includes(`/steps/${step}"`)]).toEqual([step, true]);
    expect(await text('steps/ratio')).toContain('Cam and bucket move alike: there is no ratio to read.');
    expect(await page('steps/adjuster')).not.toContain('of=lifter-preload');
  });

  test('the sheet has a row for each intake, typed in the grid or pasted', async () => {
    await freshCall(BUCKETS, 'one-valve-differs');
    const grid = await page('steps/sheet');
    for (const name of ['1-intake', '1-intake-2', '1-exhaust', '2-intake-2'])
      expect([name, grid.includes(`name="grid.${name}.valve-lift"`)]).toEqual([name, true]);
    const kept = await postForm(
      service,
      `/calls/${callId}/sheet/grid`,
      { key: crypto.randomUUID(), form: 'grid', order: 'firing', 'grid.1-intake-2.valve-lift': '8.80 mm' },
      { cookies: person.cookies },
    );
    expect(kept.statusCode).toBe(303);
    expect(await text('steps/sheet')).toContain('1 intake 2');
    const pasted = await sendJson(service, person.bearer, 'POST', `/api/v1/builds/${buildId}/sheet/paste`, {
      text: 'cylinder;valve;valve lift\n2;intake 2;8.81 mm\n2;intake;8.79 mm',
      keep: true,
    });
    expect(pasted.status).toBe(200);
    expect(JSON.stringify(await json('sheet'))).toContain('"valve":"intake-2"');
    const worksheet = await text('worksheet');
    expect(worksheet).not.toContain('Intake 3');
  });

  test('changing the valve gear keeps every reading, and asks which is so', async () => {
    await freshCall({ ...BUCKETS, engine: { cylinders: 4, valveGear: 'pushrod' } }, 'verify-ratio');
    const arm = await sendJson(service, person.bearer, 'POST', `/api/v1/builds/${buildId}/arms`, {
      name: 'A',
    });
    expect(arm.status).toBe(201);
    await revise(BUCKETS);
    const { questions } = await json('assessment');
    expect(questions).toEqual([expect.objectContaining({ code: 'valve-gear' })]);
    expect(await page('steps/triage')).toContain('/steps/parts"');
    expect(await text('steps/parts')).toContain('A');
    const answered = await text('steps/build');
    expect(answered).toContain('rocker arms are on record. Which of the two is so?');
  });

  test('a list of shims that is no list says which of them', async () => {
    await freshCall(BUCKETS, 'adjuster');
    const faulty = { ...BUCKETS, engine: { ...BUCKETS.engine, shimStock: '2.60 mm, thick' } };
    const url = `/api/v1/builds/${buildId}/spec`;
    const put = await sendJson(
      service,
      person.bearer,
      'PUT',
      url,
      { spec: faulty, reason: '' },
      { 'if-match': '"2"' },
    );
    expect(put.status).toBe(422);
    expect(put.text).toContain('/spec/engine/shimStock');
    expect(put.text).toContain('no. 2 “thick”');
  });
});

describe('a finger follower', () => {
  const FINGER = {
    engine: { valveGear: 'finger-follower', cylinders: 4 },
    cam: { intake: { lobeLift: '6 mm' } },
  };
  const ARMS = {
    toValve: '36 mm',
    toCam: '24 mm',
    toValveOpen: '35.4 mm',
    toCamOpen: '21.9 mm',
    within: '.3 mm',
  };

  test('its arms give the ratio at each end, 36/24 = 1.5 and 35.4/21.9 = 1.616; no pushrod is asked for', async () => {
    await freshCall(FINGER, 'geometry');
    const shown = await page('steps/geometry');
    expect(shown).not.toContain('of=pushrod-length');
    expect(linesOf(shown).join(' ')).toContain(
      'The pivot is at one end, the valve at the other, the cam between.',
    );
    const kept = await postForm(
      service,
      `/calls/${callId}/workings/geometry`,
      {
        key: crypto.randomUUID(),
        form: 'working',
        part: 'follower-ratio',
        computation: 'follower-ratio',
        ...ARMS,
      },
      { cookies: person.cookies },
    );
    expect(kept.statusCode).toBe(303);
    const after = await text('steps/geometry');
    expect(after).toContain('1.5');
    expect(after).toContain('1.616');
    expect(await text('report')).toContain('1.616');
    expect(await text('steps/triage')).toContain('changes as the contact on the cam moves');
  });

  test('with one arm at full lift left out the fault stands at its own field', async () => {
    await freshCall(FINGER, 'geometry');
    const refused = await postForm(
      service,
      `/calls/${callId}/workings/geometry`,
      {
        ...{
          key: crypto.randomUUID(),
          form: 'working',
          part: 'follower-ratio',
          computation: 'follower-ratio',
        },
        ...ARMS,
        toCamOpen: '',
      },
      { cookies: person.cookies },
    );
    expect(refused.statusCode).toBe(422);
    expect(refused.body).toContain('value="35.4 mm"');
    expect(refused.body).toContain('href="#working-f-toCamOpen"');
  });
});
