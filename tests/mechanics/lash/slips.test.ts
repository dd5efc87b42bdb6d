import { describe, expect, test } from 'vitest';
import { lashSlips, unlikelyLash } from '../../../server/mechanics/lash/lash-slips.ts';

/*
 * What a lash may have been meant as. A lash is tuned by .004 in (trade press) and read to .002; a usual one is .002 to
 * .040 in, and the thinnest feeler 0.03 mm: common practice, no published source. Digits are swapped here by hand.
 */

const IN = 0.0254;
const MM = 0.001;

const slips = (lash: number, expected?: number, typedIn: 'in' | 'mm' = 'in'): number[] =>
  lashSlips(lash * IN, typedIn, expected === undefined ? undefined : expected * IN).map(
    ({ value }) => Math.round((value / IN) * 1e5) / 1e5,
  );

const thousandths = (from: number, to: number): number[] =>
  Array.from({ length: to - from + 1 }, (_, at) => from + at);

describe('two digits the other way round, in a lash that is usual by itself', () => {
  test.each([
    ['.012 for .021', 0.012, 0.021, [0.021]],
    ['.021 for .012', 0.021, 0.012, [0.012]],
    ['.002 from what is expected', 0.012, 0.019, [0.021]],
    ['.002 from it on the other side', 0.012, 0.023, [0.021]],
    ['a little more than .002 from it', 0.012, 0.0189, []],
    ['the same on the other side', 0.012, 0.0231, []],
    ['digits alike have no other way round', 0.022, 0.03, []],
    ['a figure between two thousandths has no two digits to swap', 0.0125, 0.021, []],
  ])('%s', (_, lash, expected, wanted) => {
    expect(slips(lash, expected)).toEqual(wanted);
  });

  test('every pair of two digits: the other way round is found where it is what is expected', () => {
    const usual = thousandths(10, 39);
    for (const lash of usual) {
      const other = (lash % 10) * 10 + Math.floor(lash / 10);
      if (other === lash || other < 10 || other > 39) continue;
      expect(slips(lash / 1000, other / 1000), `${lash}`).toEqual([other / 1000]);
    }
  });

  test('within .004 of what is expected a lash is tuned, and nothing is asked', () => {
    for (const lash of thousandths(6, 36))
      for (const off of [-4, -3, -1, 0, 1, 3, 4])
        expect(slips(lash / 1000, (lash + off) / 1000), `${lash} ${off}`).toEqual([]);
  });

  test('with nothing to set it against nothing is asked, nor of millimetres, which are not told in thousandths', () => {
    expect(slips(0.012)).toEqual([]);
    expect(slips(0.012, 0.021, 'mm')).toEqual([]);
  });
});

describe('a dot one place off, or millimetres for inches', () => {
  test.each([
    ['ten times', 0.025, 0.0025, [0.0025]],
    ['a tenth', 0.0025, 0.025, [0.025]],
    ['.250 in was 0.25 mm, .0098 in, or .025', 0.25, 0.01, [0.00984, 0.025]],
    ['.250 in where .024 is expected: that first', 0.25, 0.024, [0.025, 0.00984]],
  ])('%s', (_, lash, expected, wanted) => {
    expect(slips(lash, expected)).toEqual(wanted);
  });

  test('.062 is wide for a lash: .026 is asked, nearest to an ordinary .016 first, and two at the most', () => {
    // A tenth is .0062, .0098 off .016; .026 is .010 off.
    expect(slips(0.062)).toEqual([0.0062, 0.026]);
  });
});

describe('a lash that hardly can be', () => {
  test.each([
    ['none at all is another thing', 0, undefined],
    ['thinner than the thinnest feeler', 0.0299 * MM, 'tight'],
    ['as thin as it', 0.03 * MM, undefined],
    ['as much as is usual', 0.04 * IN, undefined],
    ['more', 0.0401 * IN, 'wide'],
  ])('%s', (_, lash, wanted) => {
    expect(unlikelyLash(lash)).toBe(wanted);
  });
});
