import { z } from 'zod';
import { listOf } from '../../../shared/schemas/fields.ts';
import { angle, length } from '../../../shared/schemas/quantity-fields.ts';

/** What a cam card says of one lobe; the fields of every computation that takes one. */
export const cardFields = {
  lobeLift: length('rise of the lifter on the lobe'),
  centreline: angle('crank degrees after TDC for an intake, before TDC for an exhaust, written positive', {
    sign: 'not-negative',
  }),
  durations: listOf(
    z.strictObject({
      atLift: length('lift at the lobe that the duration is stated at; zero for the seat', {
        sign: 'not-negative',
      }),
      duration: angle('crank degrees above that lift', { sign: 'positive' }),
    }),
    'durations of the card, in any order; one is enough',
  ),
};

/** A lobe's card; lengths in metres, angles in crank radians. */
export interface LobeCard {
  readonly lobeLift: number;
  readonly centreline: number;
  readonly durations: readonly CardDuration[];
}

interface CardDuration {
  readonly atLift: number;
  readonly duration: number;
}

/** Crank angle of the peak after top dead centre: an exhaust peaks before it. */
export const peakOf = (card: LobeCard, side: 'intake' | 'exhaust'): number =>
  side === 'intake' ? card.centreline : -card.centreline;
