import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wordFor } from '../../../server/mechanics/identify/compare.ts';
import { identify } from '../../../server/mechanics/identify/identify.ts';
import { FEATURE_KINDS, SIZE_KINDS } from '../../../server/mechanics/identify/kinds.ts';
import { IDENTIFICATION_MODEL } from '../../../server/mechanics/identify/model.ts';
import type { PartReadings } from '../../../server/mechanics/identify/types.ts';
import { PART_TOOLS } from '../../../shared/schemas/part-words.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import { DEMO_FAMILIES } from './demo-families.ts';

/** Common practice, no published source: the bands of holes, rollers and widths as bench people use them. */
const HOLE = IDENTIFICATION_MODEL.sizes['hole-across-trunnion'];
const ROLLER = IDENTIFICATION_MODEL.sizes['roller-diameter'];
const WIDTH = IDENTIFICATION_MODEL.sizes['width-across-trunnion'];

describe('words for one reading', () => {
  it.each([
    [0.3125, 0.3085, 0.3165, 0.3045, 0.3245],
    [0.315, 0.311, 0.319, 0.307, 0.327],
    [0.375, 0.371, 0.379, 0.367, 0.387],
    [0.4375, 0.4335, 0.4415, 0.4295, 0.4495],
  ])('hole made for %s (common practice, no published source)', (nominal, from, to, low, high) => {
    for (const reading of [from, nominal, to]) expect(wordFor(HOLE, nominal, reading)).toBe('agrees');
    for (const reading of [from - 0.0002, to + 0.0002, low, high])
      expect(wordFor(HOLE, nominal, reading)).toBe('cannot-tell');
    for (const reading of [low - 0.0002, high + 0.0002])
      expect(wordFor(HOLE, nominal, reading)).toBe('differs');
  });

  it('a roller reading .595 is a .600 roller; a width within .020, and within .050', () => {
    expect(wordFor(ROLLER, 0.6, 0.595)).toBe('agrees');
    expect(wordFor(ROLLER, 0.6, 0.592)).toBe('agrees');
    expect(wordFor(ROLLER, 0.6, 0.6022)).not.toBe('agrees');
    expect(wordFor(WIDTH, 1.6, 1.58)).toBe('agrees');
    expect(wordFor(WIDTH, 1.6, 1.55)).toBe('cannot-tell');
    expect(wordFor(WIDTH, 1.6, 1.549)).toBe('differs');
  });
});

const hole = (reading: number): PartReadings => ({
  sizes: { 'hole-across-trunnion': [{ value: reading }] },
  features: {},
});

describe('a hole alone', () => {
  it('.4355 is a 7/16 hole read the usual way, not a 3/8 one', () => {
    const [first] = identify(DEMO_FAMILIES, hole(0.4355)).candidates;
    expect(first?.reasons[0]).toMatchObject({ word: 'agrees', madeFor: 0.4375 });
  });

  it('5/16 and 8 mm are both kept: the hole cannot separate them', () => {
    const answer = identify(DEMO_FAMILIES, hole(0.3135));
    const at = (nominal: number) =>
      answer.candidates
        .filter(
          (each) => DEMO_FAMILIES.find(({ id }) => id === each.id)?.sizes['hole-across-trunnion'] === nominal,
        )
        .reduce((sum, each) => sum + each.probability, 0);
    expect(at(0.3125)).toBeGreaterThan(0.1);
    expect(at(0.315)).toBeGreaterThan(0.1);
  });

  it.each([0.25, 0.3, 0.345, 0.3665, 0.3875, 0.41, 0.429, 0.45, 0.9])(
    'outside every band (%s) none of these stands first',
    (reading) => {
      const answer = identify(DEMO_FAMILIES, hole(reading));
      expect(answer.noneOfThese).toBeGreaterThan(answer.candidates[0]?.probability ?? 0);
      expect(answer.noneOfThese).toBeGreaterThan(0.5);
    },
  );
});

describe('whatever is read', () => {
  const sizes = fc.record(
    Object.fromEntries(
      SIZE_KINDS.map((kind) => {
        const { least, most } = IDENTIFICATION_MODEL.sizes[kind].allowed;
        return [
          kind,
          fc.array(
            fc.record({
              value: fc.double({ min: least, max: most, noNaN: true }),
              tool: fc.constantFrom(...keysOf(PART_TOOLS)),
            }),
            { maxLength: 3 },
          ),
        ];
      }),
    ),
  );
  const features = fc.record(
    Object.fromEntries(
      FEATURE_KINDS.map((kind) => [
        kind,
        fc.array(fc.constantFrom(...IDENTIFICATION_MODEL.features[kind].unknown.map(({ word }) => word)), {
          maxLength: 2,
        }),
      ]),
    ),
  );

  it('probabilities sum to one, every candidate is listed, offers are finite and not negative', () => {
    const holds = () =>
      fc.assert(
        fc.property(sizes, features, (read, seen) => {
          const answer = identify(DEMO_FAMILIES.slice(0, 20), { sizes: read, features: seen });
          const sum = answer.candidates.reduce((total, each) => total + each.probability, answer.noneOfThese);
          expect(sum).toBeCloseTo(1, 9);
          expect(answer.candidates).toHaveLength(20);
          for (const offer of answer.offers) {
            expect(offer.bits).toBeGreaterThanOrEqual(0);
            expect(Number.isFinite(offer.rightFirst)).toBe(true);
          }
        }),
        { numRuns: 60 },
      );
    expect(holds).not.toThrow();
  });

  it('an empty catalogue leaves none of these alone', () => {
    expect(identify([], hole(0.4355))).toMatchObject({ candidates: [], noneOfThese: 1 });
  });

  it('marks play no part: there is nowhere to put one', () => {
    expect([...SIZE_KINDS, ...FEATURE_KINDS].some((kind) => /stamp|lot|label|mark|ratio/.test(kind))).toBe(
      false,
    );
  });
});
