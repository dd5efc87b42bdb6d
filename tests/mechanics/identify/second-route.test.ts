import { describe, expect, it } from 'vitest';
import model from '../../../seeds/identification-model.json' with { type: 'json' };
import { bitsOfReading } from '../../../server/mechanics/explain-readings/information.ts';
import { accountsOf } from '../../../server/mechanics/identify/accounts.ts';
import { beliefs } from '../../../server/mechanics/identify/beliefs.ts';
import { identify, rank } from '../../../server/mechanics/identify/identify.ts';
import { type PartKind, SIZE_KINDS } from '../../../server/mechanics/identify/kinds.ts';
import { sizeLikelihood } from '../../../server/mechanics/identify/likelihood.ts';
import { IDENTIFICATION_MODEL } from '../../../server/mechanics/identify/model.ts';
import { linesOf } from '../../../server/mechanics/identify/spread-of-readings.ts';
import type { Family, PartReadings } from '../../../server/mechanics/identify/types.ts';
import { chanceFrom } from '../explain-readings/random.ts';
import { DEMO_FAMILIES } from './demo-families.ts';
import { drawnFamily, partFromElsewhere, readingsOf } from './simulated-part.ts';

const family = (id: string, hole: number, width: number): Family => ({
  id,
  weight: 1,
  sizes: { 'hole-across-trunnion': hole, 'width-across-trunnion': width },
  features: { rings: width > 1.4 ? 'visible' : 'none' },
});
const THREE = [family('a', 0.375, 1.2), family('b', 0.375, 1.25), family('c', 0.4375, 1.2)];

describe('probabilities by a second route', () => {
  it('rejection: parts drawn at random whose readings fall beside these ones', () => {
    const readings: PartReadings = {
      sizes: { 'hole-across-trunnion': [{ value: 0.3735 }], 'width-across-trunnion': [{ value: 1.228 }] },
      features: { rings: ['none'] },
    };
    const answer = rank(THREE, readings);
    const chance = chanceFrom(3);
    const hits = new Map<string, number>();
    let all = 0;
    for (let draw = 0; draw < 600_000; draw++) {
      const drawn = drawnFamily(chance, THREE);
      const made = drawn ?? partFromElsewhere(chance, THREE);
      const read = readingsOf(chance, made, ['hole-across-trunnion', 'width-across-trunnion', 'rings']);
      const hole = read.sizes['hole-across-trunnion']?.[0]?.value ?? 0;
      const width = read.sizes['width-across-trunnion']?.[0]?.value ?? 0;
      if (Math.abs(hole - 0.3735) > 0.001 || Math.abs(width - 1.228) > 0.004) continue;
      if (read.features.rings?.[0] !== 'none') continue;
      all += 1;
      const name = drawn?.id ?? 'none';
      hits.set(name, (hits.get(name) ?? 0) + 1);
    }
    expect(all).toBeGreaterThan(1500);
    const expected = [
      ...answer.candidates.map(({ id, probability }) => [id, probability] as const),
      ['none', answer.noneOfThese] as const,
    ];
    for (const [name, p] of expected) {
      const share = (hits.get(name) ?? 0) / all;
      // .012: the box about the readings is not a point.
      expect(Math.abs(share - p), name).toBeLessThan(3.3 * Math.sqrt((p * (1 - p)) / all) + 0.012);
    }
  });

  it('two readings of one place: the common error integrated by numbers', () => {
    const sizes = IDENTIFICATION_MODEL.sizes['roller-diameter'];
    const readings = [0.4955, 0.4967];
    const gauss = (x: number, s: number) => Math.exp((-x * x) / (2 * s * s)) / (s * Math.sqrt(2 * Math.PI));
    const joint = (nominal: number) => {
      let sum = 0;
      const step = 0.00002;
      for (let e = -0.06; e <= 0.06; e += step) {
        const prior = model.sizes['roller-diameter'].errors.reduce(
          (total, line) => total + line.share * gauss(e - line.bias, line.spread),
          0,
        );
        sum += step * prior * readings.reduce((p, r) => p * gauss(r - nominal - e, sizes.repeat), 1);
      }
      return sum;
    };
    const curve = sizeLikelihood(
      sizes,
      'roller-diameter',
      readings.map((value) => ({ value })),
    );
    for (const other of [0.48, 0.49, 0.495, 0.505]) {
      const closed = curve(other) / curve(0.5);
      const byNumbers = joint(other) / joint(0.5);
      expect(Math.abs(closed / byNumbers - 1), `${other}`).toBeLessThan(1e-4);
    }
  });

  it('readings too far apart are kept as two: both sizes stay likely, their mean does not win', () => {
    const narrow = family('narrow', 0.375, 1.2);
    const wide = family('wide', 0.375, 1.6);
    const between = family('between', 0.375, 1.4);
    const answer = identify([narrow, wide, between], {
      sizes: { 'width-across-trunnion': [{ value: 1.2 }, { value: 1.6 }] },
      features: {},
    });
    const p = (id: string) => answer.candidates.find((each) => each.id === id)?.probability ?? 0;
    expect(p('narrow')).toBeCloseTo(p('wide'), 9);
    expect(p('between')).toBeLessThan(0.01);
    expect(answer.apart).toEqual([{ kind: 'width-across-trunnion', readings: [1.2, 1.6], allowed: 0.01 }]);
  });
});

describe('what a measurement is worth, by other routes', () => {
  const readings: PartReadings = {
    sizes: { 'hole-across-trunnion': [{ value: 0.4355 }] },
    features: { rings: ['visible'] },
  };

  it('bits of each size agree with the integral used for lift readings', () => {
    const accounts = accountsOf(IDENTIFICATION_MODEL, DEMO_FAMILIES);
    const p = beliefs(IDENTIFICATION_MODEL, accounts, readings);
    const answer = identify(DEMO_FAMILIES, readings);
    for (const kind of SIZE_KINDS.filter((each) => each !== 'hole-across-trunnion')) {
      const lines = accounts.flatMap((account, index) => {
        const parts = [
          { share: account.same, size: account.made.sizes[kind] },
          { share: 1 - account.same, size: undefined },
        ];
        return parts
          .filter(({ share }) => share > 0)
          .flatMap(({ share, size }) =>
            linesOf(IDENTIFICATION_MODEL.sizes[kind], size, 1).map((line) => ({
              ...line,
              weight: line.weight * share * (p[index] ?? 0),
              of: account.of,
            })),
          );
      });
      const bits = bitsOfReading({
        weights: Float64Array.from(lines, (line) => line.weight),
        means: Float64Array.from(lines, (line) => line.mean),
        spreads: Float64Array.from(lines, (line) => line.spread),
        classOf: Int32Array.from(lines, (line) => line.of),
        classes: DEMO_FAMILIES.length + 1,
      });
      const offered = answer.offers.find((offer) => offer.kind === kind)?.bits ?? 0;
      expect(Math.abs(offered - bits), kind).toBeLessThan(0.005);
    }
  });

  it('bits and the chance of being right, by taking the measurement 1 500 times', () => {
    const start = identify(THREE, readings);
    const chance = chanceFrom(21);
    const entropy = (answer: ReturnType<typeof identify>) =>
      -[...answer.candidates.map(({ probability }) => probability), answer.noneOfThese].reduce(
        (sum, p) => sum + (p > 0 ? p * Math.log2(p) : 0),
        0,
      );
    const before = entropy(start);
    const kind: PartKind = 'width-across-trunnion';
    const lines = sampleable(THREE, readings);
    const gains: number[] = [];
    const firsts: number[] = [];
    for (let draw = 0; draw < 1500; draw++) {
      let left = chance.between(0, 1);
      const line = lines.find((each) => {
        left -= each.weight;
        return left < 0;
      });
      if (line === undefined) continue;
      const read = line.mean + chance.normal(line.spread);
      const after = identify(THREE, { ...readings, sizes: { ...readings.sizes, [kind]: [{ value: read }] } });
      gains.push(before - entropy(after));
      firsts.push(Math.max(after.noneOfThese, ...after.candidates.map(({ probability }) => probability)));
    }
    const mean = (values: number[]) => values.reduce((sum, each) => sum + each, 0) / values.length;
    const error = (values: number[]) =>
      Math.sqrt(mean(values.map((each) => (each - mean(values)) ** 2)) / values.length);
    const offered = start.offers.find((offer) => offer.kind === kind);
    expect(Math.abs((offered?.bits ?? 0) - mean(gains))).toBeLessThan(3.3 * error(gains) + 1e-3);
    expect(Math.abs((offered?.rightFirst ?? 0) - mean(firsts))).toBeLessThan(3.3 * error(firsts) + 1e-3);
  });
});

/** The width as it is expected now, as weighted normals. */
function sampleable(families: readonly Family[], readings: PartReadings) {
  const accounts = accountsOf(IDENTIFICATION_MODEL, families);
  const p = beliefs(IDENTIFICATION_MODEL, accounts, readings);
  return accounts.flatMap((account, index) =>
    [
      { share: account.same, size: account.made.sizes['width-across-trunnion'] },
      { share: 1 - account.same, size: undefined },
    ].flatMap(({ share, size }) =>
      linesOf(IDENTIFICATION_MODEL.sizes['width-across-trunnion'], size, 1).map((line) => ({
        ...line,
        weight: line.weight * share * (p[index] ?? 0),
      })),
    ),
  );
}
