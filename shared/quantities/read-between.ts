import type { FieldRange } from './field-range.ts';
import { formatQuantity } from './format.ts';
import type { NumberReading } from './number-types.ts';
import { readInField } from './read-in-field.ts';
import { readNumber } from './read-number.ts';
import type { Unit } from './units.ts';

/** A reading that lies between two gauges: an end that no gauge has found is left out. */
interface Between {
  readonly low?: number;
  readonly high?: number;
  readonly unit: Unit;
}

/** `more than .024 in, less than .028 in` */
export function sayBounds({ low, high, unit }: Between): string {
  const say = (value: number) => formatQuantity({ value, unit });
  return [
    ...(low === undefined ? [] : [`more than ${say(low)}`]),
    ...(high === undefined ? [] : [`less than ${say(high)}`]),
  ].join(', ');
}

type BetweenReading =
  | { readonly ok: true; readonly between: Between }
  | { readonly ok: false; readonly detail: string };

const NUMBER = String.raw`([\d./]+(?:\s*(?:in|inch|inches|mm|thou|"))?)`;
/** With a point, so that a dash between two of them can't be that of a mixed number such as 1-1/2. */
const POINTED = String.raw`(\d*\.\d+(?:\s*(?:in|inch|inches|mm|thou|"))?)`;
const OVER = '(?:more than|over|above|at least|>=?)';
const UNDER = '(?:less than|under|below|up to|<=?)';
const JOINT = String.raw`\s*(?:,|;|and|but)*\s*`;

/** How people say it; the groups are low then high, or the other way round where `turned`. */
const BOTH: readonly { readonly pattern: RegExp; readonly turned?: true }[] = [
  { pattern: new RegExp(`^${OVER} ?${NUMBER}${JOINT}${UNDER} ?${NUMBER}$`) },
  { pattern: new RegExp(`^${UNDER} ?${NUMBER}${JOINT}${OVER} ?${NUMBER}$`), turned: true },
  { pattern: new RegExp(`^between ${NUMBER} (?:and|to) ${NUMBER}$`) },
  { pattern: new RegExp(`^${NUMBER} to ${NUMBER}$`) },
  { pattern: new RegExp(`^${POINTED} ?- ?${POINTED}$`) },
  { pattern: new RegExp(`^${NUMBER} goes${JOINT}${NUMBER} (?:does not|doesn't|won't|no)(?: go)?$`) },
  { pattern: new RegExp(`^go ?${NUMBER}${JOINT}no-?go ?${NUMBER}$`) },
];
const LOW = new RegExp(`^(?:${OVER} ?${NUMBER}|${NUMBER} goes|go ?${NUMBER})$`);
const HIGH = new RegExp(
  `^(?:${UNDER} ?${NUMBER}|${NUMBER} (?:does not|doesn't|won't)(?: go)?|no-?go ?${NUMBER})$`,
);

function plain(text: string): string {
  return text
    .toLowerCase()
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/\u2019/g, "'")
    .replace(/\s+/g, ' ')
    .trim();
}

function ends(text: string): { low?: string; high?: string } | undefined {
  for (const { pattern, turned } of BOTH) {
    const found = pattern.exec(text);
    const [, first, second] = found ?? [];
    if (first !== undefined && second !== undefined)
      return turned ? { low: second, high: first } : { low: first, high: second };
  }
  const low = LOW.exec(text)
    ?.slice(1)
    .find((group) => group !== undefined);
  if (low !== undefined) return { low };
  const high = HIGH.exec(text)
    ?.slice(1)
    .find((group) => group !== undefined);
  return high === undefined ? undefined : { high };
}

/** Whether the text speaks of two gauges, or of one that goes or does not, rather than of one figure. */
export const saysBetween = (text: string): boolean => ends(plain(text)) !== undefined;

function endOf(text: string | undefined, assume: Unit | undefined, range: FieldRange | undefined) {
  if (text === undefined) return undefined;
  const options = { kind: 'length' as const, ...(assume === undefined ? {} : { assume }) };
  return range === undefined ? readNumber(text, options) : readInField(text, { ...options, range });
}

/** `has an end that can be .4 in, or 0.4 mm; add its unit` */
function whyNot({ fault, ambiguities }: Exclude<NumberReading, { ok: true }>): string {
  if (fault !== undefined) return fault.detail;
  return `has an end that can be ${ambiguities.map(({ readAs }) => readAs).join(', or ')}; add its unit`;
}

/**
 * Reads "more than .024, less than .028", ".024 goes, .028 doesn't", "between .60 and .70 mm", "over .040".
 * A unit that only the last figure has counts for both; `range` is what the field can be.
 */
export function readBetween(text: string, assume?: Unit, range?: FieldRange): BetweenReading {
  const found = ends(plain(text));
  if (found === undefined)
    return {
      ok: false,
      detail: 'is no reading between two gauges; write it like more than .024, less than .028',
    };
  const high = endOf(found.high, assume, range);
  const unitOfHigh = high?.ok ? high.unit : undefined;
  const low = endOf(found.low, unitOfHigh ?? assume, range);
  for (const end of [low, high]) if (end !== undefined && !end.ok) return { ok: false, detail: whyNot(end) };
  const unit = unitOfHigh ?? (low?.ok ? low.unit : undefined);
  if (unit === undefined) return { ok: false, detail: 'needs a unit' };
  if (low?.ok && low.unit !== unit) return { ok: false, detail: 'has its two ends in different units' };
  const between: Between = {
    ...(low?.ok ? { low: low.value } : {}),
    ...(high?.ok ? { high: high.value } : {}),
    unit,
  };
  if (between.low !== undefined && between.high !== undefined && between.low >= between.high)
    return { ok: false, detail: 'has its ends the wrong way round: the gauge that goes is the smaller' };
  return { ok: true, between };
}
