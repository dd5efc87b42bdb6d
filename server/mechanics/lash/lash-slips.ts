import table from '../../../seeds/setting.json' with { type: 'json' };
import { isUsual } from '../../../shared/quantities/field-range.ts';
import { formatNumber } from '../../../shared/quantities/format.ts';
import { CAN_BE } from '../../../shared/schemas/can-be.ts';
import { EQUAL } from '../kit/nearest.ts';
import { saidLength } from '../kit/said.ts';
import { IN, MM } from '../kit/si.ts';

/** A lash that it may have been meant as, in words that can stand after “was”. */
export interface LashSlip {
  readonly said: string;
  readonly value: number;
}

/** In the middle of what cams ask for. */
const ORDINARY = table.lashSlips.ordinary * IN;
/** Thinner feelers are not made. A valve that closed up may have that little. */
const THINNEST = table.thinnestFeeler.value * MM;

/** More than any lash that is set, or less than the thinnest feeler; none at all is another thing. */
export function unlikelyLash(si: number): 'wide' | 'tight' | undefined {
  if (si > 0 && si < THINNEST * (1 - 1e-9)) return 'tight';
  return si > ORDINARY && !isUsual(si, CAN_BE.lash) ? 'wide' : undefined;
}

/** Nearer than this to what is expected a slip has to come. */
export const NEAR = table.lashSlips.near * IN;
/** Past what a lash is tuned by. */
export const TUNED_BY = table.lashWindow.hot * IN;

/** The same thousandths with two neighbours the other way round: `.062` for `.026`. */
function swapped(si: number): number[] {
  const thousandths = Math.round((si / IN) * 1000);
  if (Math.abs((si / IN) * 1000 - thousandths) > 1e-6 || thousandths > 999) return [];
  const digits = String(thousandths).padStart(3, '0');
  return [0, 1].flatMap((at) => {
    const [a, b] = [digits.charAt(at), digits.charAt(at + 1)];
    return a === b ? [] : [(Number(`${digits.slice(0, at)}${b}${a}${digits.slice(at + 2)}`) / 1000) * IN];
  });
}

const slip = (value: number): LashSlip => ({ value, said: saidLength(value) });

/** Inches that are the size of a metric feeler: `.25 in` for 0.25 mm. */
function asMillimetres(si: number): LashSlip {
  const millimetres = si / IN;
  return { value: millimetres * MM, said: `${formatNumber(millimetres, 2)} mm` };
}

/**
 * What a lash may have been meant as: millimetres typed as inches, the dot one place off, two digits the other way round.
 *
 * @param si [m] the lash as it was understood
 * @param typedIn the unit of the entry
 * @param expected [m] what the card asks for, or the middle of the other valves of its side
 * @returns the slips that make a usual lash of an unlikely one, or the one that is expected out of one that is far off
 * it; nearest to what is expected first, or to an ordinary lash
 *
 * Source: common practice, no published source.
 */
export function lashSlips(si: number, typedIn: 'in' | 'mm', expected?: number): LashSlip[] {
  const off = (value: number) => Math.abs(value - (expected ?? ORDINARY));
  const each = [
    ...(typedIn === 'in' ? [asMillimetres(si)] : []),
    ...[si / 10, si * 10, ...(typedIn === 'in' ? swapped(si) : [])].map(slip),
  ];
  // Two ways to the same figure are one thing to ask.
  const all = each.filter(({ said }, at) => each.findIndex((other) => other.said === said) === at);
  if (unlikelyLash(si) === undefined)
    return expected === undefined || off(si) <= TUNED_BY + EQUAL
      ? []
      : all.filter(({ value }) => off(value) <= NEAR + EQUAL && isUsual(value, CAN_BE.lash));
  return all
    .filter(({ value }) => isUsual(value, CAN_BE.lash))
    .toSorted((a, b) => off(a.value) - off(b.value))
    .slice(0, 2);
}
