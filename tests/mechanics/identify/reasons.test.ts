import { describe, expect, it } from 'vitest';
import { reasonsFor } from '../../../server/mechanics/identify/compare.ts';
import { identify, rank } from '../../../server/mechanics/identify/identify.ts';
import { FEATURE_KINDS, type PartKind, SIZE_KINDS } from '../../../server/mechanics/identify/kinds.ts';
import { IDENTIFICATION_MODEL } from '../../../server/mechanics/identify/model.ts';
import type { Family, PartReadings } from '../../../server/mechanics/identify/types.ts';
import { DEMO_FAMILIES } from './demo-families.ts';

const FAMILY: Family = {
  id: 'one',
  weight: 1,
  sizes: { 'hole-across-trunnion': 0.4375 },
  features: { rings: 'visible' },
};
const reasons = (readings: PartReadings) => reasonsFor(IDENTIFICATION_MODEL, FAMILY, readings);

describe('reasons for and against a family', () => {
  it('a size says how far it is off and how well it was read; a guess is called one', () => {
    const [caliper, guess] = reasons({
      sizes: { 'hole-across-trunnion': [{ value: 0.4355 }, { value: 0.44, tool: 'guess' }] },
      features: {},
    });
    expect(caliper).toEqual({
      kind: 'hole-across-trunnion',
      word: 'agrees',
      reading: 0.4355,
      madeFor: 0.4375,
      difference: 0.4355 - 0.4375,
      within: 0.002,
    });
    expect(guess).toMatchObject({ word: 'cannot-tell', within: 0.06, guess: true });
  });

  it('a size the catalogue does not have is not known, nor is what it does not say of the look', () => {
    const told = reasons({
      sizes: { 'roller-diameter': [{ value: 0.5, within: 0.004 }] },
      features: { tip: ['roller'], rings: ['visible', 'none'] },
    });
    expect(told).toEqual([
      { kind: 'roller-diameter', word: 'not-known', reading: 0.5, within: 0.004 },
      { kind: 'rings', word: 'agrees', reading: 'visible', madeFor: 'visible' },
      { kind: 'rings', word: 'differs', reading: 'none', madeFor: 'visible' },
      { kind: 'tip', word: 'not-known', reading: 'roller' },
    ]);
  });

  it('nothing read, no reasons; one reading is never apart from itself', () => {
    expect(reasons({ sizes: {}, features: {} })).toEqual([]);
    expect(rank([FAMILY], { sizes: {}, features: {} }).apart).toEqual([]);
    const one = { sizes: { 'hole-across-trunnion': [{ value: 0.4355 }] }, features: {} };
    expect(rank([FAMILY], one).apart).toEqual([]);
  });

  it('readings by coarse tools may lie further apart than two by caliper', () => {
    const two = (tool: 'caliper' | 'rule') =>
      rank([FAMILY], {
        sizes: {
          'width-across-trunnion': [
            { value: 1.2, tool },
            { value: 1.215, tool },
          ],
        },
        features: {},
      }).apart;
    expect(two('caliper')).toHaveLength(1);
    expect(two('rule')).toEqual([]);
  });
});

describe('what to measure next', () => {
  const ease = (kind: PartKind) =>
    ({ ...IDENTIFICATION_MODEL.sizes, ...IDENTIFICATION_MODEL.features })[kind].ease;
  const RINGS: PartReadings = { sizes: {}, features: { rings: ['visible'] } };
  const HOLE: PartReadings = {
    sizes: { 'hole-across-trunnion': [{ value: 0.4355 }] },
    features: { rings: ['visible'], mount: ['stud'] },
  };

  it.each([
    ['nothing read', { sizes: {}, features: {} }],
    ['rings seen', RINGS],
    ['a hole and its rings', HOLE],
    ['nearly all', { ...HOLE, sizes: { ...HOLE.sizes, 'width-across-trunnion': [{ value: 1.6 }] } }],
  ])('%s: the most bits first; of those within .05 of the most, what is least trouble', (_, readings) => {
    const { offers } = identify(DEMO_FAMILIES, readings);
    const most = Math.max(...offers.map(({ bits }) => bits));
    const near = offers.filter(({ bits }) => most - bits <= 0.05);
    const others = offers.filter(({ bits }) => most - bits > 0.05);
    const inOrder = (list: typeof offers, key: (offer: (typeof offers)[number]) => number) =>
      list.slice(1).every((offer, index) => {
        const before = list[index];
        return before === undefined || key(before) >= key(offer);
      });
    expect(offers.slice(0, near.length).map(({ kind }) => kind)).toEqual(near.map(({ kind }) => kind));
    expect(inOrder(near, ({ kind }) => -ease(kind))).toBe(true);
    expect(inOrder(others, ({ bits }) => bits)).toBe(true);
    for (const kind of new Set(near.map((offer) => ease(offer.kind)))) {
      const alike = near.filter((offer) => ease(offer.kind) === kind);
      expect(inOrder(alike, ({ bits }) => bits)).toBe(true);
    }
  });

  it('an easy one goes before one that tells hardly more', () => {
    // Two families whose hole and width tell them apart as well as each other; the hole is less trouble.
    const family = (id: string, hole: number, arm: number): Family => ({
      id,
      weight: 1,
      sizes: { 'hole-across-trunnion': hole, 'pivot-to-cup': arm },
      features: {},
    });
    const { offers } = identify([family('a', 0.3125, 1), family('b', 0.5, 1.4)], {
      sizes: {},
      features: {},
    });
    expect(offers[0]?.kind).toBe('hole-across-trunnion');
    const cup = offers.find(({ kind }) => kind === 'pivot-to-cup');
    expect(cup?.bits).toBeGreaterThan(offers[0]?.bits ?? 2);
    expect((cup?.bits ?? 2) - 0.05).toBeLessThan(offers[0]?.bits ?? 0);
  });

  it('what was seen or measured is not asked again; a guess is', () => {
    const kinds = (readings: PartReadings) =>
      identify(DEMO_FAMILIES, readings).offers.map(({ kind }) => kind);
    expect(kinds({ sizes: {}, features: {} }).toSorted()).toEqual(
      [...SIZE_KINDS, ...FEATURE_KINDS].toSorted(),
    );
    expect(kinds(RINGS)).not.toContain('rings');
    expect(kinds(RINGS)).toHaveLength(SIZE_KINDS.length + FEATURE_KINDS.length - 1);
    expect(kinds(HOLE)).not.toContain('hole-across-trunnion');
    expect(kinds(HOLE)).not.toContain('mount');
    const guessed: PartReadings = {
      sizes: { 'hole-across-trunnion': [{ value: 0.44, tool: 'guess' }] },
      features: {},
    };
    expect(kinds(guessed)).toContain('hole-across-trunnion');
  });

  it('a look that tells two families apart is worth what its misreadings leave of one bit', () => {
    const family = (id: string, rings: string): Family => ({ id, weight: 1, sizes: {}, features: { rings } });
    const { offers } = identify([family('a', 'visible'), family('b', 'none')], { sizes: {}, features: {} });
    const rings = offers.find(({ kind }) => kind === 'rings');
    const tip = offers.find(({ kind }) => kind === 'tip');
    expect(rings?.bits).toBeGreaterThan(0.3);
    expect(tip?.bits).toBeCloseTo(0, 9);
    expect(rings?.rightFirst).toBeGreaterThan(tip?.rightFirst ?? 1);
    expect(rings?.rightFirst).toBeLessThanOrEqual(1);
  });
});
