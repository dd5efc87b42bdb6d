import { formatQuantity } from './format.ts';
import { spokenUnits } from './spoken-units.ts';
import { isUnit } from './units.ts';

const AMOUNT = /([−-]?)(\d*\.?\d+) (in|thou|lbf\/in|lbf)(?![\w/])/g;

/** What somebody typed, told as such already. */
const TYPED = /(\(as typed [^)]*\))/;

/** The same words with their amounts in the units that are spoken; what is told as typed stays. */
function converted(words: string): string {
  const told = (part: string): string =>
    part.replaceAll(AMOUNT, (whole, sign: string, digits: string, unit: string) =>
      isUnit(unit) ? formatQuantity({ value: Number(digits) * (sign === '' ? 1 : -1), unit }) : whole,
    );
  return words
    .split(TYPED)
    .map((part) => (TYPED.test(part) ? part : told(part)))
    .join('');
}

/**
 * An entry as it was understood. Where the call speaks millimetres and it was made in inches, both: what it is, and
 * what was typed. `.482 in` is then `12.24 mm (as typed .482 in)`.
 */
export function asEntered(readAs: string): string {
  if (spokenUnits() === 'inch') return readAs;
  // `5 turns 66 = .566 in`: the amount stands last.
  const amount = readAs.split(' = ').at(-1) ?? readAs;
  const said = converted(amount);
  return said === amount ? readAs : `${said} (as typed ${readAs})`;
}

/** A figure of ours or of the shop's that was not typed for this call: told in the units that are spoken. */
export const asTold = (readAs: string): string => (spokenUnits() === 'inch' ? readAs : converted(readAs));
