import { computation } from '../../../server/mechanics/computations/gap-scan.ts';
import { deg, inches } from '../helpers/quantities.ts';
import { describeSaid } from '../helpers/said.ts';

type Pair = readonly [crankAngle: number, gap: number];

const scan = (pairs: readonly Pair[], more: object = {}) => ({
  readings: pairs.map(([at, gap]) => ({ crankAngle: deg(at), gap: inches(gap) })),
  limit: inches(0.05),
  ...more,
});
const { limit: _, ...unlimited } = scan([
  [8, 0.1935],
  [10, 0.19],
  [12, 0.1905],
]);
const THREE: readonly Pair[] = [
  [8, 0.0935],
  [10, 0.09],
  [12, 0.0905],
];
const off = (uncertainty: number) => ({ readingUncertainty: inches(uncertainty) });
/** .1 and, for each degree from TDC squared, .0001. */
const dip = (...angles: readonly number[]) => angles.map((at): Pair => [at, 0.1 + 0.0001 * at ** 2]);
const SEVEN = dip(-6, -4, -2, 0, 2, 4, 6);
const TURN = 'by hand at the crank bolt';
const MAKER = 'maker’s own clearance';
const SHOP = 'qualified shop';

describeSaid(computation, {
  assumes: [
    [
      'readings alone',
      unlimited,
      [
        'crank angles are exact',
        'its two neighbours',
        'solid lifter',
        'taken as exact',
        'not said: the wider',
      ],
    ],
    [
      'the side said, no limit',
      { ...unlimited, side: 'intake' },
      ['crank angles', 'neighbours', 'solid lifter', 'exact', 'default limit: '],
    ],
    [
      'readings that scatter, more of them near, and a limit',
      scan(SEVEN, off(0.0001)),
      [
        'crank angles',
        'within 6° of the least the gap is a parabola, by least squares through 7',
        'solid',
        'err',
      ],
    ],
    [
      'three that scatter',
      scan(THREE, off(0.0001)),
      ['crank angles', 'its two neighbours', 'solid lifter', 'err independently'],
    ],
    [
      'the least at an end',
      scan([
        [8, 0.08],
        [10, 0.09],
        [12, 0.1],
      ]),
      ['crank angles', 'nothing is fitted at an end', 'solid lifter', 'exact'],
    ],
  ],
  warns: [
    ['a clear scan', scan(THREE), [TURN, MAKER]],
    ['one under its limit', scan(THREE, { limit: inches(0.1) }), [TURN, SHOP, MAKER]],
    [
      'one too near to tell',
      scan(dip(-2, 0, 2), { limit: inches(0.1), ...off(0.0001) }),
      [TURN, SHOP, MAKER],
    ],
    [
      'an end that is over the limit, or just at it',
      scan(
        [
          [8, 0.08],
          [10, 0.09],
          [12, 0.1],
        ],
        { limit: inches(0.08) },
      ),
      [TURN, 'not judged', MAKER],
    ],
    [
      'an end under it',
      scan(
        [
          [8, 0.08],
          [10, 0.09],
          [12, 0.1],
        ],
        { limit: inches(0.081) },
      ),
      [TURN, 'not judged', 'under the limit already', MAKER],
    ],
    [
      'an end that touches',
      scan([
        [8, 0.02],
        [10, 0.01],
        [12, 0],
      ]),
      [TURN, 'would meet', 'not judged', 'under the limit already', MAKER],
    ],
    [
      'an end whose readings are off by more than they differ: no curve says so there',
      scan(
        [
          [8, 0.08],
          [10, 0.0801],
          [12, 0.1],
        ],
        off(0.01),
      ),
      [TURN, 'not judged', MAKER],
    ],
    ['one angle twice', scan([...THREE, [8, 0.097]]), [TURN, 'more than once', MAKER]],
    ['one angle twice alike', scan([...THREE, [8, 0.0935]]), [TURN, MAKER]],
    // A rise of .0035 against √2 of what one reading is off: .00339, .00368.
    ['three that rise by more than they can differ', scan(THREE, off(0.0024)), [TURN, MAKER]],
    ['three that rise by less', scan(THREE, off(0.0026)), [TURN, 'rather too small', MAKER]],
    // Seven to 6° from the least rise by .0036; three before and two after it by .0025, from the further one.
    ['seven that rise by more', scan(SEVEN, off(0.0025)), [TURN, MAKER]],
    ['seven that rise by less', scan(SEVEN, off(0.0026)), [TURN, 'rather too small', MAKER]],
    ['more to one side', scan(dip(-5, -3, -1, 1, 3), off(0.0017)), [TURN, MAKER]],
    ['more to the other side', scan(dip(-3, -1, 1, 3, 5), off(0.0017)), [TURN, MAKER]],
    [
      'more to one side, by less than they can differ',
      scan(dip(-5, -3, -1, 1, 3), off(0.0019)),
      [TURN, 'rather too small', MAKER],
    ],
    [
      'an angle from the other side of the turn',
      scan([...THREE, [181, 0.5]]),
      [TURN, 'more than 180° from TDC', MAKER],
    ],
    ['one at the half turn', scan([...THREE, [180, 0.5], [-180, 0.5]]), [TURN, MAKER]],
    ['one before it', scan([...THREE, [-181, 0.5]]), [TURN, 'more than 180° from TDC', MAKER]],
    [
      'a least far from TDC',
      scan([
        [24, 0.12],
        [26, 0.1],
        [28, 0.12],
      ]),
      [TURN, 'within 25° of TDC', MAKER],
    ],
    [
      'far before it',
      scan([
        [-24, 0.12],
        [-26, 0.1],
        [-28, 0.12],
      ]),
      [TURN, 'within 25° of TDC', MAKER],
    ],
    [
      'as far as is usual',
      scan([
        [22, 0.12],
        [24, 0.1],
        [26, 0.12],
      ]),
      [TURN, MAKER],
    ],
  ],
});
