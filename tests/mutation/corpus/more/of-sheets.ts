import type {
  ArmEvidence,
  Evidence,
  SheetEvidence,
  Side,
} from '../../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../../server/mechanics/kit/si.ts';

/* Whole sheets with one thing odd, and arms by what is on them. Engines and figures are invented. */

type Cell = readonly [cylinder: number, valve: Side, lift: number];
const CYLINDERS = [1, 2, 3, 4];
const SIDES: readonly Side[] = ['intake', 'exhaust'];
const LOBES = { intake: 0.35, exhaust: 0.34 } as const;

function cells(
  kind: SheetEvidence['kind'],
  from: number,
  all: readonly Cell[],
  more: (cell: Cell) => Partial<SheetEvidence> = () => ({}),
): SheetEvidence[] {
  return all.map((cell, index) => ({
    ...{ id: `${kind}-${from + index}`, line: from + index, standing: true, kind },
    ...{ cylinder: cell[0], valve: cell[1], reading: { value: cell[2] * IN }, readAs: 'as read' },
    ...{ tool: 'indicator', spring: 'light', lifter: 'solid', arms: 'these', lash: 'zero' },
    ...more(cell),
  }));
}

/** Lifts of a 1.6 on every valve, one of them otherwise. */
const lifts = (odd: (cylinder: number, valve: Side) => number = () => 0): Cell[] =>
  SIDES.flatMap((valve) =>
    CYLINDERS.map((cylinder): Cell => [cylinder, valve, 1.6 * LOBES[valve] + odd(cylinder, valve)]),
  );
const lobes = (odd: (cylinder: number, valve: Side) => number = () => 0): Cell[] =>
  SIDES.flatMap((valve) =>
    CYLINDERS.map((cylinder): Cell => [cylinder, valve, LOBES[valve] + odd(cylinder, valve)]),
  );

const first = (off: number) => (cylinder: number, valve: Side) =>
  cylinder === 1 && valve === 'intake' ? off : 0;
const engine = {
  engine: { cylinders: 4, lifter: 'solid-flat', mounting: 'stud' },
  card: {
    intake: { lobeLift: 0.35 * IN, lash: 0.016 * IN },
    exhaust: { lobeLift: 0.34 * IN, lash: 0.018 * IN },
  },
  rockers: { soldAs: 1.6 },
  catalogueRatios: [1.5, 1.6, 1.7],
} satisfies Partial<Evidence>;

const arm = (id: string, ratioStamp: string, more: Partial<ArmEvidence> = {}): ArmEvidence => ({
  ...{ id, name: id.toUpperCase(), ratioStamp, otherNumber: '', boxLabel: '' },
  ...more,
});
const at = (armId: string, cylinder: number, valve: Side = 'intake') => ({ armId, cylinder, valve });

/** Arms A and B on the first two intakes, read, changed over and read again. */
function swapped(
  now: readonly [number, number],
  more: Partial<SheetEvidence> = {},
  again = true,
): Partial<Evidence> {
  const before = lifts(first(-0.03));
  const on = (a: string, b: string) => (cell: Cell) => ({
    ...more,
    ...(cell[1] === 'intake' && cell[0] <= 2 ? { armId: cell[0] === 1 ? a : b } : {}),
  });
  const after: readonly Cell[] = [
    [1, 'intake', now[0]],
    [2, 'intake', now[1]],
  ];
  return {
    ...engine,
    arms: [arm('a', '1.6'), arm('b', '1.6')],
    seats: [at('b', 1), at('a', 2)],
    sat: [at('a', 1), at('b', 2), at('b', 1), at('a', 2)],
    sheet: [
      ...cells('lobe-lift', 1, lobes()),
      ...cells('valve-lift', 20, before, on('a', 'b')),
      ...cells('valve-lift', 40, after, on('b', 'a')),
      ...(again ? cells('valve-lift', 50, after, on('b', 'a')) : []),
    ],
  };
}

const SWAPS = [
  // It stays with the place, goes with the arm, is gone, is both, neither can be told.
  swapped([0.53, 0.56]),
  swapped([0.56, 0.53]),
  swapped([0.56, 0.56]),
  swapped([0.53, 0.53]),
  swapped([0.545, 0.545]),
  swapped([0.53, 0.56], {}, false),
  swapped([0.56, 0.53], { spring: 'running' }),
  swapped([0.56, 0.53], { lifter: 'hydraulic' }),
  swapped([0.53, 0.56], { tool: 'caliper' }),
];

const ODD = [0, -0.012, -0.03, 0.012, 0.03, -0.1, 0.1].flatMap((off) => [
  { ...engine, sheet: cells('valve-lift', 1, lifts(first(off))) },
  {
    ...engine,
    sheet: [
      ...cells('lobe-lift', 1, lobes()),
      ...cells('valve-lift', 20, lifts(first(off))),
      ...cells('valve-lift', 40, lifts(first(off)).slice(0, 4)),
    ],
  },
  {
    ...engine,
    sheet: [
      ...cells('lobe-lift', 1, lobes(first(off / 2))),
      ...cells('valve-lift', 20, lifts(first(off * 0.8))),
    ],
  },
]);

const PASSES = [
  // Passes apart: by a turn, by a little, sinking, and one between gauges.
  ...[0.1, 0.006, -0.006].map((off) => ({
    ...engine,
    sheet: [
      ...cells('valve-lift', 1, lifts()),
      ...cells('valve-lift', 20, lifts(first(off))),
      ...cells('valve-lift', 40, lifts()),
    ],
  })),
  {
    ...engine,
    sheet: [...cells('valve-lift', 1, lifts()), ...cells('valve-lift', 20, lifts(first(0.02)))],
  },
  {
    ...engine,
    sheet: [0, -0.006, -0.012].flatMap((off, index) =>
      cells(
        'valve-lift',
        1 + 20 * index,
        lifts(() => off),
        () => ({ lifter: 'hydraulic' }),
      ),
    ),
  },
  {
    ...engine,
    sheet: [
      ...cells('valve-lift', 1, lifts()),
      ...cells('valve-lift', 20, lifts().slice(0, 1), () => ({
        reading: { low: 0.55 * IN, high: 0.56 * IN },
      })),
    ],
  },
];

const WHOLE = [
  // A whole side that is low, high, short by the lash, and read on the other spring.
  ...[-0.016, -0.03, 0.03, -0.1, 0.004].map((off) => ({
    ...engine,
    sheet: [
      ...cells('lobe-lift', 1, lobes()),
      ...cells(
        'valve-lift',
        20,
        lifts((_, valve) => (valve === 'intake' ? off : 0)),
        () => ({ lash: 'set' }),
      ),
    ],
  })),
  {
    ...engine,
    sheet: [
      ...cells('valve-lift', 1, lifts(), ([cylinder]) => (cylinder > 2 ? { spring: 'running' } : {})),
      ...cells(
        'valve-lift',
        20,
        lifts(() => -0.02),
        () => ({ spring: 'running' }),
      ),
    ],
  },
  {
    ...engine,
    sheet: cells(
      'valve-lift',
      1,
      lifts((cylinder) => (cylinder > 2 ? -0.02 : 0)),
    ),
  },
  {
    ...engine,
    sheet: cells('valve-lift', 1, lifts(), ([cylinder]) =>
      cylinder > 2 ? { arms: 'before', spring: 'not-said' } : {},
    ),
  },
  // Lobes that are worn, alike by a wrong card, and lifts off in steps as a coarse tool reads.
  {
    ...engine,
    sheet: [
      ...cells('lobe-lift', 1, lobes(first(-0.02))),
      ...cells('lobe-lift', 20, lobes(first(-0.02))),
      ...cells('valve-lift', 40, lifts(first(-0.032))),
    ],
  },
  {
    ...engine,
    sheet: [
      ...cells(
        'lobe-lift',
        1,
        lobes(() => -0.01),
      ),
      ...cells(
        'valve-lift',
        20,
        lifts(() => -0.016),
      ),
    ],
  },
  {
    ...engine,
    sheet: cells(
      'valve-lift',
      1,
      lifts((cylinder) => (cylinder % 2 === 0 ? 0.0156 : -0.0156)),
      () => ({ tool: 'rule' }),
    ),
  },
];

const STAMPS = [
  '1.6',
  '1,6',
  '16',
  '160',
  '60',
  '1.6 1.5',
  '1.5/1.6/1.7',
  '16 / 1.5',
  '1.6 1.60',
  'A-12',
  '9.9',
  '',
  ' 1.6 ',
];
const ARMS = [
  ...STAMPS.map((stamp) => ({
    ...engine,
    arms: [
      arm('a', stamp, { boxLabel: 'rockers 1.6, set of 16', otherNumber: stamp === '' ? '1.6' : '4471' }),
    ],
    seats: [at('a', 1)],
    sat: [at('a', 1)],
  })),
  ...['one point six', 'box says 1.5 and 1.6', 'one six', 'nothing on it'].map((boxLabel) => ({
    ...engine,
    arms: [arm('a', '', { boxLabel })],
    seats: [at('a', 1)],
    sat: [at('a', 1)],
  })),
  ...[1.6, 1.65, 1.7].flatMap((plannedExhaust) => [
    { ...engine, rockers: { soldAs: 1.6, planned: 1.7, plannedExhaust, alsoPlanned: [1.8, 1.65, 1.7] } },
    { ...engine, rockers: { soldAs: 1.6, plannedExhaust } },
  ]),
];

/** Of these each answer is tried too. */
export const OF_SHEETS_ANSWERED: readonly Partial<Evidence>[] = [
  ...SWAPS.slice(0, 3),
  ...ARMS.slice(5, 8),
  ...PASSES.slice(3, 4),
];
export const OF_SHEETS: readonly Partial<Evidence>[] = [...SWAPS, ...ODD, ...PASSES, ...WHOLE, ...ARMS];
