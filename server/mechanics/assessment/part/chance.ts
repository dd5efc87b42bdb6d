import { IDENTIFICATION_MODEL } from '../../identify/model.ts';
import type { Chance } from './detail.ts';

/** `46 %`, with the ends left open: nothing is ever certain here. */
export function shareSaid(probability: number): string {
  const percent = Math.round(probability * 100);
  if (percent < 1) return 'under 1 %';
  return percent > 99 ? 'over 99 %' : `${percent} %`;
}

function likely(probability: number): string {
  const { nearlySettled, likely: fromLikely, possible } = IDENTIFICATION_MODEL.told;
  if (probability >= nearlySettled) return 'Nearly settled';
  if (probability >= fromLikely) return 'Likely';
  return probability >= possible ? 'Possible' : 'Unlikely';
}

export const chanceOf = (probability: number): Chance => ({
  probability,
  share: shareSaid(probability),
  likely: likely(probability),
});
