import { describe, expect, it } from 'vitest';
import { wordFor } from '../../../server/mechanics/identify/compare.ts';
import { halfWidthOf, howRead } from '../../../server/mechanics/identify/how-read.ts';
import { identify, rank } from '../../../server/mechanics/identify/identify.ts';
import { sizeLikelihood } from '../../../server/mechanics/identify/likelihood.ts';
import { IDENTIFICATION_MODEL } from '../../../server/mechanics/identify/model.ts';
import { slipsOf } from '../../../server/mechanics/identify/slips.ts';
import { errorsBy } from '../../../server/mechanics/identify/tools.ts';
import type { PartReadings, ReadSize } from '../../../server/mechanics/identify/types.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { DEMO_FAMILIES } from './demo-families.ts';

/* Half-widths of the tools: common practice, no published source. Their spread: JCGM 100:2008, 4.3.7, by hand. */

const ROLLER = IDENTIFICATION_MODEL.sizes['roller-diameter'];
const HOLE = IDENTIFICATION_MODEL.sizes['hole-across-trunnion'];
const gauss = (x: number, s: number) => Math.exp((-x * x) / (2 * s * s)) / (s * Math.sqrt(2 * Math.PI));

describe('how far off a reading may be', () => {
  it('by its tool, as typed, or as a share of a pitch', () => {
    const roller = { kind: 'roller-diameter', size: 0.496 * IN };
    expect(halfWidthOf(roller) / IN).toBeCloseTo(0.002, 9);
    expect(halfWidthOf({ ...roller, tool: 'micrometer' }) / IN).toBeCloseTo(0.0005, 9);
    expect(halfWidthOf({ ...roller, tool: 'rule', typedWithin: 0.01 * IN }) / IN).toBeCloseTo(0.01, 9);
    // One in a hundred of .050 in; counted over a length it is the caliper's .002.
    const pitch = { kind: 'stud-pitch', size: 0.05 * IN };
    expect(halfWidthOf(pitch) / IN).toBeCloseTo(0.0005, 9);
    expect(halfWidthOf({ ...pitch, size: 0.5 * IN, count: 10 }) / IN).toBeCloseTo(0.002, 9);
  });

  it('is said with its tool, and a guess is called one', () => {
    const roller = { kind: 'roller-diameter', size: 0.5 * IN };
    expect(howRead({ ...roller, tool: 'rule' })).toBe('by rule, ± .016 in');
    expect(howRead({ ...roller, tool: 'guess' })).toBe('a guess, ± .060 in');
    expect(howRead(roller)).toBe('tool not said, ± .002 in as by caliper');
  });

  it('a rule spreads as its half-width does: √(.0016² − (.002/√3)² + (.016/√3)²) = .0093', () => {
    const [ordinary] = errorsBy(ROLLER, 'roller-diameter', { value: 0.5, tool: 'rule' });
    expect(ordinary?.spread).toBeCloseTo(0.009304, 5);
    expect(ordinary?.bias).toBe(-0.004);
  });

  it('no inside jaws, no bias of theirs; and a finer tool leaves half the spread to the part', () => {
    const [ordinary] = errorsBy(HOLE, 'hole-across-trunnion', { value: 0.4375, tool: 'micrometer' });
    expect(ordinary?.bias).toBeCloseTo(0, 12);
    // √((.0012/2)² + (.0005/√3)²)
    expect(ordinary?.spread).toBeCloseTo(0.000666, 6);
    expect(errorsBy(HOLE, 'hole-across-trunnion', { value: 0.4355 })).toBe(HOLE.errors);
  });
});

describe('readings by two tools', () => {
  it('a caliper and a rule: their errors integrated by numbers, each by itself', () => {
    const reads: readonly ReadSize[] = [{ value: 0.496 }, { value: 0.506, tool: 'rule' }];
    const curve = sizeLikelihood(ROLLER, 'roller-diameter', reads);
    const alone = (read: ReadSize, nominal: number) => {
      let sum = 0;
      const step = 0.00005;
      for (let e = -0.15; e <= 0.15; e += step) {
        const prior = errorsBy(ROLLER, 'roller-diameter', read).reduce(
          (total, line) => total + line.share * gauss(e - line.bias, line.spread),
          0,
        );
        sum += step * prior * gauss(read.value - nominal - e, ROLLER.repeat);
      }
      return sum;
    };
    const byNumbers = (nominal: number) => reads.reduce((product, read) => product * alone(read, nominal), 1);
    for (const other of [0.48, 0.49, 0.505, 0.51])
      expect(Math.abs(curve(other) / curve(0.5) / (byNumbers(other) / byNumbers(0.5)) - 1)).toBeLessThan(
        1e-3,
      );
  });

  it('a size that is not known: the same over every size it may have, by numbers', () => {
    const reads: readonly ReadSize[] = [{ value: 0.496 }, { value: 0.506, tool: 'rule' }];
    const curve = sizeLikelihood(ROLLER, 'roller-diameter', reads);
    const { nominals, elsewhere } = ROLLER.unknown;
    let spread = 0;
    const step = 0.0001;
    for (let size = 0.2; size <= 0.8; size += step)
      spread += step * gauss(size - elsewhere.mean, elsewhere.spread) * curve(size);
    const expected =
      nominals.reduce((sum, { at, share }) => sum + share * curve(at), 0) + elsewhere.share * spread;
    expect(Math.abs(curve(undefined) / expected - 1)).toBeLessThan(1e-6);
  });

  it('a guess beside a caliper hardly moves what the caliper says; two guesses tell little', () => {
    const of = (...reads: ReadSize[]): PartReadings => ({
      sizes: { 'roller-diameter': reads },
      features: {},
    });
    const chance = (readings: PartReadings) => {
      const { candidates } = rank(DEMO_FAMILIES, readings);
      return candidates
        .filter(
          ({ id }) => DEMO_FAMILIES.find((family) => family.id === id)?.sizes['roller-diameter'] === 0.5,
        )
        .reduce((sum, { probability }) => sum + probability, 0);
    };
    const caliper = chance(of({ value: 0.496 }));
    expect(Math.abs(chance(of({ value: 0.496 }, { value: 0.52, tool: 'guess' })) - caliper)).toBeLessThan(
      0.02,
    );
    expect(chance(of({ value: 0.496, tool: 'guess' }))).toBeLessThan(caliper - 0.2);
  });
});

describe('what a coarse reading leaves', () => {
  it('a guess agrees with nothing, and a rule not with a hole', () => {
    expect(wordFor(HOLE, 0.4375, 0.4355)).toBe('agrees');
    expect(wordFor(HOLE, 0.4375, 0.4355, 0.014)).toBe('cannot-tell');
    expect(wordFor(HOLE, 0.4375, 0.4, 0.014)).toBe('differs');
    const width = IDENTIFICATION_MODEL.sizes['width-across-trunnion'];
    expect(wordFor(width, 1.6, 1.605, 0.014)).toBe('agrees');
    expect(wordFor(width, 1.6, 1.6, 0.058)).toBe('cannot-tell');
  });

  it('it is offered to be measured again; what a caliper read is not', () => {
    const offered = (tool: ReadSize['tool']) =>
      identify(DEMO_FAMILIES, {
        sizes: { 'roller-diameter': [{ value: 0.5, ...(tool === undefined ? {} : { tool }) }] },
        features: {},
      }).offers.map(({ kind }) => kind);
    expect(offered('guess')).toContain('roller-diameter');
    expect(offered('caliper')).not.toContain('roller-diameter');
  });
});

describe('slips', () => {
  it.each([
    [
      'hole-across-trunnion',
      4.355,
      'in',
      [
        ['dot-left', 0.4355],
        ['millimetres', 0.1715],
      ],
    ],
    ['hole-across-trunnion', 11.06, 'in', [['millimetres', 0.4354]]],
    ['hole-across-trunnion', 0.0436, 'in', [['dot-right', 0.436]]],
    [
      'pivot-to-tip',
      36.9,
      'in',
      [
        ['dot-left', 3.69],
        ['millimetres', 1.4528],
      ],
    ],
    ['pivot-to-tip', 1453, 'in', [['thousandths', 1.453]]],
    [
      'pivot-to-tip',
      1.453 / 25.4,
      'mm',
      [
        ['dot-right', 0.572],
        ['inches', 1.453],
      ],
    ],
    ['pivot-to-tip', 1.453, 'in', []],
  ] as const)('%s of %s typed as %s', (kind, inches, unit, expected) => {
    const found = slipsOf(kind, inches, unit).map(({ code, inches: meant }) => [
      code,
      Number(meant.toFixed(4)),
    ]);
    expect(found).toEqual(expected);
  });
});
