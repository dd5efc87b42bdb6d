import { formatQuantity, formatRatio } from '../../../shared/quantities/format.ts';

/** `.482 in`, as the trade writes it; the last bits of the arithmetic go before the rounding. */
export function inch(value: number): string {
  return formatQuantity({ value: Number(value.toPrecision(12)), unit: 'in' }, { places: 3 });
}

/** A nominal as it is stamped: `1.6`, `1.75`. */
export function nominalText(ratio: number): string {
  return String(Number(ratio.toFixed(3))).replace(/^0\./, '.');
}

/** A ratio as measured: `1.747`. */
export const ratioText = formatRatio;

const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

export function countText(count: number): string {
  return COUNTS[count] ?? String(count);
}

/** `, a ratio of 1.750` when the lobe is known, else nothing. */
function ratioClause(valveLift: number, lobeLift: number | undefined): string {
  return lobeLift === undefined ? '' : `, a ratio of ${ratioText(valveLift / lobeLift)}`;
}

/** `.100 in more would make it .842 in, a ratio of 1.747.` */
export function changeText(from: number, to: number, lobeLift: number | undefined): string {
  const way = to < from ? 'less' : 'more';
  return `${inch(Math.abs(to - from))} ${way} would make it ${inch(to)}${ratioClause(to, lobeLift)}.`;
}

/** The same of a lift at the lobe: `.100 in more would make it .338 in, a ratio of 1.601.` */
export const lobeChangeText = (from: number, to: number, valveLift: number | undefined): string =>
  valveLift === undefined
    ? changeText(from, to, undefined)
    : changeText(from, to, undefined).replace(/\.$/, `${ratioClause(valveLift, to)}.`);

/** What is asked of the lobe says so: by it an answer is known as one of the lobe. */
export const AT_LOBE = ' at the lobe';

export const READ_SMALL_HAND = 'Read the small hand, then take one more pass.';
export const TOUCH_VALVE = 'Touch the valve while its lobe lifts it, then read the card out again.';
/** The same where no card is there to read out. */
export const TOUCH_ALONE = 'Touch the valve while its lobe lifts it.';
export const ENTER_AGAIN = 'Say the unit, and read the number out again digit by digit.';
