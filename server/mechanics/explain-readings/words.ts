import { formatFigure } from '../../../shared/quantities/format.ts';
import { toldIn } from '../../../shared/quantities/spoken-units.ts';

/** A length as the trade writes it: .482, 1.250; three places of an inch, and its sign as a hyphen. */
export const bare = (value: number): string =>
  formatFigure({ value, unit: 'in' }, { places: 3 }).replace('\u2212', '-');

/** The same with its unit. */
export const inches = (value: number): string => `${bare(value)} ${toldIn('in')}`;

/** Under half a thousandth of an inch, whatever the units: it would be said as none at all. */
export const isNone = (value: number): boolean => Number(Math.abs(value).toFixed(3)) === 0;

/** ` by about .012 in`; nothing where it would be said as none at all. */
export const byAbout = (value: number): string =>
  isNone(value) ? '' : ` by about ${inches(Math.abs(value))}`;

/** A name as it is stamped: 1.6, 1.65. */
export function nameText(ratio: number): string {
  return String(Number(ratio.toFixed(4)));
}

/** A ratio as measured: 1.655. */
export function ratioText(ratio: number): string {
  return ratio.toFixed(3);
}

const FIVES = 20;
const MOST_FIVES = 19;

const fivesText = (fives: number): string => (fives < 1 ? 'under 5 %' : `about ${fives * 5} %`);

/** A chance said by fives, never more than 95 %. */
export function chanceText(chance: number): string {
  return fivesText(Math.min(MOST_FIVES, Math.round(chance * FIVES)));
}

/**
 * Chances that are told beside each other, by fives. Of those that would be rounded up only the largest remainders are,
 * so that together they come to no more than the whole.
 */
export function chancesText(chances: readonly number[]): string[] {
  const whole = chances.map((chance) => Math.floor(chance * FIVES + 1e-9));
  const sum = chances.reduce((all, chance) => all + chance, 0);
  const left = Math.round(Math.min(1, sum) * FIVES) - whole.reduce((all, fives) => all + fives, 0);
  const up = chances
    .map((chance, index) => ({ index, rest: chance * FIVES - (whole[index] ?? 0) }))
    .filter(({ rest }) => rest >= 0.5 - 1e-9)
    .sort((a, b) => b.rest - a.rest || a.index - b.index)
    .slice(0, Math.max(0, left))
    .map(({ index }) => index);
  return whole.map((fives, index) => fivesText(Math.min(MOST_FIVES, fives + (up.includes(index) ? 1 : 0))));
}

/** How far a ratio stands from a name: "running 3 % over"; nothing within one per cent. */
export function awayText(ratio: number, name: number): string {
  const share = Math.round((ratio / name - 1) * 100);
  if (Math.abs(share) <= 1) return '';
  return ` running ${Math.abs(share)} % ${share > 0 ? 'over' : 'under'}`;
}

/** Several things as one says them: "a, b or c". */
export function orList(items: readonly string[]): string {
  if (items.length <= 2) return items.join(', or ');
  return `${items.slice(0, -1).join(', ')}, or ${items[items.length - 1] ?? ''}`;
}
