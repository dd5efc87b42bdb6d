import { describe, expect, test } from 'vitest';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { judgeSide } from '../../../server/mechanics/valve-sheet/odd-valves.ts';
import type { SheetValve } from '../../../server/mechanics/valve-sheet/types.ts';
import { expectNear } from '../helpers/near.ts';

type Lifts = Readonly<{ lobe?: number | undefined; lift?: number | undefined }>;

/** Eight intakes alike in inches, but for those named by their cylinder. */
function engine(usual: Lifts, others: Readonly<Record<number, Lifts>> = {}): SheetValve[] {
  return Array.from({ length: 8 }, (_, index): SheetValve => {
    const { lobe, lift } = { ...usual, ...others[index + 1] };
    return {
      cylinder: index + 1,
      valve: 'intake',
      ...(lobe === undefined ? {} : { lobeLift: lobe * IN }),
      ...(lift === undefined ? {} : { valveLift: lift * IN }),
    };
  });
}
const USUAL = { lobe: 0.35, lift: 0.56 };
const odd = (usual: Lifts, fifth: Lifts) => judgeSide('intake', engine(usual, { 5: fifth })).odd;

describe('the cause of an odd valve, by the rule in the docstring', () => {
  test('a lobe .005 down of a 1.6 gives .008: with .002 beyond that, within what repeats give, it is the lobe', () => {
    expect(odd(USUAL, { lobe: 0.345, lift: 0.55 })[0]).toMatchObject({ cause: 'lobe' });
    // .0052 = .002·(1 + 1.6) beyond is the most that repeats give.
    expect(odd(USUAL, { lobe: 0.345, lift: 0.5469 })[0]).toMatchObject({ cause: 'lobe' });
    expect(odd(USUAL, { lobe: 0.345, lift: 0.5467 })[0]).toMatchObject({ cause: 'both' });
  });

  test('a lobe down by its repeat alone is a lobe like the others', () => {
    expect(odd(USUAL, { lobe: 0.348, lift: 0.5515 })[0]).toMatchObject({ cause: 'rocker-or-position' });
    expect(odd(USUAL, { lobe: 0.3479, lift: 0.5515 })[0]).toMatchObject({ cause: 'lobe' });
  });

  test('lobe and rest both within repeats: it can’t be told', () => {
    // .0081 low; the lobe, .0019 down, gives .00304 of it, and the rest of .00506 is within .0052.
    const [found] = odd(USUAL, { lobe: 0.3481, lift: 0.5519 });
    expect(found).toMatchObject({ cause: 'cannot-tell' });
    expect(found?.words).toMatch(/^Valve lift \.008 in low: within what repeats give/);
  });

  test('the ratio of the engine brings the lobe to the valve, not a usual one', () => {
    // .030 down at the lobe is .054 at the valve on a 1.8, and would be .048 on a 1.6.
    expect(odd({ lobe: 0.35, lift: 0.63 }, { lobe: 0.32, lift: 0.576 })[0]).toMatchObject({ cause: 'lobe' });
  });

  test('a lobe that is off is nobody’s fault where its valve reads like the others', () => {
    expect(odd(USUAL, { lobe: 0.34 })).toEqual([]);
  });
});

describe('what is said of it', () => {
  test.each([
    [{ lobe: 0.342, lift: 0.5472 }, /^Valve lift \.013 in low, and the lobe \.008 in low accounts for it/],
    [{ lift: 0.54 }, /^Valve lift \.020 in low on a lobe like the others’/],
    [{ lift: 0.58 }, /^Valve lift \.020 in high on a lobe like the others’/],
    [
      { lobe: 0.345, lift: 0.53 },
      /^Valve lift \.030 in low; the lobe \.005 in low is part of it, but not all/,
    ],
    [{ lobe: undefined, lift: 0.54 }, /^Valve lift \.020 in low: read its lobe first/],
  ])('%j', (fifth, words) => {
    expect(odd(USUAL, fifth)[0]?.words).toMatch(words);
  });
});

describe('valves whose lift nobody read', () => {
  test('a lobe that gives over .008 at the valve of a usual 1.6: the lobe, and no lift is told', () => {
    const [found, ...others] = odd({ lobe: 0.35 }, { lobe: 0.344 });
    expect(others).toEqual([]);
    expect(found).toMatchObject({ cylinder: 5, cause: 'lobe', outlier: false });
    expect(found).not.toHaveProperty('valveOff');
    expect(found?.words).toMatch(/^The lobe \.006 in low accounts for it: cam or lifter/);
    expect(odd({ lobe: 0.35 }, { lobe: 0.3451 })).toEqual([]);
  });

  test('one lobe alone without a lift is odd by itself; a valve with neither is nothing', () => {
    expect(odd(USUAL, { lobe: 0.34, lift: undefined })[0]).toMatchObject({ cause: 'lobe' });
    expect(odd(USUAL, { lobe: undefined, lift: undefined })).toEqual([]);
    expect(odd(USUAL, { lift: undefined })).toEqual([]);
  });
});

describe('the middle of the siblings', () => {
  test('of lobes, of lifts, and of the ratio of those read at both', () => {
    const { medians } = judgeSide(
      'intake',
      engine(USUAL, { 2: { lobe: undefined }, 6: { lift: undefined } }),
    );
    expectNear(medians.lobeLift ?? 0, 0.35 * IN);
    expectNear(medians.valveLift ?? 0, 0.56 * IN);
    expectNear(medians.ratio ?? 0, 1.6);
  });

  test('none of what was not read', () => {
    expect(judgeSide('intake', engine({})).medians).toEqual({});
    expect(Object.keys(judgeSide('intake', engine({ lobe: 0.35 })).medians)).toEqual(['lobeLift']);
  });

  test('two known among many are too few to be told apart from', () => {
    const two = engine({}, { 1: { lift: 0.56 }, 2: { lift: 0.4 } });
    expect(judgeSide('intake', two).odd).toEqual([]);
    const three = engine({}, { 1: { lift: 0.56 }, 2: { lift: 0.4 }, 3: { lift: 0.56 } });
    expect(judgeSide('intake', three).odd.map(({ cylinder }) => cylinder)).toContain(2);
  });
});

test('a lobe that is down is told with how far', () => {
  const { lobesDown } = judgeSide('intake', engine(USUAL, { 2: { lobe: 0.338 }, 3: { lobe: 0.362 } }));
  expect(lobesDown).toHaveLength(1);
  expect(lobesDown[0]).toMatchObject({ cylinder: 2, valve: 'intake' });
  expectNear(lobesDown[0]?.by ?? 0, 0.012 * IN);
});
