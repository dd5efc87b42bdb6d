import { describe, expect, test } from 'vitest';
import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import { changePart } from '../../../../server/mechanics/assessment/change/change.ts';
import type { Evidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { withScans } from '../../../../server/mechanics/assessment/scans/as-gap.ts';
import { IN, LBF, LBF_PER_IN } from '../../../../server/mechanics/kit/si.ts';
import { scanOf } from '../piston-scan.ts';
import { CHANGE, gapOf, readOf } from './change-of-arms.ts';

const PLANNED: Evidence = { ...CHANGE, arms: [], answers: [] };
const headlineOf = (evidence: Evidence, id: string) =>
  assess(evidence).headlines.find((each) => each.id === id)?.sentence;

describe('how many gaps are not known', () => {
  const countOf = (evidence: Evidence) =>
    /^Not known yet: (\w+) gap/.exec(headlineOf(evidence, 'headline:change:not-known') ?? '')?.[1];
  const first = gapOf('first', 'piston-to-valve', 0.11);

  test('reading one valve makes no more of them, and the others of its side are still among them', () => {
    expect(countOf(PLANNED)).toBe('14');
    const one = { ...PLANNED, sheet: [first] };
    expect(countOf(one)).toBe('14');
    expect(headlineOf(one, 'headline:change:not-known')).toMatch(
      /piston to valve on the other intake valves and the exhaust valves/,
    );
    const second = { ...first, id: 'second', cylinder: 2 };
    expect(countOf({ ...PLANNED, sheet: [first, second] })).toBe('14');
  });
});

describe('a reading beside what was worked out from one with other arms', () => {
  const build = (least: number): Evidence => ({
    ...CHANGE,
    seats: [{ cylinder: 1, valve: 'intake', armId: 'new' }],
    scans: [scanOf('earlier', 0.11, { armId: 'old' }), scanOf('later', least, { armId: 'new', line: 101 })],
  });
  const askedOf = (evidence: Evidence) =>
    changePart(withScans(evidence), [readOf('new', 1.6)]).questions.find(
      ({ code }) => code === 'gap-against-calculated',
    );

  test('is set against that reading: .110 − .120 × .1 = .098', () => {
    expect(askedOf(build(0.098))).toBeUndefined();
    const question = askedOf(build(0.075));
    expect(question?.test).toMatch(/how each of the two was read: base, lash, the wheel’s zero and timing/);
    expect(question?.test).not.toMatch(/closed gap|valve angle/);
  });

  test('of one place the same, with what such a reading is made of', () => {
    const evidence = {
      ...build(0.098),
      scans: [],
      sheet: [
        gapOf('earlier', 'piston-to-valve', 0.11, { armId: 'old', tool: 'indicator' }),
        gapOf('later', 'piston-to-valve', 0.075, { armId: 'new', tool: 'indicator' }),
      ],
    };
    expect(askedOf(evidence)?.test).toMatch(/tool, spring, lifter and lash/);
  });
});

describe('several plans', () => {
  // Room to coil bind: 1.760 − (.350 × r − .016) − 1.150 = .626 − .350 r; .060 in wanted (common practice).
  const several: Evidence = {
    ...PLANNED,
    rockers: { ...CHANGE.rockers, alsoPlanned: [1.7] },
    engine: { ...CHANGE.engine, studSize: '3/8' },
    springs: {
      installedHeight: 1.8 * IN,
      solidHeight: 1.15 * IN,
      seatLoad: 150 * LBF,
      rate: 420 * LBF_PER_IN,
    },
  };
  const plansTold = (evidence: Evidence) =>
    assess(evidence).headlines.flatMap(
      ({ sentence }) => /^With the planned (\d\.\d+), worst/.exec(sentence)?.[1] ?? [],
    );

  test('the one that is to be fitted is told first, then the worst of those beside it', () => {
    expect(plansTold(several)).toEqual(['1.6', '1.7']);
    const more = { ...several.rockers, alsoPlanned: [1.5, 1.7] };
    expect(plansTold({ ...several, rockers: more })).toEqual(['1.6', '1.7', '1.5']);
    const rockers = { ...CHANGE.rockers, planned: 1.7, alsoPlanned: [1.6] };
    expect(plansTold({ ...several, rockers })).toEqual(['1.7', '1.6']);
    const roomy = { ...several, springs: { ...several.springs, installedHeight: 1.95 * IN } };
    expect(plansTold(roomy)).toEqual(['1.6', '1.7']);
  });

  test('the question of the studs says with which of them; of one plan it needs not', () => {
    const askOf = (evidence: Evidence) =>
      assess(evidence).questions.find(({ code }) => code === 'stud-load')?.ask;
    expect(askOf(several)).toMatch(/than the springs open at with the planned 1\.7, \d+ lb\?$/);
    const { alsoPlanned: _, ...rockers } = several.rockers;
    expect(askOf({ ...several, rockers })).toMatch(/than the springs open at, \d+ lb\?$/);
  });
});

describe('an arm of the plan that was measured', () => {
  // Retainer to seal less the net lift, .350 r − .016; .050 in wanted (common practice).
  const toldOf = (value: number, shut: number) =>
    changePart({ ...PLANNED, springs: { retainerToSeal: shut * IN } }, [
      { ...readOf('new', value), soldAsThen: 1.6 },
    ]).headlines[0]?.sentence;

  test('is named with its own ratio where it stands by itself: .610 − .572 = .038', () => {
    expect(toldOf(1.68, 0.61)).toMatch(
      /retainer to seal on 1 intake with the measured 1\.680: short, \.038 in/,
    );
  });

  test('and where it is the worst of several: .640 − .579 = .061', () => {
    expect(toldOf(1.7, 0.64)).toMatch(
      /on 1 intake, the other intake valves.*: clear, .*, with the measured 1\.700 of 1 intake\./,
    );
  });

  test('not where another is the worst: −2 to +4.5 % of one that is not measured', () => {
    expect(toldOf(1.6, 0.64)).not.toMatch(/measured/);
  });
});

describe('nothing planned, and sold as what the card works with', () => {
  const build = (soldAs: number, goal: Evidence['call']['goal']): Evidence => ({
    ...PLANNED,
    call: { ...PLANNED.call, goal },
    rockers: { soldAs },
  });
  const ID = 'headline:change:no-change';

  test('that it is no change is said, and which is meant is asked for', () => {
    expect(headlineOf(build(1.6, 'clearances-after-a-change'), ID)).toBe(
      'Before and after are alike: the 1.6 they are sold as is the 1.6 the card assumes. Say which ratio is planned, or which was on before.',
    );
    expect(headlineOf(build(1.5, 'clearances-after-a-change'), ID)).toBeUndefined();
    expect(headlineOf(build(1.6, 'verify-ratio'), ID)).toBeUndefined();
  });
});
