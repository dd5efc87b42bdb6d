import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence, SheetEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { passesOf, stamped } from '../../mechanics/assessment/plain.ts';
import { intakes, PLAIN, read, SET_UP } from '../../mechanics/assessment/plain-build.ts';

/* One valve of a sheet, read once more, on a hydraulic lifter, or under a name that the engine has not: common practice, no published source. */

const on = (sheet: readonly SheetEvidence[], more: Partial<Evidence> = {}): Evidence => ({
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'one-valve-differs' },
  springs: {},
  sheet,
  ...more,
});
const codes = (evidence: Evidence): string[] => assess(evidence).questions.map(({ code }) => code);
const headlines = (evidence: Evidence): string =>
  assess(evidence)
    .headlines.map(({ sentence }) => sentence)
    .join('\n');

const ON_5 = { ...SET_UP, cylinder: 5 };
const inSetUp = (...lifts: readonly number[]) => ({
  setUps: [ON_5],
  passes: passesOf('valve-lift', lifts, { setUpId: ON_5.id, counted: true }),
});

describe('a valve that reads otherwise when it is read again', () => {
  const low = intakes({ 5: { lift: 0.525 } });

  test('once more on the sheet: which is right is asked, and it is read a third time before anything is moved', () => {
    const evidence = on([...low, read(5, 'intake', 'valve-lift', 0.563)]);
    expect(codes(evidence)).toContain('read-otherwise');
    expect(headlines(evidence)).toMatch(
      /5 intake is not set against the others yet\. First: The valve lift of 5 intake was read \.525 in and \.563 in\. Which of them was misread\?/,
    );
    expect(assess(evidence).next).toMatchObject({ action: 'read-otherwise', turns: true });
    expect(headlines(evidence)).not.toContain('stands out');
  });

  test('in a set-up of its own: it is no odd valve, and no arm is named or swapped', () => {
    const evidence = on(low, inSetUp(0.563, 0.563, 0.564));
    expect(assess(evidence).next?.action).toBe('read-otherwise');
    expect(headlines(evidence)).not.toMatch(/is the odd one/);
  });

  test('a third reading tells, and the one apart is named', () => {
    const evidence = on([
      ...low,
      read(5, 'intake', 'valve-lift', 0.563),
      read(5, 'intake', 'valve-lift', 0.562),
    ]);
    expect(codes(evidence)).not.toContain('read-otherwise');
    expect(codes(evidence)).toContain('pass-apart');
    expect(headlines(evidence)).not.toMatch(/is the odd one/);
  });

  test.each([
    ['the same again on the sheet', on([...low, read(5, 'intake', 'valve-lift', 0.526)])],
    ['the same again in a set-up', on(low, inSetUp(0.526, 0.525, 0.526))],
    [
      'a running spring in the set-up',
      on(low, { ...inSetUp(0.548, 0.548, 0.549), setUps: [{ ...ON_5, spring: 'running' }] }),
    ],
    [
      'the lash left in there',
      on(low, {
        ...inSetUp(0.548, 0.548, 0.549),
        setUps: [{ ...ON_5, lash: 'set', lashSetting: 0.016 * IN }],
      }),
    ],
  ])('%s is no contradiction', (_, evidence) => {
    expect(codes(evidence)).not.toContain('read-otherwise');
  });

  test('a lobe that was read twice and does not repeat is asked as well', () => {
    expect(codes(on([...intakes(), read(3, 'intake', 'lobe-lift', 0.338)]))).toContain('read-otherwise');
  });
});

describe('a lobe that reads down while its valve is full', () => {
  test('one of the two was misread: it stays a stop, and that is what it says', () => {
    const [stop] = assess(on(intakes({ 5: { lobe: 0.338 } }))).stop;
    expect(stop?.sentence).toBe(
      'Do not turn it yet: the lobe of 5 intake reads .012 in down, and its valve lifts like the others. One of the two was misread.',
    );
    const { questions } = assess(on(intakes({ 5: { lobe: 0.338 } })));
    expect(questions.find(({ code }) => code === 'lobe-worn')?.ask).toMatch(
      /^Was the lobe of 5 intake read short\?/,
    );
  });

  test.each([
    [0.338, 0.541],
    [0.334, 0.535],
  ])('a lobe of %s whose valve is down with it, %s, is down', (lobe, lift) => {
    expect(assess(on(intakes({ 5: { lobe, lift } }))).stop[0]?.sentence).toMatch(
      /is \.01\d in down on the others\.$/,
    );
  });
});

describe('a low valve on a hydraulic lifter', () => {
  const engine = { ...PLAIN.engine, lifter: 'hydraulic-flat' as const };
  const hydraulic = (lift: number) =>
    intakes({ 5: { lift } }).map((each) =>
      each.kind === 'valve-lift'
        ? { ...each, lifter: 'hydraulic' as const, spring: 'running' as const }
        : each,
    );

  test('is read on one that does not sink before its rocker is looked at', () => {
    const evidence = on(hydraulic(0.544), { engine });
    expect(headlines(evidence)).toMatch(
      /Valve lift \.016 in low, on a hydraulic lifter: one that sinks reads low/,
    );
    expect(assess(evidence).next?.action).toBe('read-on-solid-lifter');
    expect(JSON.stringify(assess(evidence).judgements)).not.toContain('swapped');
  });

  test('one that reads high did not sink', () => {
    expect(headlines(on(hydraulic(0.576), { engine }))).not.toMatch(/^5 intake.*\bsinks/m);
  });

  test('locked solid, it is the rocker or its position', () => {
    const locked = hydraulic(0.544).map((each) => ({ ...each, lifter: 'locked' as const }));
    expect(headlines(on(locked, { engine }))).toMatch(/the rocker or its position/);
  });
});

describe('a valve that the engine does not have', () => {
  test.each([
    ['cylinder 9 of 8', [read(9, 'intake', 'valve-lift', 0.56)], {}, /cylinders 1 to 8/],
    ['a second intake of one', [read(3, 'intake-2', 'valve-lift', 0.56)], {}, /one intake valve/],
    [
      'a third of two, on an engine of four',
      [read(3, 'exhaust-3', 'lash', 0.01)],
      { engine: { cylinders: 4, intakeValves: 2, exhaustValves: 2 } },
      /2 exhaust valves/,
    ],
  ])('%s is asked, and nothing is refused', (_, more, build, said) => {
    const question = assess(on([...intakes(), ...more], build)).questions.find(
      ({ code }) => code === 'no-such-valve',
    );
    expect(question?.ask).toMatch(said);
    expect(question?.restsOn).toEqual(more.map(({ id }) => id));
  });

  test('one of a set-up, of the lash log and of a tip mark as well, each once', () => {
    const evidence = on([], {
      setUps: [{ ...SET_UP, cylinder: 9 }],
      passes: passesOf('valve-lift', [0.56], { setUpId: SET_UP.id }),
      seats: [{ cylinder: 12, valve: 'exhaust', armId: 'arm-a' }],
      arms: [stamped('1.6')],
    });
    expect(codes(evidence).filter((code) => code === 'no-such-valve')).toHaveLength(2);
  });

  test('while nobody said how many cylinders there are, none is asked', () => {
    expect(codes(on([read(9, 'intake', 'valve-lift', 0.56)], { engine: {} }))).not.toContain('no-such-valve');
  });
});

describe('the swap of one valve', () => {
  const sixteen = intakes({ 5: { lift: 0.544 } });
  const twice = [...sixteen, read(5, 'intake', 'valve-lift', 0.545)];
  const arms = [stamped('1.6', 'arm-5'), stamped('1.6', 'arm-7')];
  const seats = [
    { cylinder: 5, valve: 'intake' as const, armId: 'arm-5' },
    { cylinder: 7, valve: 'intake' as const, armId: 'arm-7' },
  ];

  test.each(['1-3-5-7, 2-4-6-8', '1 3 5 7 / 2 4 6 8', 'left 1 3 5 7 right 2 4 6 8', '1,3,5,7 2,4,6,8'])(
    'of two as near on the bank the one whose arm is on record: “%s”',
    (bankOrder) => {
      const evidence = on(twice, { arms, seats, engine: { ...PLAIN.engine, bankOrder } });
      expect(assess(evidence).next?.sentence).toMatch(
        /^Swap 5 \(5 intake\) with 7 \(7 intake, on the same bank\)/,
      );
    },
  );
});
