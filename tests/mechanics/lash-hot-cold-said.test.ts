import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/lash-hot-cold.ts';
import { expansionOf } from '../../server/mechanics/thermal/materials.ts';
import { celsius, inches } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';
import { describeSaid } from './helpers/said.ts';

const { number } = runner(computation);
const perKelvin = (millionths: number) => ({ expansion: { value: millionths / 1e6, unit: '1/K' as const } });

const heights = {
  block: inches(4.5),
  head: inches(5.2),
  seat: inches(0.4),
  valve: inches(5),
  pushrod: inches(9.7),
};
const of = (block: number, head: number) => ({
  hotLash: inches(0.02),
  temperatureRise: celsius(70),
  ratio: 1.5,
  heights,
  materials: {
    block: perKelvin(block),
    head: perKelvin(head),
    pushrod: perKelvin(12.3),
    valve: perKelvin(11.7),
  },
});
/** Callister, table B.6: grey iron 11.4, aluminium 356 21.5 millionths. */
const ironAndAluminium = of(11.4, 21.5);
const LAST = ['Hot oil', 'at the crank', 'maker'];
const PAIR = 'an iron block and an aluminium head';
const change = number(ironAndAluminium, 'lashChange');

describeSaid(computation, {
  assumes: [['always', ironAndAluminium, ['by the same amount', 'counted with', 'at the valve tip']]],
  warns: [
    ['iron under aluminium', ironAndAluminium, [PAIR, ...LAST]],
    ['aluminium on aluminium', of(21.5, 21.5), ['an aluminium block and head', ...LAST]],
    ['iron on iron', of(11.4, 11.4), ['iron block and head', ...LAST]],
    ['as little as aluminium has: 20 millionths', of(20, 20), ['an aluminium block and head', ...LAST]],
    ['a block of 20 under iron', of(20, 11.4), LAST],
    ['a head of 20 on iron', of(11.4, 20), [PAIR, ...LAST]],
    ['iron on aluminium, printed nowhere', of(21.5, 11.4), LAST],
    ['heights left out', { ...ironAndAluminium, heights: undefined }, ['No heights', PAIR, ...LAST]],
    ['found wide enough', { ...ironAndAluminium, coldFound: inches(0.02) }, [PAIR, ...LAST]],
    // 70 K × (76.95 + 143.64 − 178.965 − 58.5) millionths: .00118 in less when hot.
    [
      '.0012 in found, which just stays open',
      { ...of(11.4, 11.4), coldFound: inches(0.0012) },
      ['iron block', ...LAST],
    ],
    [
      '.0011 in, which closes',
      { ...of(11.4, 11.4), coldFound: inches(0.0011) },
      ['closes before', 'iron block', ...LAST],
    ],
    [
      'no gap, no heat: it is closed already',
      { ...of(11.4, 11.4), coldFound: inches(0), temperatureRise: { value: 0, unit: 'degC' } },
      ['closes before', 'iron block', ...LAST],
    ],
    [
      'no gap wanted, no heat: a cold setting of zero holds nothing open',
      { ...of(11.4, 11.4), hotLash: inches(0), temperatureRise: { value: 0, unit: 'degC' } },
      ['iron block', ...LAST],
    ],
    [
      'a hot lash that the growth alone gives: nothing is left to set cold',
      { ...ironAndAluminium, hotLash: inches(change * 0.99) },
      [PAIR, 'held open cold', ...LAST],
    ],
    ['a little more', { ...ironAndAluminium, hotLash: inches(change * 1.01) }, [PAIR, ...LAST]],
  ],
});

describe('materials as people write them (Callister, Materials Science and Engineering, table B.6)', () => {
  test.each([
    ['grey-iron', 11.4e-6],
    ['Gray  Iron', 11.4e-6],
    [' grey iron ', 11.4e-6],
    ['grey - iron', 11.4e-6],
    ['GREY_IRON', 11.4e-6],
    ['aluminum 356', 21.5e-6],
    ['Aluminium-356', 21.5e-6],
    ['steel_4140', 12.3e-6],
  ])('%s', (name, wanted) => {
    expect(expansionOf(name)).toBeCloseTo(wanted, 12);
  });

  test.each(['', 'iron of the moon', 'not gray-iron', 'half aluminum-356', `grey-iron${' '.repeat(52)}`])(
    '%j is none',
    (name) => {
      expect(expansionOf(name)).toBeUndefined();
    },
  );

  test('no name is of more than 60 letters, spaces counted', () => {
    expect(expansionOf(`grey-iron${' '.repeat(51)}`)).toBeCloseTo(11.4e-6, 12);
  });
});
