import { planOf } from '../../../../shared/schemas/goals.ts';
import type { Evidence } from '../evidence.ts';
import { ratioOfStamp } from '../ratio/marks.ts';
import { ANSWER, MUST, type Need, need } from './need.ts';

export const ofParts = ({ arms, seats, rockers, call }: Evidence): Need[] => [
  need(
    'arm',
    'an arm with its marks',
    'Read the marks on the arm word for word: ratio stamp, other number, box label.',
    arms.length > 0,
    MUST,
  ),
  need('seat', 'which valve each arm sits on', 'Say which arm sits on which valve.', seats.length > 0, MUST),
  need(
    'sold-as',
    'the ratio the rockers are sold as',
    'Ask which ratio the rockers are sold as.',
    // A mark on the arm is what it is held to be as well.
    rockers.soldAs !== undefined || arms.some((arm) => ratioOfStamp(arm) !== undefined),
    MUST,
  ),
  ...(planOf(call.goal).isChange
    ? [
        need(
          'planned',
          'the ratio of the rockers that are to be fitted',
          'Ask which ratio is to be fitted.',
          rockers.planned !== undefined,
          MUST,
        ),
      ]
    : []),
];

/** The part is off the engine: nothing of it needs turning. */
export function ofIdentify({ part }: Evidence): Need[] {
  const read = (...kinds: readonly string[]) =>
    part.filter(({ standing, kind }) => standing && kinds.includes(kind)).length;
  const holes = read('hole-across-trunnion');
  return [
    need(
      'hole',
      `the hole across the trunnion, both ways: ${Math.min(holes, 2)} of 2`,
      'Measure the hole across the trunnion, then once more at a right angle.',
      holes >= 2,
      ANSWER,
    ),
    need(
      'width',
      'the width across the trunnion',
      'Measure the width across the trunnion, ends included.',
      read('width-across-trunnion') > 0,
      ANSWER,
    ),
    need('rings', 'the retaining rings', 'Look whether retaining rings show.', read('rings') > 0, ANSWER),
    need(
      'sizes',
      'roller, body and arms',
      'Measure roller, body width and pivot to tip.',
      read('roller-diameter', 'body-width', 'pivot-to-tip') > 2,
    ),
    need(
      'part-marks',
      'the marks on the part, each word for word',
      'Read every mark on the part, each word for word.',
      read('ratio-stamp', 'other-number', 'box-label') > 0,
    ),
  ];
}
