import { describe, expect, it } from 'vitest';
import { rank } from '../../../server/mechanics/identify/identify.ts';
import { FEATURE_KINDS, type PartKind, SIZE_KINDS } from '../../../server/mechanics/identify/kinds.ts';
import { chanceFrom } from '../explain-readings/random.ts';
import { DEMO_FAMILIES, lineOf } from './demo-families.ts';
import { drawnFamily, partFromElsewhere, readingsOf } from './simulated-part.ts';

/**
 * Parts drawn from the stated model by a simulator of its own. What the ranking says of itself (the mean of the
 * probability it gives its first candidate) must be what happens (the share of parts whose first candidate is
 * right). 3.3 standard deviations of a share, 1 in 1 000 by chance.
 */
const PARTS = Number(process.env.IDENTIFY_SIMULATED_PARTS ?? 1000);
const NONE = 'none of these';

interface Trial {
  readonly said: number;
  readonly right: boolean;
  readonly none: number;
  readonly isNone: boolean;
}

const SETS: readonly { readonly name: string; readonly kinds: readonly PartKind[] }[] = [
  { name: 'hole, width and rings', kinds: ['hole-across-trunnion', 'width-across-trunnion', 'rings'] },
  {
    name: 'all but the arms',
    kinds: [
      'hole-across-trunnion',
      'width-across-trunnion',
      'roller-diameter',
      'body-width',
      'rings',
      'tip',
      'mount',
    ],
  },
  { name: 'everything', kinds: [...SIZE_KINDS, ...FEATURE_KINDS] },
];

function trial(seed: number, kinds: readonly PartKind[]): Trial {
  const chance = chanceFrom(seed);
  const family = drawnFamily(chance, DEMO_FAMILIES);
  const made = family ?? partFromElsewhere(chance, DEMO_FAMILIES);
  const answer = rank(DEMO_FAMILIES, readingsOf(chance, made, kinds));
  const best = answer.candidates[0];
  const first =
    best !== undefined && best.probability > answer.noneOfThese
      ? { id: best.id, p: best.probability }
      : { id: NONE, p: answer.noneOfThese };
  return {
    said: first.p,
    right: first.id === (family?.id ?? NONE),
    none: answer.noneOfThese,
    isNone: family === undefined,
  };
}

const share = (trials: readonly Trial[], of: (trial: Trial) => number) =>
  trials.reduce((sum, each) => sum + of(each), 0) / trials.length;
const slack = (p: number, n: number) => 3.3 * Math.sqrt((p * (1 - p)) / n) + 1e-3;

describe('calibration over the demo catalogue', () => {
  it('has at least sixty families', () => {
    expect(DEMO_FAMILIES.length).toBeGreaterThanOrEqual(60);
  });

  it.each(SETS)('$name: right first as often as is said, none of these too', ({ name, kinds }) => {
    const trials = Array.from({ length: PARTS }, (_, index) => trial(7000 + index, kinds));
    const said = share(trials, (each) => each.said);
    const right = share(trials, (each) => Number(each.right));
    const none = share(trials, (each) => each.none);
    const isNone = share(trials, (each) => Number(each.isNone));
    if (process.env.IDENTIFY_SIMULATED_PARTS)
      process.stdout.write(`${name}: said ${said.toFixed(3)}, right ${right.toFixed(3)}\n`);
    expect(Math.abs(right - said)).toBeLessThan(slack(said, PARTS));
    expect(Math.abs(none - isNone)).toBeLessThan(slack(isNone, PARTS));
    // Band by band: a probability of 70 % must be right in about seven of ten.
    for (const [low, high] of [
      [0, 0.3],
      [0.3, 0.6],
      [0.6, 0.9],
      [0.9, 1.01],
    ] as const) {
      const band = trials.filter((each) => each.said >= low && each.said < high);
      if (band.length < 30) continue;
      const saidHere = share(band, (each) => each.said);
      const rightHere = share(band, (each) => Number(each.right));
      expect(Math.abs(rightHere - saidHere), `${name}, ${low} to ${high}`).toBeLessThan(
        slack(saidHere, band.length),
      );
    }
  });

  it('the check can fail: readings with an error that the model does not state are found out', () => {
    const kinds: readonly PartKind[] = [...SIZE_KINDS, ...FEATURE_KINDS];
    const trials = Array.from({ length: PARTS }, (_, index) => {
      const chance = chanceFrom(9000 + index);
      const family = drawnFamily(chance, DEMO_FAMILIES);
      const made = family ?? partFromElsewhere(chance, DEMO_FAMILIES);
      const read = readingsOf(chance, made, kinds);
      // The arms read .025 long, as with the caliper on the outer edges.
      const cup = (read.sizes['pivot-to-cup'] ?? []).map(({ value }) => ({ value: value + 0.025 }));
      const answer = rank(DEMO_FAMILIES, { ...read, sizes: { ...read.sizes, 'pivot-to-cup': cup } });
      const best = answer.candidates[0];
      const p = best?.probability ?? 0;
      const first = p > answer.noneOfThese ? best?.id : NONE;
      return {
        said: Math.max(p, answer.noneOfThese),
        right: first === (family?.id ?? NONE),
        none: 0,
        isNone: false,
      };
    });
    const said = share(trials, (each) => each.said);
    const right = share(trials, (each) => Number(each.right));
    expect(said - right).toBeGreaterThan(slack(said, PARTS));
  });
});

describe('parts left out of the catalogue', () => {
  it('a whole line left out: none of these stands first for nearly all of its parts', () => {
    const lines = [...new Set(DEMO_FAMILIES.map(lineOf))];
    let first = 0;
    let tried = 0;
    for (const line of lines) {
      const rest = DEMO_FAMILIES.filter((family) => lineOf(family) !== line);
      DEMO_FAMILIES.filter((family) => lineOf(family) === line).forEach((family, index) => {
        const readings = readingsOf(chanceFrom(500 + index), family, [...SIZE_KINDS, ...FEATURE_KINDS]);
        const answer = rank(rest, readings);
        tried += 1;
        if (answer.noneOfThese > (answer.candidates[0]?.probability ?? 0)) first += 1;
      });
    }
    expect(tried).toBe(DEMO_FAMILIES.length);
    expect(first / tried).toBeGreaterThan(0.9);
  });

  it('the same parts, left in, are found: the catalogue and not the reading decides', () => {
    const found = DEMO_FAMILIES.filter((family, index) => {
      const readings = readingsOf(chanceFrom(500 + index), family, [...SIZE_KINDS, ...FEATURE_KINDS]);
      return rank(DEMO_FAMILIES, readings).candidates[0]?.id === family.id;
    });
    expect(found.length / DEMO_FAMILIES.length).toBeGreaterThan(0.8);
  });
});
