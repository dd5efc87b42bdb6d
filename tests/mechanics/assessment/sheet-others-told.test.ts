import { describe, expect, test } from 'vitest';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { EIGHT, heard, setUpOn, sixteen, VERIFY } from './whole-sheet.ts';

/* Eight cylinders sold as 1.6, every arm about 1.600; one valve is off, waits, or was read in a set-up. Figures invented. */
const build = (call: Evidence, off: (lift: number) => number): Evidence => ({
  ...call,
  rockers: { soldAs: 1.6 },
  sheet: sixteen(1.6, ({ lift }, place) => (place === '3 intake' ? { lift: off(lift) } : {}), {
    lash: 'zero',
  }),
});
const OTHERS =
  /^The other 7 intakes lie within \.002 in of their middle\. Their middle ratio is 1\.60\d, level with the 1\.6 they are sold as\.$/;

describe('of a side of which one valve is told by itself the others are told too', () => {
  test.each([
    ['the odd one', (lift: number) => lift - 0.021],
    ['one that waits for an answer', (lift: number) => lift - 0.1],
  ])('%s', (_, off) => {
    for (const call of [EIGHT, VERIFY])
      expect(heard(build(call, off)).headlines.filter((each) => OTHERS.test(each))).toHaveLength(1);
  });

  test('where none is, all are told in one go', () => {
    const { headlines } = heard(build(EIGHT, (lift) => lift));
    expect(headlines.join('\n')).not.toContain('The other');
    expect(headlines.join('\n')).toContain('stands out');
  });

  test('and of arms over their mark no ratio is for every clearance while one is odd', () => {
    const over: Evidence = {
      ...build(EIGHT, (lift) => lift),
      sheet: sixteen(1.65, ({ lift }, place) => (place === '3 intake' ? { lift: lift - 0.021 } : {}), {
        lash: 'zero',
      }),
    };
    const others = heard(over).headlines.find((each) => each.startsWith('The other 7 intakes')) ?? '';
    expect(others).toContain('ordinary for arms made with room for flex.');
    expect(others).not.toContain('every clearance');
  });
});

test('a side whose last valve was read in a set-up has none left to read', () => {
  const all = build(EIGHT, (lift) => lift);
  const seven: Evidence = {
    ...all,
    sheet: all.sheet.filter(({ cylinder, valve }) => cylinder !== 2 || valve !== 'intake'),
  };
  expect(heard(seven).headlines.join('\n')).toContain('the 7 read so far (of 8) lie within');
  const with2 = { ...seven, ...setUpOn(2, undefined, [0.56, 0.56, 0.5605]) };
  expect(heard(with2).headlines.join('\n')).toContain('No intake stands out: the 7 on the sheet lie within');
});
