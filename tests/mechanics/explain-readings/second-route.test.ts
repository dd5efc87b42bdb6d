import { describe, expect, it } from 'vitest';
import { openCase } from '../../../server/mechanics/explain-readings/case.ts';
import { enumerateHypotheses } from '../../../server/mechanics/explain-readings/hypotheses.ts';
import { bitsOfQuestion, bitsOfReading } from '../../../server/mechanics/explain-readings/information.ts';
import { mistakesPossible } from '../../../server/mechanics/explain-readings/mistakes.ts';
import { mixturePercentile } from '../../../server/mechanics/explain-readings/mixture.ts';
import { normalCdf } from '../../../server/mechanics/explain-readings/normal.ts';
import type { ExplainInput } from '../../../server/mechanics/explain-readings/types.ts';
import { believe } from '../../../server/mechanics/explain-readings/update.ts';
import { LIST, lobe, valve } from './cases.ts';
import { type Chance, chanceFrom } from './random.ts';

const SQUARE = 64;
const STATE = 8;

const INPUT: ExplainInput = {
  nominals: LIST,
  cardLobeLift: 0.35,
  readings: [valve(0.566), lobe(0.351), valve(0.571, { lashSet: true, pass: 2 })],
};

/** The four accounts that are followed by both routes. */
const ACCOUNTS = [
  { key: '', name: 1.6 },
  { key: '', name: 1.65 },
  { key: 'lash-left-in', name: 1.65 },
  { key: 'plunger-tilted', name: 1.6 },
] as const;

/** Weight of the evidence, mean and spread of the ratio, by the sequential update. */
function bySequence(account: (typeof ACCOUNTS)[number]) {
  const given = openCase(INPUT);
  const hypotheses = enumerateHypotheses(given, mistakesPossible(given));
  const belief = believe(given, hypotheses);
  const i = hypotheses.findIndex((h) => h.set.key === account.key && h.ratioMean === account.name);
  const prior = hypotheses[i]?.logWeight ?? Number.NaN;
  return {
    logEvidence: (belief.logWeights[i] ?? Number.NaN) - prior,
    mean: belief.means[i * STATE] ?? Number.NaN,
    spread: Math.sqrt(belief.covariances[i * SQUARE] ?? Number.NaN),
  };
}

function logNormal(distance: number, variance: number): number {
  return -(Math.log(2 * Math.PI * variance) + distance ** 2 / variance) / 2;
}

/** The likelihood of the three readings at one point drawn from the prior; no linearisation, no update. */
function drawOnce(chance: Chance, account: (typeof ACCOUNTS)[number]) {
  const ratio = account.name * (1 + chance.normal(0.014));
  const lift = 0.35 + chance.normal(0.0025 / Math.sqrt(3));
  const lash = account.key === 'lash-left-in' ? 0.016 + chance.normal(0.0065) : chance.normal(0.001);
  const tilt = chance.normal(account.key === 'plunger-tilted' ? 0.016 : 0.001);
  const flex = 0.017 + chance.normal(0.01);
  const zero = chance.normal(0.0015 / Math.sqrt(3));
  const ofReading = 0.0012 ** 2 + 0.0005 ** 2 / 3;
  const first = (1 + tilt) * (ratio * lift - lash - 0.03 * flex) + zero;
  const last = (1 + tilt) * (ratio * lift - 0.03 * flex) + zero;
  const logLikelihood =
    logNormal(0.566 - first, ofReading) +
    logNormal(0.351 - lift, ofReading + 0.0015 ** 2 / 3) +
    logNormal(0.571 - last, ofReading + 0.001 ** 2);
  return { ratio, likelihood: Math.exp(logLikelihood) };
}

/** The same by Monte Carlo: points from the prior, weighted with their likelihood. */
function byDrawing(account: (typeof ACCOUNTS)[number], draws: number) {
  const chance = chanceFrom(2);
  let sum = 0;
  let ratioSum = 0;
  let squareSum = 0;
  for (let k = 0; k < draws; k++) {
    const { ratio, likelihood } = drawOnce(chance, account);
    sum += likelihood;
    ratioSum += likelihood * ratio;
    squareSum += likelihood * ratio * ratio;
  }
  const mean = ratioSum / sum;
  return { logEvidence: Math.log(sum / draws), mean, spread: Math.sqrt(squareSum / sum - mean * mean) };
}

describe('the sequential update against Monte Carlo over the prior', () => {
  it.each(ACCOUNTS)('agrees for $name $key', (account) => {
    const sequence = bySequence(account);
    const drawn = byDrawing(account, 400_000);
    expect(Math.abs(sequence.logEvidence - drawn.logEvidence)).toBeLessThan(0.05);
    expect(Math.abs(sequence.mean - drawn.mean)).toBeLessThan(0.0005);
    expect(Math.abs(sequence.spread / drawn.spread - 1)).toBeLessThan(0.04);
  });

  it('combines lobe readings as the closed form does (normal prior and likelihood: precisions add)', () => {
    const given = openCase({
      nominals: [1.6],
      cardLobeLift: 0.35,
      readings: [lobe(0.352), lobe(0.3515), lobe(0.352)],
    });
    const belief = believe(given, enumerateHypotheses(given, mistakesPossible(given)));
    const prior = 3 / 0.0025 ** 2;
    const each = 1 / (0.0012 ** 2 + (0.0005 ** 2 + 0.0015 ** 2) / 3);
    const precision = prior + 3 * each;
    expect(belief.means[1]).toBeCloseTo((prior * 0.35 + each * (0.352 + 0.3515 + 0.352)) / precision, 12);
    expect(belief.covariances[9]).toBeCloseTo(1 / precision, 14);
  });
});

describe('normal and mixture', () => {
  it('gives the table values of the normal distribution', () => {
    // NIST/SEMATECH e-Handbook, section 1.3.6.7.1 (cumulative, from memory) and NIST TN 1297 table B.1.
    expect(normalCdf(1)).toBeCloseTo(0.8413447, 6);
    expect(normalCdf(1.959964)).toBeCloseTo(0.975, 6);
    expect(normalCdf(-2.575829)).toBeCloseTo(0.005, 6);
  });

  it('finds percentiles of one normal and of two far apart', () => {
    const one = { weights: Float64Array.of(1), means: Float64Array.of(2), spreads: Float64Array.of(0.5) };
    expect(mixturePercentile(one, 0.975)).toBeCloseTo(2 + 0.5 * 1.959964, 5);
    const two = {
      weights: Float64Array.of(0.25, 0.75),
      means: Float64Array.of(0, 100),
      spreads: Float64Array.of(1, 1),
    };
    // Within the upper part: (.625 - .25) / .75 = .5, the middle of the second normal.
    expect(mixturePercentile(two, 0.625)).toBeCloseTo(100, 5);
  });
});

describe('bits', () => {
  const two = (apart: number) => ({
    weights: Float64Array.of(0.5, 0.5),
    means: Float64Array.of(0, apart),
    spreads: Float64Array.of(1, 1),
    classOf: Int32Array.of(0, 1),
    classes: 2,
  });

  it('is zero for one and the same forecast and one bit for two far apart', () => {
    expect(bitsOfReading(two(0))).toBeCloseTo(0, 9);
    expect(bitsOfReading(two(40))).toBeCloseTo(1, 9);
  });

  it('agrees with the capacity of two equal signals in normal noise', () => {
    // Two inputs at -1 and +1 in unit noise: .4859 bits, the textbook value for BPSK at 0 dB (from memory).
    expect(bitsOfReading(two(2))).toBeCloseTo(0.4859, 3);
  });

  it('gives a noisy question the information of a binary symmetric channel', () => {
    // 1 - H(.1) = .531 bits (Cover and Thomas, Elements of Information Theory, from memory).
    const bits = bitsOfQuestion(Float64Array.of(0.5, 0.5), Float64Array.of(0.9, 0.1), Int32Array.of(0, 1), 2);
    expect(bits).toBeCloseTo(0.531, 3);
  });
});
