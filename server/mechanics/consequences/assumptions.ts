import { inSpoken } from '../../../shared/quantities/authored.ts';
import { allowanceSource, SPRING_LOAD } from '../kit/allowances.ts';
import type { ConsequenceInput } from './types.ts';

/** No lash is taken off: none is known, and the lift does not carry it either. */
const lashNotKnown = ({ lifter, lash, after }: ConsequenceInput): boolean =>
  lifter !== 'hydraulic' && lash === undefined && after?.lashIn !== true;

/** What the figures rest on, in words. */
export function assumptionsOf(input: ConsequenceInput, calculated: boolean): string[] {
  return [
    'nothing in the train bends; the spring’s rate stays the same over the lift',
    ...(lashNotKnown(input) ? ['no lash, since none is known: the most lift'] : []),
    ...(calculated
      ? [
          'a calculated gap is clear only when all of its interval is at or above the limit',
          'piston to valve is calculated at no lash, with the lobe between the card’s durations as a smooth model',
          inSpoken(`heights as entered are taken as good to .005 in (${allowanceSource('height-reading')})`),
          `the cam is taken to stand within 2 degrees of its card (${allowanceSource('cam-timing')})`,
        ]
      : []),
    ...(input.spring.solidHeight === undefined || input.spring.nest !== undefined
      ? []
      : [
          'coil bind is that of the one spring that was entered: of a nest each spring has its own heights, and the one that goes solid first counts',
        ]),
    ...(input.spring.seatLoad === undefined
      ? []
      : [
          `loads are taken as good to ${SPRING_LOAD.share * 100} % of what is stated (${SPRING_LOAD.source})`,
        ]),
  ];
}
