import { describe, expect, test } from 'vitest';
import { lashSlips, unlikelyLash } from '../../../server/mechanics/lash/lash-slips.ts';

/*
 * A slip is arithmetic: millimetres typed for inches are 25.4 times too much, a dot one place off is ten times, and
 * two neighbouring digits change places. What lashes are set: .002 to .040 in (common practice, no source).
 */
const IN = 0.0254;
const MM = 0.001;
const inThou = (slips: readonly { value: number }[]) => slips.map(({ value }) => (value / IN) * 1000);
const typed = (inches: number, expected?: number) =>
  lashSlips(inches * IN, 'in', expected === undefined ? undefined : expected * IN);

const expectThou = (slips: readonly { value: number }[], wanted: readonly number[]) => {
  expect(slips).toHaveLength(wanted.length);
  wanted.forEach((each, at) => {
    expect(inThou(slips)[at]).toBeCloseTo(each, 9);
  });
};

describe('a lash that hardly can be', () => {
  test.each([
    // Feelers thinner than .03 mm are not made (common practice, no published source); none at all is an answer.
    [0, undefined],
    [0.029 * MM, 'tight'],
    [0.03 * MM, undefined],
    [0.0015 * IN, undefined],
    [0.016 * IN, undefined],
    [0.04 * IN, undefined],
    [0.0401 * IN, 'wide'],
    [1 * IN, 'wide'],
  ])('%d m: %s', (si, wanted) => {
    expect(unlikelyLash(si)).toBe(wanted);
  });
});

describe('what it may have been meant as', () => {
  test('.25: a metric feeler typed as inches, or the dot one place off; nearest to an ordinary lash first', () => {
    const slips = typed(0.25);
    expectThou(slips, [250 / 25.4, 25]);
    expect(slips.map(({ said }) => said.replace(/^0/, ''))).toEqual(['.25 mm', '.025 in']);
  });

  test('.062: two digits the other way round, where the card has .026', () => {
    // 026; .0062 by the dot. The two nearest are told, and not .062 mm, which is .0024 in.
    expectThou(typed(0.062, 0.026), [26, 6.2]);
    // First and second changed: .310 for .130.
    expectThou(typed(0.31, 0.03).slice(0, 1), [31]);
    expectThou(typed(0.103, 0.013).slice(0, 1), [13]);
  });

  test('.0625 is no whole thousandth: no digits of one can have changed places', () => {
    expectThou(typed(0.0625, 0.036), [6.25, 62.5 / 25.4]);
  });

  test('.033 and .044 read the same both ways round', () => {
    expectThou(typed(0.044, 0.04), [4.4]);
  });

  test('.0005: the dot one place off', () => {
    expectThou(typed(0.0005), [5]);
  });

  test('typed in millimetres it is no inches, and its digits are not those of thousandths', () => {
    expectThou(lashSlips(2.5 * MM, 'mm'), [250 / 25.4]);
    expectThou(lashSlips(0.062 * IN, 'mm', 0.026 * IN), [6.2]);
  });
});

describe('a usual lash', () => {
  test('is asked about only where it is far from what is expected', () => {
    expect(typed(0.013)).toEqual([]);
    // .031 with its digits the other way round, .030 expected.
    expectThou(typed(0.013, 0.03), [31]);
    // Within .004 of what is expected a lash is tuned (circle-track text): .020 against .0165.
    expect(typed(0.02, 0.0165)).toEqual([]);
    expect(typed(0.013, 0.0165)).toEqual([]);
    // .005 is .003 off, and a tenth of it would be nearer: it is believed all the same.
    expect(typed(0.005, 0.002)).toEqual([]);
    // Ten times .0016 is in the middle of what cams ask for, and nothing says that it was meant.
    expect(typed(0.0016)).toEqual([]);
  });

  test('and where the slip makes it that, within .002', () => {
    expectThou(typed(0.013, 0.0325), [31]);
    expectThou(typed(0.013, 0.0295), [31]);
    expect(typed(0.013, 0.0335)).toEqual([]);
    expect(typed(0.013, 0.0285)).toEqual([]);
    // None of a tenth, ten times, 100, 001 or .010 mm is near .018.
    expect(typed(0.01, 0.018)).toEqual([]);
  });
});
