import { formatNumber } from '../../shared/quantities/format.ts';

/** A number as it is said at the bench: no zeros at the end, none before the point. */
const short = (value: number, places: number): string =>
  formatNumber(Number(value.toFixed(places)), places).replace(/\.?0+$/, '') || '0';

/** `.5 turn`, `2 turns`, `1.25 turns`: a part of one is said as of one. */
const counted = (turns: number): string => `${short(turns, 3)} turn${turns > 1 ? 's' : ''}`;

/** `tighten .5 turn: 180°, 3 flats`: turns of an adjuster, tightening positive, as they are read out to somebody. */
export function turnText(turns: number): string {
  const size = Math.abs(turns);
  if (Number(size.toFixed(3)) === 0 && size * 360 < 0.05) return 'nothing to turn';
  const way = turns > 0 ? 'tighten' : 'loosen';
  const flats = short(size * 6, 2);
  return `${way} ${counted(size)}: ${short(size * 360, 1)}°, ${flats} flat${flats === '1' ? '' : 's'}`;
}
