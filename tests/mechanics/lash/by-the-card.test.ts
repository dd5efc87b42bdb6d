import { describe, expect, test } from 'vitest';
import { chooseShims } from '../../../server/mechanics/lash/choose-shims.ts';
import { unusualLash } from '../../../server/mechanics/lash/usual-lash.ts';

const IN = 0.0254;
const MM = 0.001;
type Given = Parameters<typeof unusualLash>[0];
const of = (more: Partial<Given>) =>
  unusualLash({
    low: 0.02 * IN,
    high: 0.02 * IN,
    engine: 'cold',
    lifter: 'solid-roller',
    card: 0.02 * IN,
    ...more,
  });

describe('a card’s lash is for a heat (any cam card: lash hot, or lash cold; no source for the wording)', () => {
  test('hot on the card and set cold is asked, though the figures are the same', () => {
    const asked = of({ cardAt: 'hot' });
    expect(asked?.code).toBe('lash-unusual');
    expect(asked?.size).toContain('.020 in, cold');
    expect(asked?.size).toContain('.020 in, hot');
    expect(asked?.ask).toContain('set cold');
    expect(asked?.testAtBench).toContain('again hot');
    expect(of({ cardAt: 'cold', engine: 'hot' })?.ask).toContain('set hot');
  });

  test('the same heat, one not said on either side, or no card: not asked', () => {
    expect(of({ cardAt: 'cold' })).toBeUndefined();
    expect(of({ cardAt: 'hot', engine: 'hot' })).toBeUndefined();
    expect(of({ cardAt: 'hot', engine: 'not-said' })).toBeUndefined();
    expect(of({})).toBeUndefined();
    expect(of({ card: undefined, cardAt: 'hot' })).toBeUndefined();
  });
});

describe('shims: what nobody can read moves nothing', () => {
  const choose = (valves: readonly (readonly [fitted: number, found: number])[], stock: readonly number[]) =>
    chooseShims(
      valves.map(([fitted, found]) => ({ fitted: fitted * MM, found: found * MM, wanted: 0.2 * MM })),
      stock.map((each) => each * MM),
      0.02 * MM,
    ).map((each) => each?.from);

  test('a lash .030 too wide is not mended by a shim that takes off 1.5 µm, and is by one that takes off .010', () => {
    expect(choose([[2.7, 0.23]], [2.7015])).toEqual(['own']);
    expect(choose([[2.7, 0.23]], [2.71])).toEqual(['stock']);
  });

  test('its own stays, though the shim that another gives up is like it', () => {
    // The first has 2.60 and wants 2.50, which is in stock; the second has 2.60 and wants it.
    expect(
      choose(
        [
          [2.6, 0.1],
          [2.6, 0.2],
        ],
        [2.5],
      ),
    ).toEqual(['stock', 'own']);
  });
});
