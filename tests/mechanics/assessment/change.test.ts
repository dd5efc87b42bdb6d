import { describe, expect, test } from 'vitest';
import { changePart } from '../../../server/mechanics/assessment/change/change.ts';
import type { ValveRatio } from '../../../server/mechanics/assessment/change/input.ts';
import { toRead } from '../../../server/mechanics/assessment/common/lack.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { DEG, IN, LBF } from '../../../server/mechanics/kit/si.ts';
import { PLAIN, read } from './plain-build.ts';

const planned = (ratio: number, more: Partial<Evidence> = {}): Evidence => ({
  ...PLAIN,
  ...more,
  rockers: { soldAs: 1.5, planned: ratio, pivotToTip: 1.48 * IN, ...more.rockers },
});

const RATIO: ValveRatio = {
  cylinder: 1,
  valve: 'intake',
  setUpId: 's1',
  value: 1.6,
  low: 1.589,
  high: 1.611,
  spring: 'light',
  basis: 'measured',
  lashIn: 'none',
  lobeLift: 0.35 * IN,
  lacks: [],
  restsOn: ['p1'],
};

const of = (
  evidence: Evidence,
  ratios: readonly ValveRatio[] = [],
  id = ratios.length > 0 ? 'change:1-intake' : 'change:intake',
) => {
  const part = changePart(evidence, ratios);
  const detail = part.detail.find((each) => each.id === id);
  if (detail === undefined) throw new Error(`no ${id}`);
  const gap = (name: string) => detail.gaps.find((each) => each.name === name);
  const figure = (name: string) => detail.figures.find((each) => each.name === name);
  return { part, detail, gap, figure };
};
const inches = (si: number | undefined) => (si ?? Number.NaN) / IN;

describe('a planned ratio while nothing is measured', () => {
  const { detail, gap, figure, part } = of(planned(1.6));

  test('is judged as planned, −2 to +4.5 %: common practice, no published source', () => {
    expect(detail.after?.from).toBe('planned');
    expect(detail.after?.low).toBeCloseTo(1.568, 12);
    expect(detail.after?.high).toBeCloseTo(1.672, 12);
    expect(detail.before?.from).toBe('sold-as');
  });

  test('gross lift .350 × 1.6 = .560, less 2 % of it .0112, and 4.5 % over .0252, by hand; no lash is known, so there is no net lift', () => {
    expect(inches(figure('gross-lift')?.after?.value)).toBeCloseTo(0.56, 12);
    expect(inches(figure('gross-lift')?.after?.low)).toBeCloseTo(0.5488, 12);
    expect(inches(figure('gross-lift')?.after?.high)).toBeCloseTo(0.5852, 12);
    expect(figure('net-lift')?.after).toBeUndefined();
    expect(figure('net-lift')?.lacks).toEqual(['lash']);
  });

  test('coil bind 1.900 − .560 − 1.150 = .190, −√(.0252² + 2·.005²) = .0262, +√(.0112² + 2·.005²) = .0133: .163 to .204 as told, by hand', () => {
    expect(inches(gap('coil-bind')?.after?.value)).toBeCloseTo(0.19, 12);
    expect(inches(gap('coil-bind')?.after?.low)).toBeCloseTo(0.163, 12);
    expect(inches(gap('coil-bind')?.after?.high)).toBeCloseTo(0.204, 12);
    expect(gap('coil-bind')?.word).toBe('clear');
  });

  test('every sentence of a gap names the planned ratio, and no other ratio is judged', () => {
    const sentences = part.judgements.map(({ sentence }) => sentence);
    expect(sentences.length).toBeGreaterThan(0);
    for (const sentence of sentences) expect(sentence).toMatch(/with the planned 1\.6: /);
  });

  test('a measured ratio of the arms before is the ratio before, not the one after', () => {
    const found = of(planned(1.6), [{ ...RATIO, value: 1.52, low: 1.51, high: 1.53 }]);
    expect([found.detail.before?.value, found.detail.after?.from]).toEqual([1.52, 'planned']);
    const fitted = of(planned(1.6, { rockers: { soldAs: 1.6, planned: 1.6 } }), [RATIO]);
    expect([fitted.detail.before?.from, fitted.detail.after?.value]).toEqual(['card', 1.6]);
  });

  test('the arm’s stamp tells which arms were read; a stamp without its point tells nothing', () => {
    const arm = (ratioStamp: string) => ({ id: 'a', name: 'A', ratioStamp, otherNumber: '', boxLabel: '' });
    const ratio = { ...RATIO, armId: 'a' };
    expect(of(planned(1.6, { arms: [arm('1.6')] }), [ratio]).detail.after?.from).toBe('measured');
    expect(of(planned(1.6, { arms: [arm('16')] }), [ratio]).detail.after?.from).toBe('planned');
  });

  test('a planned gap that comes out short: the parts are not to be fitted, and the engine as it is is not judged', () => {
    const limits = { 'coil-bind': { value: 0.2 * IN, source: 'the part maker' } };
    const found = of(planned(1.6, { limits }));
    // Exhaust .362 × 1.6 = .5792 leaves .1708; −√(.0261² + 2·.005²) = .0270, +√(.0116² + 2·.005²) = .0136: all of it below .200, by hand.
    expect(found.part.notToRun.map(({ what, sentence }) => [what, sentence])).toEqual([
      [
        'fit',
        'Don’t fit the planned 1.6: room to coil bind on the exhaust valves comes out short, .171 in (.143 to .185), calculated, against .200 in.',
      ],
    ]);
    // Intake .163 to .204 is not told from .200; exhaust to the seal .650 − .5792 = .0708, −√(.0261² + .005²) = .0265.
    expect(found.part.headlines[0]?.sentence).toBe(
      'With the planned 1.6, worst first: room to coil bind on the exhaust valves: short, .171 in (.143 to .185), calculated, against .200 in. Room to coil bind on the intake valves: close, .190 in (.163 to .204), calculated, against .200 in. Retainer to seal on the exhaust valves: close, at worst .044 in (.071 to be expected), calculated, against .050 in. Don’t fit the 1.6.',
    );
  });
});

describe('nothing is counted twice', () => {
  const card = { ...PLAIN.card, intake: { lobeLift: 0.35 * IN, lash: 0.016 * IN } };

  test('read at zero lash, the lash comes off once: .350 × 1.6 − .016 = .544, check values 5', () => {
    expect(inches(of({ ...PLAIN, card }, [RATIO]).figure('net-lift')?.after?.value)).toBeCloseTo(0.544, 12);
    const putBack = { ...RATIO, lashIn: 'put-back', basis: 'calculated' } as const;
    expect(inches(of({ ...PLAIN, card }, [putBack]).figure('net-lift')?.after?.value)).toBeCloseTo(0.544, 12);
  });

  test('read with the lash left in, the net lift is the lift as read: .544 over .350 is 1.5543', () => {
    const left = { ...RATIO, value: 0.544 / 0.35, low: 1.543, high: 1.565, lashIn: 'left-in' } as const;
    const found = of({ ...PLAIN, card }, [left]);
    expect(inches(found.figure('net-lift')?.after?.value)).toBeCloseTo(0.544, 12);
    // 1.900 − .544 − 1.150 = .206, by hand; before: 1.5 × .350 − .016 = .509, so .241.
    expect(inches(found.gap('coil-bind')?.after?.value)).toBeCloseTo(0.206, 12);
    expect(inches(found.gap('coil-bind')?.before?.value)).toBeCloseTo(0.241, 12);
  });

  test('piston to valve, taken at no lash, has no word from it', () => {
    const engine = { ...PLAIN.engine, stroke: 3.48 * IN, rodLength: 5.7 * IN, valveAngle: 23 * DEG };
    const lobe = {
      lobeLift: 0.35 * IN,
      centreline: 106 * DEG,
      durations: [{ atLift: 0, duration: 280 * DEG }],
    };
    const evidence: Evidence = {
      ...PLAIN,
      engine,
      card: { ...PLAIN.card, intake: lobe },
      taken: { intake: { closedGapAtTdc: 0.42 * IN, pistonFloor: 'pocket' }, exhaust: {} },
    };
    expect(of(evidence, [RATIO]).gap('piston-to-valve')?.word).toBe('clear');
    const left = of(evidence, [{ ...RATIO, lashIn: 'left-in' }]).gap('piston-to-valve');
    expect(left?.word).toBeUndefined();
    expect(left?.lacks.map(({ said }) => said)).toEqual([
      'the setting of the lash that was left in, or a reading at zero lash',
    ]);
  });
});

describe('intervals', () => {
  test('a running-spring ratio: gaps are wider by the .040 a spring takes off at most on studs, trade practice 2.5', () => {
    const running = { ...RATIO, value: 1.55, low: 1.539, high: 1.561, spring: 'running' } as const;
    const found = of(PLAIN, [running]).gap('coil-bind');
    // 1.900 − .5425 − 1.150 = .2075; under by √((.350·.011 + .040)² + 2·.005²) = .0444, by hand.
    // Told outward to the thousandth: .163; on a shaft .2075 − √(.02385² + 2·.005²) = .18265, told .182.
    expect(inches(found?.after?.low)).toBeCloseTo(0.163, 12);
    const shaft = of({ ...PLAIN, engine: { ...PLAIN.engine, mounting: 'shaft' } }, [running]).gap(
      'coil-bind',
    );
    expect(inches(shaft?.after?.low)).toBeCloseTo(0.182, 12);
  });

  test('close means what it says: .163 to .216 against .170', () => {
    const running = { ...RATIO, value: 1.55, low: 1.539, high: 1.561, spring: 'running' } as const;
    const limits = { 'coil-bind': { value: 0.17 * IN, source: 'the part maker' } };
    const part = changePart({ ...PLAIN, limits }, [running]);
    const told = part.judgements.find(({ id }) => id === 'gap:coil-bind:1-intake');
    expect(told?.word).toBe('close');
    expect(told?.sentence).toBe(
      'Room to coil bind, 1 intake with the measured 1.550 on the running spring: .208 in (.163 to .216), calculated, against .170 in: close, it can’t be told from the limit. It needs a light-spring ratio, or the gap measured on the engine. The ratio was read on the running spring: up to .040 in of lift is allowed for what bends.',
    );
  });

  test('a load carries the spring’s ±10 %: 130 + 350 × .560 = 326 lbf, common practice', () => {
    const load = of(PLAIN, [RATIO]).figure('open-load')?.after;
    expect((load?.value ?? 0) / LBF).toBeCloseTo(326, 9);
    // √(32.6² + (350·.350·.011)²) = √(32.6² + 1.3475²), by hand.
    expect(((load?.high ?? 0) - (load?.value ?? 0)) / LBF).toBeCloseTo(Math.hypot(32.6, 1.3475), 6);
  });
});

describe('gaps', () => {
  test('one read with the arms before is moved by what the ratio changes: .350 × (1.6 − 1.5) = .035', () => {
    const sheet = [read(1, 'intake', 'coil-bind', 0.225, { arms: 'before' })];
    const gap = of(planned(1.6, { sheet }), [], 'change:1-intake').gap('coil-bind');
    expect(inches(gap?.after?.value)).toBeCloseTo(0.19, 12);
    expect(gap?.because[0]).toMatch(/read with the arms before/);
  });

  test('one that was read is not calculated: the sheet tells it', () => {
    const sheet = [read(1, 'intake', 'coil-bind', 0.225, { armId: 'new' })];
    const arms = [{ id: 'new', name: 'new', ratioStamp: '1.6', otherNumber: '', boxLabel: '' }];
    const { gap, part } = of(planned(1.6, { sheet, arms }), [], 'change:1-intake');
    expect(gap('coil-bind')?.after?.basis).toBe('measured');
    expect(part.judgements.filter(({ id }) => id === 'gap:coil-bind:1-intake')).toEqual([]);
  });

  test('what the ratio still lacks is said instead of a word, unless it is short all the same', () => {
    const doubtful = { ...RATIO, lacks: [toRead('ratio', 'the plunger set parallel to the stem')] };
    const gap = of(PLAIN, [doubtful]).gap('coil-bind');
    expect([gap?.word, gap?.lacks.map(({ said }) => said)]).toEqual([
      undefined,
      ['the plunger set parallel to the stem'],
    ]);
    const limits = { 'coil-bind': { value: 0.3 * IN, source: 'the part maker' } };
    expect(of({ ...PLAIN, limits }, [doubtful]).gap('coil-bind')?.word).toBe('short');
  });

  test('what is not known is named, and what can only be measured says so', () => {
    const { gap } = of(planned(1.6));
    expect(gap('slot-to-stud')?.measure).toBe(true);
    expect(gap('piston-to-valve')?.lacks.map(({ said }) => said)).toContain('closed valve to piston at TDC');
  });

  test('every adjuster is set again: (1 + 1.6) pitches instead of (1 + 1.5), check values 8', () => {
    expect(of(planned(1.6)).detail.adjusters).toMatch(/2\.60 pitches of its thread instead of 2\.50/);
  });
});
