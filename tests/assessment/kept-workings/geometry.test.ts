import { expect } from 'vitest';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from '../../mechanics/assessment/plain-build.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { type Call, codes, of, tellEach } from './call.ts';

const arms = (toValve: string, toCam: string) => ({
  toValve: { value: toValve, errorLimit: '.3 mm' },
  toCam: { value: toCam, errorLimit: '.3 mm' },
});

const CALLS: readonly Call[] = [
  {
    // 7.400 and 1.15 turns of .050, less .016 ÷ 1.6 = .010.
    name: 'a pushrod and the nearest in stock',
    kept: [
      [
        'pushrod-length',
        {
          checkerAtZero: '7.400 in',
          pitch: '.050 in',
          turns: 1.15,
          lash: '.016 in',
          ratio: 1.6,
          stock: ['7.450 in', '7.500 in'],
        },
      ],
    ],
    check: (said) =>
      expect(of(said, 'geometry')).toEqual([
        'The pushrod comes to 7.4475 in. The nearest in stock is 7.450 in, .0025 in longer. Whether that is end to end or as a gauge reads it is not said: the two are about .017 in apart. Ask before it is ordered.',
      ]),
  },
  {
    // 2.000 − 1.800 − .250 = −.050.
    name: 'a stand that is too high: no shim lowers it',
    base: { engine: { cylinders: 8, mounting: 'shaft' }, rockers: {} },
    kept: [
      [
        'stand-height',
        { pivotHeight: '1.800 in', tipHeight: '2.000 in', netLift: '.500 in', pivotToTip: '1.450 in' },
      ],
    ],
    check: (said) => expect(of(said, 'geometry')[0]).toMatch(/\.050 in too high.*no shim lowers it/),
  },
  {
    // 36 ÷ 24 and 35.4 ÷ 21.9, each arm ± .3 mm: u = (.3/√3)/24·√(1 + 1.5²) = .01301, × 1.96 = .0255; JCGM 100, 5.1.2.
    name: 'the arms of a follower say what to expect, shut and at full lift',
    base: { engine: { cylinders: 4, gear: 'finger-follower', lifter: 'solid-flat' } },
    kept: [['follower-ratio', { shut: arms('36 mm', '24 mm'), open: arms('35.4 mm', '21.9 mm') }]],
    check: (said) => {
      expect(of(said, 'geometry')).toEqual([
        'By its arms the follower’s ratio is 1.500 ± .025 with the valve shut and 1.616 ± .029 at full lift. Both lifts, read on the engine, settle it.',
      ]);
      const figure = said.quantities.find(({ id }) => id === 'working:follower');
      expect(figure).toMatchObject({ dimension: 'ratio', basis: 'calculated' });
      expect(figure?.value).toBeCloseTo(1.5, 12);
      expect(figure?.high).toBeCloseTo(1.5 + 1.96 * (0.3 / Math.sqrt(3) / 24) * Math.hypot(1, 1.5), 4);
    },
  },
  {
    name: 'with the valve shut alone it is said that it changes through the lift',
    base: { engine: { cylinders: 4, gear: 'finger-follower', lifter: 'solid-flat' } },
    kept: [['follower-ratio', { shut: arms('36 mm', '24 mm') }]],
    check: (said) => expect(of(said, 'geometry')[0]).toMatch(/valve shut; it changes through the lift/),
  },
  {
    // 2.060 − 1.750 − .250 = .060.
    name: 'a stand that is too low, with the shim',
    base: { engine: { cylinders: 8, mounting: 'shaft' }, rockers: {} },
    kept: [
      [
        'stand-height',
        {
          pivotHeight: '1.750 in',
          tipHeight: '2.060 in',
          netLift: '.500 in',
          pivotToTip: '1.450 in',
          shims: ['.030 in', '.060 in'],
        },
      ],
    ],
    check: (said) =>
      expect(of(said, 'geometry')).toEqual([
        'The stand is .060 in too low for the least sweep. The nearest shim is .060 in, just that.',
      ]),
  },
  {
    // 7.600 + 4.25 × .050 + .030 = 7.8425; what is wanted is 7.8125 − .020/1.6 = 7.800.
    name: 'a pushrod for solid lifters with a preload added is asked, and not told',
    kept: [['pushrod-length', { checkerAtZero: '7.600 in', pitch: '.050 in', turns: 4.25, add: '.030 in' }]],
    check: (said) => {
      expect(of(said, 'geometry')[0]).toMatch(/^Nothing is told of this length yet/);
      expect(said.questions.find(({ code }) => code === 'sum-unlikely')?.size).toBe(
        'The build says solid lifters; .030 in of preload was added to the length.',
      );
    },
  },
  {
    name: 'one without the lash of the card taken off is asked',
    base: { card: { ...PLAIN.card, intake: { lash: 0.02 * IN }, exhaust: { lash: 0.02 * IN } } },
    kept: [['pushrod-length', { checkerAtZero: '7.600 in', pitch: '.050 in', turns: 4.25 }]],
    check: (said) =>
      expect(said.questions.find(({ code }) => code === 'sum-unlikely')?.size).toMatch(
        /lash is \.020 in; no lash was taken off the length\./,
      ),
  },
  {
    // 7.8125 − .020/1.6.
    name: 'with it taken off it is told, and without a lash on the card or a lifter that was said nothing is asked',
    base: { card: { ...PLAIN.card, intake: { lash: 0.02 * IN }, exhaust: { lash: 0.02 * IN } } },
    kept: [
      [
        'pushrod-length',
        { checkerAtZero: '7.600 in', pitch: '.050 in', turns: 4.25, lash: '.020 in', ratio: 1.6 },
      ],
    ],
    check: (said) => {
      expect(of(said, 'geometry')[0]).toMatch(/^The pushrod comes to 7\.800 in/);
      expect(codes(said)).not.toContain('sum-unlikely');
    },
  },
  {
    name: 'lifters that nobody said are held against nothing',
    base: { engine: { cylinders: 8, mounting: 'stud' } },
    kept: [['pushrod-length', { checkerAtZero: '7.600 in', pitch: '.050 in', turns: 4.25, add: '.030 in' }]],
    check: (said) => expect(codes(said)).not.toContain('sum-unlikely'),
  },
];

tellEach(CALLS, assessAsTold('kept-workings-geometry'));
