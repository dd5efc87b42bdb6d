import type { Chance } from './detail.ts';

/** `46 %`, with the ends left open: nothing is ever certain here. */
export function shareSaid(probability: number): string {
  const percent = Math.round(probability * 100);
  if (percent < 1) return 'under 1 %';
  return percent > 99 ? 'over 99 %' : `${percent} %`;
}

function likely(probability: number): string {
  if (probability >= 0.9) return 'Nearly settled';
  if (probability >= 0.5) return 'Likely';
  return probability >= 0.1 ? 'Possible' : 'Unlikely';
}

export const chanceOf = (probability: number): Chance => ({
  probability,
  share: shareSaid(probability),
  likely: likely(probability),
});
