import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { sendJson } from '../tools/call.ts';
import { htmlFaults } from '../tools/html-faults.ts';
import { at } from '../tools/numbers.ts';
import { textOf as text } from '../tools/page-text.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';
import { type WholeCall, wholeCall } from '../tools/whole-call.ts';

/** The takeover card, the worksheet and the export of a call with something of every kind in it. */
let service: TestService;
let person: Person;
let whole: WholeCall;
beforeAll(async () => {
  service = await testService();
  person = await service.person({ name: 'Robin at the desk' });
  whole = await wholeCall(service, person, 'clearances-after-a-change');
});
afterAll(() => service.close());

const see = (path: string) =>
  service.request({ url: `/calls/${whole.callId}/${path}`, cookies: person.cookies });

describe('the takeover card', () => {
  test.each([
    ['caller, role and call-back', 'Lin Marsh Engine builder, ext 7'],
    ['the goal', 'Goal Clearances after a change'],
    ['the stop flag', 'Stop. Do not run it, and do not turn it yet: rocker to retainer on 1 intake is short'],
    ['what is missing', 'Cam card: The lash on the card.'],
    ['raw passes, the struck one with its reason', 'valve lift (.460: one turn missed), .560, .560, .560'],
    ['raw readings of the sheet, valve by valve', '1: .56; 2: .561;'],
    ['both gauges of a reading', 'more than .024 in, less than .028 in'],
    [
      'marks word for word, and where the arm sits now',
      'arm E, on 4 intake: ratio stamp “1.6”, other number “K7”, box label “says one six”',
    ],
    ['swaps in order', 'arm E on 4 intake, from 5 intake, in place of arm D swap test'],
    ['photographs and what they prove', 'the hand at 60'],
    [
      'what was said, on which limit and by whom',
      /Do not run it on these springs\. coil bind \.060; Robin at the desk/,
    ],
    ['limits in force', 'coil bind, each spring .060 in'],
    ['open promises with owner and date', 'Look up a longer spring Sal Reed, by 3 Feb 2027'],
    ['for this kind of call: which gaps are measured', /measured: [^;]*rocker to retainer/],
    ['and which are calculated', /calculated: [^;]*room to coil bind/],
  ])('holds %s', async (_, words) => {
    const page = await see('takeover');
    expect(htmlFaults(page.body)).toEqual([]);
    if (typeof words === 'string') expect(text(page.body)).toContain(words);
    else expect(text(page.body)).toMatch(words);
  });
});

test('the worksheet has a line for what the goal still lacks', async () => {
  const page = await see('worksheet');
  expect(htmlFaults(page.body)).toEqual([]);
  expect(text(page.body)).toContain('Still to read');
  expect(page.body).toMatch(
    /<dt>The intake valve to piston with the valve shut, at top dead centre\.<\/dt><dd><\/dd>/,
  );
});

test('the worksheet of the desk leads nobody to the sign-in of the desk', async () => {
  const page = await see('worksheet');
  expect(page.body).not.toContain('worksheet-code');
  expect(text(page.body)).not.toContain(`/calls/${whole.callId}`);
  expect(text(page.body)).toContain('under the link that the desk sent you');
});

describe('the export', () => {
  test('holds every record of the call, and the picture is at its address', async () => {
    const { json } = await sendJson(service, person.bearer, 'GET', `/api/v1/builds/${whole.buildId}/export`);
    expect(json.format).toBe('benchcall-build-1');
    const count = (list: string) => {
      const all = at(json, list);
      return Array.isArray(all) ? all.length : -1;
    };
    // Two revisions of the empty and the read-out build; two arms placed and swapped; 3 + 4 passes and a strike.
    expect({
      calls: count('calls'),
      revisions: count('revisions'),
      arms: count('arms'),
      placements: count('placements'),
      setUps: count('setUps'),
      readings: count('readings'),
      sheetReadings: count('sheetReadings'),
      partReadings: count('partReadings'),
      workings: count('workings'),
      photographs: count('photographs'),
      answers: count('answers'),
      notes: count('notes'),
    }).toEqual({
      calls: 1,
      revisions: 2,
      arms: 2,
      placements: 4,
      setUps: 1,
      readings: 8,
      sheetReadings: 16 + 2 + 3,
      partReadings: 6,
      workings: 1,
      photographs: 1,
      answers: 1,
      notes: 2,
    });
    expect(at(json, 'calls', 0)).toMatchObject({
      goal: 'clearances-after-a-change',
      callerName: 'Lin Marsh',
    });
    expect(at(json, 'workings', 0, 'computation')).toBe('roller-sweep');
    expect(at(json, 'notes', 1)).toMatchObject({ kind: 'promise', owner: 'Sal Reed', due: '2027-02-03' });
    expect(at(json, 'photographs', 0, 'readingId')).toBe(whole.provenReading);
    const picture = await service.request({
      url: String(at(json, 'photographs', 0, 'address')),
      headers: person.bearer,
    });
    expect(picture.headers['content-type']).toBe('image/jpeg');
  });

  test('is described in the OpenAPI document with every list it has', async () => {
    const { json } = await sendJson(service, person.bearer, 'GET', `/api/v1/builds/${whole.buildId}/export`);
    const document = await sendJson(service, {}, 'GET', '/api/v1/openapi.json');
    const answer = JSON.stringify(at(document.json, 'components', 'schemas', 'BuildExport', 'properties'));
    for (const name of Object.keys(json)) expect(answer).toContain(`"${name}":`);
  });
});
