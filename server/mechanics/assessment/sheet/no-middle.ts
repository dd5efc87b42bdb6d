import type { Judgement } from '../assessment.ts';
import { firstSaid } from '../common/first-said.ts';
import { inches } from '../common/said.ts';
import type { ValvePlace } from '../evidence.ts';
import type { SheetSideDetail } from './detail.ts';
import { placesSaid } from './rows-to-read.ts';
import { SPRING } from './side-words.ts';

/** How ids of these judgements begin. */
export const NO_MIDDLE = 'no-middle:';

/** Two are each half of what was read; of more no half of them goes together. */
const whySaid = (count: number): string =>
  count === 2 ? 'Two can’t tell which of them is off.' : 'Too few of them go together to tell which are off.';

/** What tells it: others beside them, and where there are none a second reading. */
const lacksOf = (side: string): string[] => [
  `a reading of more ${side} valves, or of these again, the same way`,
];

/** Valves of a side that differ with nothing to tell which of them is the odd one. */
export const noMiddleTold = (
  { side, spring, noMiddle }: SheetSideDetail,
  restsOn: (place: ValvePlace) => readonly string[],
): Judgement[] =>
  noMiddle === undefined
    ? []
    : [
        {
          id: `${NO_MIDDLE}${spring}:${side}`,
          about: { of: 'side', valve: side === 'exhaust' ? side : 'intake' },
          against: { to: 'siblings' },
          sentence: `${placesSaid(noMiddle.places)} lie ${inches(noMiddle.apart)} apart${SPRING[spring]}. ${whySaid(noMiddle.places.length)} ${firstSaid(lacksOf(side))}`,
          lacks: lacksOf(side),
          restsOn: noMiddle.places.flatMap(restsOn).sort(),
        },
      ];
