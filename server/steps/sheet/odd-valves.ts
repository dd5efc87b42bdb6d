import { formatQuantity } from '../../../shared/quantities/format.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import type { Component } from '../../../views/parts/part.ts';
import type { OnSpring } from '../../assessment/sheet/sheet.ts';
import { ON_SPRING } from './sheet-text.ts';

const inches = (si: number): string => {
  const { value, unit } = fromSi(si, 'in');
  return `${value > 0 ? '+' : ''}${formatQuantity({ value, unit }, { places: 3 })}`;
};

const TESTS = {
  lobe: 'read that lobe again at the lifter, three passes; then the cam card and the lifter.',
  'rocker-or-position': 'swap the arm with a neighbour’s and read both.',
  both: 'read the lobe again, then swap the arm with a neighbour’s and read both.',
  'measure-lobe': 'read the lobe at the lifter; no part has to move.',
  'cannot-tell': 'three more passes of lobe and valve, the same way.',
} as const;

/** A card for each odd valve: what it says, and the test that settles it. */
export function oddCards(on: OnSpring): Component[] {
  /** What the newest swap of this valve's arm has decided. */
  const settled = (place: string) => on.swaps.findLast(({ places }) => places.includes(place))?.words;
  return on.sides.flatMap((side) =>
    side.odd.map(
      (odd): Component => ({
        template: '/parts/question',
        data: {
          id: `odd-${on.spring}-${odd.cylinder}-${odd.valve}`,
          about: `${odd.cylinder} ${odd.valve}, ${ON_SPRING[on.spring]}`,
          words: odd.words,
          test: settled(`${odd.cylinder} ${odd.valve}`) ?? odd.swap ?? TESTS[odd.cause],
          answers: [],
        },
      }),
    ),
  );
}

/** Lobes that are down so far that the cam is worn. */
export function wornLobes(on: OnSpring): Component[] {
  return on.sides.flatMap((side) =>
    side.lobesDown.map(
      ({ cylinder, by }): Component => ({
        template: '/parts/notice',
        data: {
          kind: 'caution',
          text: `lobe ${cylinder} ${side.side} is ${formatQuantity(fromSi(by, 'in'), { places: 3 })} down, over .010. Stop, and have a qualified shop look at the cam.`,
        },
      }),
    ),
  );
}

/** What the swaps on record decide. */
export function swapsTable(on: OnSpring): Component[] {
  if (on.swaps.length === 0) return [];
  return [
    {
      template: '/parts/table',
      data: {
        caption: `Swap tests, ${ON_SPRING[on.spring]}`,
        columns: [
          { label: 'Valves' },
          { label: 'Goes with the arm', number: true },
          { label: 'Stays on the valve', number: true },
          { label: 'What it decides' },
        ],
        rows: on.swaps.map((swap) => ({
          cells: [swap.places.join(' and '), inches(swap.part), inches(swap.position), swap.words],
        })),
        note: 'A difference counts past .008 in. Every arm on both valves, read the same way.',
      },
    },
  ];
}
