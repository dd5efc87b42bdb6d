/** One meaning of a written number; `note` says how the comma was taken where that is in doubt. */
export interface WrittenReading {
  /** Not finite when it is beyond the numbers that can be held. */
  readonly value: number;
  /** Decimal places as written. */
  readonly places: number;
  readonly note?: string;
}

function plain(text: string, note?: string): WrittenReading {
  const [mantissa = '', exponent = '0'] = text.split('e');
  const places = Math.max(0, (mantissa.split('.')[1]?.length ?? 0) - Number(exponent));
  const value = Number(text);
  // A number too small to hold must not turn into zero unseen.
  const vanished = value === 0 && /[1-9]/.test(mantissa);
  const reading = { value: vanished ? Number.NaN : value, places };
  return note === undefined ? reading : { ...reading, note };
}

const GROUPED_BY = { ',': /^\d{1,3}(?:,\d{3})+$/, '.': /^\d{1,3}(?:\.\d{3})+$/ } as const;

/** Digits with both marks: the last one is the decimal mark, the other must part the thousands. */
function withBoth(digits: string, exponent: string): WrittenReading[] {
  const decimal = digits.lastIndexOf(',') > digits.lastIndexOf('.') ? ',' : '.';
  const grouping = decimal === ',' ? '.' : ',';
  const [whole = '', part, ...more] = digits.split(decimal);
  if (part === undefined || more.length > 0 || part.includes(grouping)) return [];
  if (!GROUPED_BY[grouping].test(whole)) return [];
  return [plain(`${whole.replaceAll(grouping, '')}.${part}${exponent}`)];
}

/**
 * What a written number can mean: none, one or two readings.
 *
 * A comma is a decimal comma (`12,24`), except where it can as well part the thousands: one comma,
 * one to three digits before it that do not begin with zero, exactly three after (`1,234`).
 */
export function readWritten(literal: string): WrittenReading[] {
  const cut = literal.indexOf('e');
  const digits = cut < 0 ? literal : literal.slice(0, cut);
  const exponent = cut < 0 ? '' : literal.slice(cut);
  const commas = digits.split(',').length - 1;
  const points = digits.split('.').length - 1;
  if (commas > 0 && points > 0) return withBoth(digits, exponent);
  if (points > 1) return GROUPED_BY['.'].test(digits) ? [plain(digits.replaceAll('.', '') + exponent)] : [];
  if (commas > 1) return GROUPED_BY[','].test(digits) ? [plain(digits.replaceAll(',', '') + exponent)] : [];
  if (commas === 0) return [plain(digits + exponent)];
  const asDecimal = digits.replace(',', '.') + exponent;
  if (exponent !== '' || !/^[1-9]\d{0,2},\d{3}$/.test(digits)) return [plain(asDecimal)];
  return [
    plain(asDecimal, 'with a decimal comma'),
    plain(digits.replace(',', ''), 'with the comma parting the thousands'),
  ];
}

/** A written whole number (`16`), or undefined. */
export function wholeNumber(literal: string): number | undefined {
  return /^\d+$/.test(literal) ? Number(literal) : undefined;
}
