import { describe, expect, it } from 'vitest';
import { DEFAULT_ASSUMPTIONS } from '../../../server/mechanics/explain-readings/assumptions.ts';
import { priorBelief } from '../../../server/mechanics/explain-readings/belief.ts';
import { openCase } from '../../../server/mechanics/explain-readings/case.ts';
import { slipsOf } from '../../../server/mechanics/explain-readings/entry-slip.ts';
import { enumerateHypotheses } from '../../../server/mechanics/explain-readings/hypotheses.ts';
import { mistakesPossible } from '../../../server/mechanics/explain-readings/mistakes.ts';
import {
  emptyPrediction,
  mirrored,
  predict,
  SIZE,
  shapeOf,
} from '../../../server/mechanics/explain-readings/reading-model.ts';
import type { ExplainInput, ExplainReading } from '../../../server/mechanics/explain-readings/types.ts';
import { lobe, valve } from './cases.ts';

const INPUT: ExplainInput = {
  nominals: [1.6],
  cardLobeLift: 0.35,
  otherLobeLift: 0.33,
  readings: [valve(0.56)],
};

function hypothesesOf(input: ExplainInput) {
  const given = openCase(input);
  return { given, hypotheses: enumerateHypotheses(given, mistakesPossible(given)) };
}

function hypothesisWith(key: string, input = INPUT) {
  const { given, hypotheses } = hypothesesOf(input);
  const index = hypotheses.findIndex((h) => h.set.key === key);
  const h = hypotheses[index];
  if (h === undefined) throw new Error(`no hypothesis ${key}`);
  const belief = priorBelief(given, hypotheses);
  return {
    h,
    means: Array.from(belief.means.subarray(index * SIZE, (index + 1) * SIZE)),
    spreads: Array.from({ length: SIZE }, (_, place) =>
      Math.sqrt(belief.covariances[index * SIZE * SIZE + place * (SIZE + 1)] ?? Number.NaN),
    ),
  };
}

/** Ratio, lobe, lash, flex, tilt, first sink, sink per pass, zero. */
const STATE = Float64Array.of(1.6, 0.35, 0.01, 0.02, 0.01, 0.014, 0.003, 0.001);

function predicted(reading: ExplainReading, key = '', state = STATE) {
  const out = emptyPrediction();
  predict(
    hypothesisWith(key).h,
    shapeOf(reading, DEFAULT_ASSUMPTIONS),
    DEFAULT_ASSUMPTIONS,
    state,
    0,
    0.35,
    out,
  );
  return { mean: out.mean, variance: out.variance, gradient: Array.from(out.gradient) };
}

describe('before any reading', () => {
  // Source: design note, section 3, "Priors".
  it('has the means and spreads of the design note', () => {
    const { means, spreads } = hypothesisWith('');
    expect(means).toEqual([1.6, 0.35, 0, 0.017, 0, 0.014, 0.0035, 0]);
    const expected = [
      0.0224,
      0.0025 / Math.sqrt(3),
      0.001,
      0.01,
      0.001,
      0.0135,
      0.0035,
      0.0015 / Math.sqrt(3),
    ];
    spreads.forEach((spread, place) => {
      expect(spread).toBeCloseTo(expected[place] ?? Number.NaN, 12);
    });
  });

  it('has the effects of the design note', () => {
    expect(hypothesisWith('lash-left-in').means[2]).toBe(0.016);
    expect(hypothesisWith('lash-left-in').spreads[2]).toBeCloseTo(0.0065, 12);
    expect(hypothesisWith('lash-left-in', { ...INPUT, lashSetting: 0.02 }).means[2]).toBe(0.02);
    expect(hypothesisWith('plunger-tilted').spreads[4]).toBeCloseTo(0.016, 12);
    expect(hypothesisWith('zero-moved').spreads[7]).toBeCloseTo(0.014, 12);
    expect(hypothesisWith('unlisted-fault').means[7]).toBe(-0.02);
    expect(hypothesisWith('wrong-card-row@card').means[1]).toBe(0.33);
    expect(hypothesisWith('valve-lift-as-lobe@card').means[1]).toBeCloseTo(0.35 / 1.6, 12);
    expect(hypothesisWith('card-not-this-lobe@card').spreads[1]).toBeCloseTo(0.018, 12);
  });

  it('never joins two mistakes of one group, and leaves slips, faults, scatter and units alone', () => {
    const { hypotheses } = hypothesesOf({ ...INPUT, readings: [valve(5.6)] });
    for (const { set } of hypotheses) {
      const groups = set.mistakes.map(({ group }) => group);
      if (groups.length < 2) continue;
      expect(groups).not.toContain(undefined);
      expect(new Set(groups).size).toBe(2);
    }
  });

  it('leaves out the rows of the card when they are alike', () => {
    const { hypotheses } = hypothesesOf({ ...INPUT, otherLobeLift: 0.3475 });
    expect(hypotheses.some(({ set }) => set.key.includes('wrong'))).toBe(false);
  });
});

describe('a predicted reading', () => {
  // By hand from the design note's formula: (1 + .01)(1.6 x .35 - .01 - .03 x .02) + .001.
  it('at full lift, light and solid', () => {
    expect(predicted(valve(0)).mean).toBeCloseTo(1.01 * 0.5494 + 0.001, 12);
  });

  it('under the running spring with a hydraulic lifter, third pass', () => {
    const reading = valve(0, { spring: 'running', lifter: 'hydraulic', pass: 3 });
    expect(predicted(reading).mean).toBeCloseTo(
      1.01 * (0.56 - 0.01 - 0.02 - (0.014 + 2 * 0.003)) + 0.001,
      12,
    );
  });

  it('with the flags', () => {
    expect(predicted(valve(0, { lashSet: true })).mean).toBeCloseTo(1.01 * 0.5594 + 0.001, 12);
    expect(predicted(valve(0, { aligned: true })).mean).toBeCloseTo(0.5494 + 0.001, 12);
    expect(predicted(valve(0), 'turn-too-few').mean).toBeCloseTo(1.01 * 0.5494 + 0.001 - 0.1, 12);
    expect(predicted(valve(0, { counted: true }), 'turn-too-few').mean).toBeCloseTo(
      1.01 * 0.5494 + 0.001,
      12,
    );
    expect(predicted(valve(0, { perTurn: 1 / 25.4 }), 'turn-too-many').mean).toBeCloseTo(
      1.01 * 0.5494 + 0.001 + 1 / 25.4,
      12,
    );
  });

  it('at a station: flex in part, no zero of an unlisted fault, a wider variance', () => {
    const reading = valve(0, { spring: 'running', atLobeLift: 0.2 });
    const flex = 0.02 * (0.35 + (0.65 * 0.2) / 0.35);
    const without = 1.01 * (0.32 - 0.01 - flex);
    expect(predicted(reading).mean).toBeCloseTo(without + 0.001, 12);
    expect(predicted(reading, 'unlisted-fault').mean).toBeCloseTo(without, 12);
    const dial = 0.0012 ** 2 + (0.0005 ** 2 + 0.0015 ** 2) / 3;
    const own = 0.0012 ** 2 + 0.0005 ** 2 / 3;
    expect(predicted(reading).variance).toBeCloseTo(own + 1.6 ** 2 * dial + (0.05 * 0.2 * 0.15) ** 2, 15);
  });

  it('has the variances of its flags', () => {
    const own = 0.0012 ** 2 + 0.0005 ** 2 / 3;
    expect(predicted(valve(0)).variance).toBeCloseTo(own, 15);
    expect(predicted(valve(0, { lashSet: true })).variance).toBeCloseTo(own + 0.001 ** 2, 15);
    expect(predicted(valve(0, { aligned: true })).variance).toBeCloseTo(own + (0.001 * 0.5494) ** 2, 15);
    const other = predicted(valve(0, { otherValve: true })).variance;
    expect(other).toBeCloseTo(own + 0.001 ** 2 + (2 * (0.0025 * 1.6) ** 2) / 3, 15);
    expect(predicted(lobe(0)).variance).toBeCloseTo(own + 0.0015 ** 2 / 3, 15);
    const caliper = predicted(lobe(0, { method: 'caliper' }));
    expect(caliper.mean).toBeCloseTo(0.96 * 0.35, 12);
    expect(caliper.variance).toBeCloseTo(own + (0.0115 * 0.35) ** 2, 15);
    expect(predicted(valve(0), 'passes-scatter').variance).toBeCloseTo(0.012 ** 2 + 0.0005 ** 2 / 3, 15);
  });

  it('of a lobe, when the other valve was measured, speaks of the card alone', () => {
    const { mean, gradient } = predicted(lobe(0), 'wrong-valve');
    expect(mean).toBe(0.35);
    expect(gradient).toEqual(new Array(SIZE).fill(0));
  });

  it.each([
    ['full lift', valve(0, { spring: 'running', lifter: 'hydraulic', pass: 3 })],
    ['aligned, lash out', valve(0, { aligned: true, lashSet: true })],
    ['lobe by caliper', lobe(0, { method: 'caliper' })],
  ] as const)('has the gradient of its mean: %s', (_, reading) => {
    const { gradient } = predicted(reading);
    gradient.forEach((slope, place) => {
      const step = 1e-6;
      const up = Float64Array.from(STATE, (value, at) => (at === place ? value + step : value));
      const down = Float64Array.from(STATE, (value, at) => (at === place ? value - step : value));
      const slopeThere = (predicted(reading, '', up).mean - predicted(reading, '', down).mean) / (2 * step);
      expect(slope).toBeCloseTo(slopeThere, 7);
    });
  });
});

describe('a hand read backwards', () => {
  // Trade practice: 5 turns and 18, that is .518, was 5 and 82.
  it.each([
    [0.518, 0.1, 0.582],
    [0.435, 0.1, 0.465],
    [0.3, 0.1, 0.4],
  ])('%f with %f a turn is %f', (shown, perTurn, lift) => {
    expect(mirrored(shown, perTurn)).toBeCloseTo(lift, 12);
  });
});

describe('a slip of the pen', () => {
  it('has twenty ways: nine tenths, nine hundredths, two exchanges', () => {
    const slips = slipsOf(0.482).map((value) => Number(value.toFixed(4)));
    expect(new Set(slips).size).toBe(20);
    expect(slips).toEqual(expect.arrayContaining([0.582, 0.382, 0.492, 0.842, 0.428]));
    expect(slips).not.toContain(0.483);
  });

  it('never leaves the entry as it is, and keeps what is below the thousandths', () => {
    expect(slipsOf(0.557).every((value) => Math.abs(value - 0.557) > 0.001)).toBe(true);
    expect(slipsOf(0.557)).toHaveLength(19);
    expect(slipsOf(0.3515).map((value) => Number(value.toFixed(4)))).toContain(0.5315);
  });
});
