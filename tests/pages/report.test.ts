import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openCall, sendJson } from '../tools/call.ts';
import { htmlFaults } from '../tools/html-faults.ts';
import { textOf as text } from '../tools/page-text.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';
import { type WholeCall, wholeCall } from '../tools/whole-call.ts';

/**
 * The report of a call made by JSON with something of every kind. Its figures are worked by hand: a lobe of .350 in
 * and .560 in at the valve is 1.600; .016 of lash on the sheet leaves .544 net with it and .350 x 1.5 - .016 = .509 with
 * the card's ratio. A spring installed at 1.900, solid at 1.310, leaves 1.900 - 1.310 - .544 = .046 to coil bind and
 * .081 before; the retainer is left .700 - .544 = .156 over the seal. The valves whose lash nobody told lift
 * .350 x 1.6 = .560 at zero lash, which leaves .590 - .560 = .030 to coil bind.
 */
let service: TestService;
let person: Person;
let whole: WholeCall;
let report: string;
beforeAll(async () => {
  service = await testService();
  person = await service.person({ name: 'Robin at the desk' });
  whole = await wholeCall(service, person);
  report = text((await see(`/calls/${whole.callId}/report`)).body);
});
afterAll(() => service.close());

const see = (url: string, cookies: Record<string, string> = person.cookies) =>
  service.request({ url, cookies });

describe('the report of a whole call', () => {
  test.each([
    [
      'the stop, at the top',
      'Stop. Do not run it, and do not turn it yet: rocker to retainer on 1 intake is short, .024 to .028 in against .030 in.',
    ],
    ['the ratio in short', '1 intake: 1.600 ± .012 as read: agrees with the 1.6 it is sold as.'],
    [
      'the swap in short',
      /Swap of arm [DE] and arm [DE] between 4 intake and 5 intake: the difference went with arm E,/,
    ],
    [
      'the gaps in short',
      'Worst first: room to coil bind on 1 intake, the exhaust valves and the other intake valves: short, at worst .003 in (.030 to be expected), calculated, against .060 in. Also short: rocker to retainer. Don’t run it.',
    ],
    ['who does what by when', 'Look up a longer spring: Sal Reed, by 3 Feb 2027.'],
    ['caller and goal', 'Lin Marsh Engine builder'],
    ['the struck pass with its reason', '(.460 in)'],
    ['why it was struck', 'Struck out by Robin at the desk: one turn missed'],
    ['a question that was answered', 'read back, all as entered'],
    ['how likely each explanation is', 'What would have to be true'],
    ['the odd valve', '4 intake odd one'],
    ['what the swap decides', 'the difference went with arm E'],
    ['a reading between two gauges', '.024 to .028'],
    [
      'coil bind, before and after, calculated',
      /Room to coil bind \.081 ± \S+ calculated \.046 ± \S+ calculated, \.014 under \.060 short/,
    ],
    ['retainer to seal', /Retainer to seal \S+ ± \S+ calculated \.156 ±/],
    ['a measured gap', /Anything to the cover \.100 ± \S+ measured, \.040 over \.060/],
    ['limits with their source', 'Coil bind, each spring .060 in'],
    ['the source itself', 'common practice, no published source'],
    ['the drawing of the margins', 'Along the stem; the stem is broken off'],
    ['what was measured of the part', 'Hole across the trunnion .4362 in, turned a quarter turn'],
    ['a mark of the part, word for word', '“K7 <cast>”'],
    ['none of these', 'None of these'],
    ['the fastener', '7/16-14 UNC or 7/16-20 UNF'],
    ['the cover', 'Room under the valve cover, sideways'],
    ['a kept working', 'Roller sweep'],
    [
      'what a photograph shows and proves',
      /The dial : the hand at 60 Proves line \d+: valve lift, pass 2, 1 intake, \.560 in/,
    ],
    ['who took it', /Robin at the desk, \d+ \w+, \d\d:\d\d, line \d+/],
    ['advice and what it rests on', 'Do not run it on these springs. coil bind .060'],
    ['marks of an arm, word for word', '“says one six”'],
    ['the swaps in order', 'swap test'],
    ['the build', 'Coil-bind height 1.310 in'],
    ['the tape', 'newest last, times in UTC'],
  ])('says %s', (_, words) => {
    if (typeof words === 'string') expect(report).toContain(words);
    else expect(report).toMatch(words);
  });

  test('the working on it is as the computation gives it: b - sqrt(b² - h²/4), by hand', () => {
    // 1.455 - sqrt(1.455² - .280²) = .02720 in
    expect(1.455 - Math.sqrt(1.455 ** 2 - 0.28 ** 2)).toBeCloseTo(0.0272, 4);
    expect(report).toContain('Least sweep .0272 in');
  });

  test('never says that anything is safe', () => {
    expect(report).not.toMatch(/\bsafe(ly|ty)?\b/i);
  });

  test('is the same for the builder, and sound on both sides', async () => {
    const bench = await see('/bench/report', whole.bench);
    expect(bench.statusCode).toBe(200);
    expect(htmlFaults(bench.body)).toEqual([]);
    expect(htmlFaults((await see(`/calls/${whole.callId}/report`)).body)).toEqual([]);
    for (const words of [
      'Do not run it: room to coil bind',
      'None of these',
      'the difference went with arm E',
    ])
      expect(text(bench.body)).toContain(words);
    const image = /<img src="(\/bench\/photographs\/[^"]+)"/.exec(bench.body)?.[1] ?? '';
    expect((await see(image, whole.bench)).headers['content-type']).toBe('image/jpeg');
  });

  test('begins with what the caller rang for', async () => {
    const place = (all: string, heading: string) => all.indexOf(`> ${heading}`.slice(2));
    expect(place(report, 'Set-up 1: 1 intake')).toBeLessThan(place(report, 'The part in the hand'));
    const asked = await wholeCall(service, person, 'identify');
    const other = text((await see(`/calls/${asked.callId}/report`)).body);
    expect(place(other, 'The part in the hand')).toBeLessThan(place(other, 'Set-up 1: 1 intake'));
  });
});

test('a call with nothing in it has no empty parts on its report', async () => {
  const { callId } = await openCall(service, person, 'Bare build');
  const page = await see(`/calls/${callId}/report`);
  expect(htmlFaults(page.body)).toEqual([]);
  const bare = text(page.body);
  for (const heading of [
    'Set-up 1',
    'Every valve',
    'What the ratio does',
    'The part in the hand',
    'Photographs',
  ])
    expect(bare).not.toContain(`${heading} `);
  expect(bare).toContain('Nothing is promised: no name and no date is on record.');
  expect(bare).toContain('No stop is set.');
});

test('while the call is on hold its report says stop first, and asks for photographs only', async () => {
  const { callId } = await openCall(service, person, 'Held build');
  await sendJson(service, person.bearer, 'POST', `/api/v1/calls/${callId}/hold`, {
    reason: 'metal in the oil',
  });
  const held = text((await see(`/calls/${callId}/report`)).body);
  expect(held).toContain('Stop. ');
  expect(held.match(/metal in the oil/g)?.length).toBeGreaterThanOrEqual(1);
  expect(held).toContain(
    'Leave it as it stands: photograph it, and read the marks of the parts that are off.',
  );
});
