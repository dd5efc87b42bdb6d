import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { describeBuild, keepReading, openCall, sendJson } from '../../tools/call.ts';
import { linesOf } from '../../tools/call-faces.ts';
import { htmlFaults } from '../../tools/html-faults.ts';
import { type Person, type TestService, testService } from '../../tools/service.ts';

/* Callers without an indicator, over HTTP: a feeler stack and a depth bar, a rule, and a guess. The figures are invented. */
let service: TestService;
let person: Person;

beforeAll(async () => {
  service = await testService();
  person = await service.person();
});
afterAll(() => service.close());

const DIAL = {
  graduation: { value: 0.001, unit: 'in' },
  perTurn: { value: 0.1, unit: 'in' },
};
const STATE = { spring: 'light', lifter: 'solid', lash: 'zero', restsOn: 'not-said', alignment: 'not-said' };

interface Read {
  readonly kind: 'valve-lift' | 'lobe-lift';
  readonly peak: string;
}

async function played(how: object, readings: readonly Read[]) {
  const { callId, buildId } = await openCall(service, person);
  const spec = {
    engine: { lifter: 'solid-flat' },
    cam: { intake: { lobeLift: '.350 in' } },
    rockers: { nominalRatio: 1.6 },
  };
  await describeBuild(service, person, buildId, spec);
  const started = await sendJson(service, person.bearer, 'POST', `/api/v1/builds/${buildId}/set-ups`, {
    cylinder: 1,
    valve: 'intake',
    method: { ...STATE, ...DIAL, ...how },
  });
  expect([started.status, started.text]).toEqual([201, expect.any(String)]);
  for (const { kind, peak } of readings)
    await keepReading(service, person, buildId, String(started.json.id), kind, peak);
  const { json } = await sendJson(service, person.bearer, 'GET', `/api/v1/builds/${buildId}/assessment`);
  const page = async (at: string) => {
    const answer = await service.request({ url: `/calls/${callId}/${at}`, cookies: person.cookies });
    expect([at, answer.statusCode, htmlFaults(answer.body)]).toEqual([at, 200, []]);
    return linesOf(answer.body).join(' ');
  };
  const headlines = Array.isArray(json.headlines) ? json.headlines : [];
  return {
    json,
    page,
    headline: String(
      headlines
        .map(({ sentence }: { sentence: string }) => sentence)
        .find((each) => each.startsWith('1 intake:')),
    ),
  };
}

const ORDERS: readonly ((readings: readonly Read[]) => readonly Read[])[] = [
  (all) => all,
  (all) => all.toReversed(),
  (all) => [...all.slice(1), ...all.slice(0, 1)],
];

describe('without an indicator', () => {
  test('feeler stack at the valve, depth bar at the lifter: 1.600, as far off as the two are, in every order', async () => {
    // .004/√3 and .005/√3: 1.96 · √(.004² + (1.6 · .005)²)/√3/.350 = .029.
    const readings: Read[] = [
      { kind: 'valve-lift', peak: '.560 in' },
      { kind: 'valve-lift', peak: '.560 in' },
      { kind: 'valve-lift', peak: '.560 in' },
      { kind: 'lobe-lift', peak: '.350 in' },
      { kind: 'lobe-lift', peak: '.350 in' },
      { kind: 'lobe-lift', peak: '.350 in' },
    ];
    const said = [];
    for (const order of ORDERS) {
      const call = await played({ tool: 'feeler', lobeSource: 'depth-bar' }, order(readings));
      expect(call.headline).toMatch(
        /^1 intake: 1\.600 ± \.0(29|30|31) as read: agrees with the 1\.6 it is sold as\.$/,
      );
      for (const at of ['steps/ratio', 'report', 'takeover'])
        expect(await call.page(at)).toContain(call.headline);
      const ratio = await call.page('steps/ratio');
      expect(ratio).toContain('Feeler stack, within .004 in: names of a ratio nearer');
      said.push(call.headline);
    }
    expect(new Set(said).size).toBe(1);
  });

  test('a rule cannot tell 1.5 from 1.6 on .350, which are .035 apart; a limit that is entered goes first', async () => {
    const readings: Read[] = [
      { kind: 'lobe-lift', peak: '.350 in' },
      { kind: 'valve-lift', peak: '.540 in' },
    ];
    for (const order of ORDERS) {
      const call = await played({ tool: 'rule', lobeSource: 'rule' }, order(readings));
      expect(await call.page('steps/ratio')).toContain(
        'On this lobe 1.5 and 1.6 are .035 in of valve lift apart, and it cannot tell these two apart.',
      );
      expect(call.headline).not.toMatch(/differs|: agrees/);
    }
    const typed = await played(
      { tool: 'rule', lobeSource: 'rule', errorLimit: '.010 in', lobeErrorLimit: '.010 in' },
      readings,
    );
    expect(await typed.page('steps/ratio')).toContain('Rule, within .010 in');
  });

  test('a guess is kept as a guess, and no word rests on it on any face', async () => {
    for (const order of ORDERS) {
      const call = await played(
        { tool: 'guess', lobeSource: 'card' },
        order([
          { kind: 'valve-lift', peak: '.560 in' },
          { kind: 'valve-lift', peak: '.565 in' },
        ]),
      );
      expect(call.headline).toContain('First: a reading of the valve lift with a tool: this one is a guess.');
      for (const at of ['steps/ratio', 'report', 'takeover']) {
        const shown = await call.page(at);
        expect([at, shown.includes('this one is a guess')]).toEqual([at, true]);
        expect(shown).not.toContain('agrees with the 1.6');
      }
      expect(await call.page('steps/ratio')).toContain('A guess, not measured');
      const judgements = Array.isArray(call.json.judgements) ? call.json.judgements : [];
      expect(
        judgements.filter(({ word }: { word?: string }) => word === 'agrees' || word === 'differs'),
      ).toEqual([]);
    }
  });
});
