import { defined } from '../defined.ts';
import { canBe, type FieldRange, isUsual, rangeSaid } from './field-range.ts';
import { formatQuantity } from './format.ts';
import { isBare } from './kind-words.ts';
import { normaliseText } from './normalise-text.ts';
import { type Ambiguity, type NumberReading, type ReadOptions, refuse } from './number-types.ts';
import { type NumberValue, readValue } from './number-value.ts';
import { readNumber } from './read-number.ts';
import { asRun } from './spoken-run.ts';
import { tokenise } from './tokens.ts';
import { turnsAt } from './turns-reading.ts';
import { type Dimension, dimensionOf, type Quantity, toSi, type Unit, type UnitSystem } from './units.ts';

interface InField extends ReadOptions {
  /** What the field can be. */
  readonly range: FieldRange;
}

const METRIC: readonly Unit[] = ['mm', 'um', 'N', 'N/mm', 'kg', 'g'];

/** The system that a unit belongs to. */
const systemOf = (unit: Unit): UnitSystem => (METRIC.includes(unit) ? 'metric' : 'inch');

/** Units that people leave out, of the dimensions where they leave out more than one. */
const LEFT_OUT: Partial<Record<Dimension, readonly Unit[]>> = {
  length: ['in', 'mm', 'thou'],
  load: ['lbf', 'N'],
  rate: ['lbf/in', 'N/mm'],
};

/** The number, where nothing but a number came. */
function bareNumber(text: string): NumberValue | undefined {
  const tokens = tokenise(normaliseText(text));
  const number = turnsAt(tokens) < 0 ? readValue(tokens, 0) : undefined;
  return number?.next === tokens.length ? number : undefined;
}

interface Meant extends Ambiguity {
  readonly quantity: Quantity;
}

/** What a text can mean, the most natural first. */
function meant(text: string, options: ReadOptions): Meant[] {
  const read = readNumber(text, options);
  if (read.ok) {
    const { value, unit, readAs } = read;
    return unit === undefined ? [] : [{ readAs, quantity: { value, unit }, question: `Is it ${readAs}?` }];
  }
  return read.ambiguities.flatMap(({ quantity, ...rest }) =>
    'unit' in quantity ? [{ ...rest, quantity }] : [],
  );
}

const same = (one: Quantity, other: Quantity): boolean =>
  Math.abs(toSi(one) - toSi(other)) <= 1e-12 * Math.abs(toSi(one));

/** What a bare number would be in the units that it was not taken to be in. */
function inOtherUnits(
  text: string,
  number: NumberValue,
  options: ReadOptions,
  known: readonly Meant[],
): Meant[] {
  const { assume } = options;
  if (assume === undefined) return [];
  const counts = number.readings.every(({ value }) => Number.isInteger(value));
  return (
    (LEFT_OUT[dimensionOf(assume)] ?? [])
      // Nobody leaves out the unit of a part of a thousandth.
      .filter((unit) => unit !== assume && (unit !== 'thou' || (counts && number.run === undefined)))
      .flatMap((unit) => meant(text, { ...options, assume: unit }))
      .filter(({ quantity }) => !known.some((each) => same(each.quantity, quantity)))
  );
}

function settled({ readAs, quantity: { value, unit } }: Meant): NumberReading {
  return { ok: true, value, unit, readAs };
}

/** Each meaning once, however many ways lead to it. */
const asked = (all: readonly Meant[]): NumberReading => ({
  ok: false,
  ambiguities: [...new Map(all.toReversed().map((each) => [each.readAs, each])).values()].toReversed(),
});

/** `is 18 in; from .0015 in to .250 in is allowed`: names what came and what is allowed. */
function outside(all: readonly Meant[], { range, assume, kind }: InField): NumberReading {
  const came = all.map(({ readAs }) => readAs).join(' or ');
  const system = assume === undefined ? undefined : systemOf(assume);
  const allowed = isBare(kind) ? '' : rangeSaid(range, kind, system);
  return refuse('out-of-range', `is ${came}; ${allowed} is allowed`);
}

/** Nobody writes a length in millimetres to the thousandth of one: three places are of an inch. */
const MOST_PLACES = 2;

/**
 * What the number would be in units that were not said, where it is nothing usual in the units of the call: `.4` for a
 * gap is a plain .4 in on paper, and 0.4 mm to somebody with metric gauges.
 */
function likelier(only: Meant, others: readonly Meant[], number: NumberValue, range: FieldRange): Meant[] {
  const inInches = number.readings.some(({ places }) => places > MOST_PLACES);
  if (isUsual(toSi(only.quantity), range)) return [];
  const notMetric = inInches || isSaid(number);
  return others.filter(
    ({ quantity }) => isUsual(toSi(quantity), range) && !(notMetric && systemOf(quantity.unit) === 'metric'),
  );
}

const isSaid = ({ shape }: NumberValue): boolean =>
  shape === 'said' || shape === 'said-point' || shape === 'run';

/**
 * An inch and more said in a row: `one six` is 1.6 in, `four thirty` 4.30 in or 4.030 in. Only where the field can be
 * none of the usual ways of saying digits.
 */
function saidWithPoint(number: NumberValue, { kind }: InField): Meant[] {
  // Of a length alone: nobody says degrees or pounds with a point left out.
  const { point = [] } = kind === 'length' ? (asRun(number) ?? {}) : {};
  return point.flatMap(({ readAs, value, unit }) =>
    unit === undefined ? [] : [{ readAs, quantity: { value, unit }, question: `Is it ${readAs}?` }],
  );
}

/** Of what digits said in a row can mean there, the one thing that the field mostly is counts; else it is asked. */
function ofSaid(all: readonly Meant[], number: NumberValue, range: FieldRange): NumberReading {
  const usual = all.filter(({ quantity }) => isUsual(toSi(quantity), range));
  const [only, ...more] = usual;
  return number.shape === 'run' && only !== undefined && more.length === 0 ? settled(only) : asked(all);
}

function ofBareNumber(text: string, number: NumberValue, options: InField): NumberReading {
  const all = meant(text, options);
  const others = inOtherUnits(text, number, options, all);
  const fits = ({ quantity }: Meant) => canBe(toSi(quantity), options.range);
  const [own, other] = [all.filter(fits), others.filter(fits)];
  // Digits said in a row are thousandths to most: where millimetres are spoken both are asked.
  // So are parts of an inch, 7/16 among them: nobody counts millimetres in sixteenths.
  const ofInches = number.shape === 'run' || (number.denominator ?? 0) > 2;
  const metric = options.assume !== undefined && systemOf(options.assume) === 'metric';
  const open = ofInches && metric ? [...own, ...other] : own;
  const [only, ...more] = open;
  if (only === undefined) {
    const inches = saidWithPoint(number, options).filter(fits);
    const [one, ...rest] = [...inches, ...other];
    if (one === undefined) return outside(all, options);
    return rest.length === 0 && inches.length === 1 ? settled(one) : asked([one, ...rest]);
  }
  if (more.length > 0) return ofSaid(open, number, options.range);
  const mostly = likelier(
    only,
    [...saidWithPoint(number, options).filter(fits), ...other],
    number,
    options.range,
  );
  if (mostly.length > 0) return asked([only, ...mostly]);
  // Thousandths that were only written as a number are asked about; said, they are how the trade says them.
  if (only.quantity.unit === options.assume || isSaid(number)) return settled(only);
  return asked([only, ...other]);
}

/**
 * Reads a quantity as `readNumber` does, and lets what the field can be choose among the meanings.
 *
 * - With a unit, or in turns: the one meaning within the range counts, two are asked, none is refused.
 * - Without one: the units of the call count where the field can be that. Where it can only be something else
 *   (482 for a lobe lift in inches, 12.24 for one) that is asked, one meaning or more: never changed in silence.
 * - Without one, and in the units of the call nothing that the field mostly is, but in the others: both are asked.
 * - Said without a unit (`four eighty-two`): the one meaning within the range counts.
 */
export function readInField(text: string, options: InField): NumberReading {
  const read = readNumber(text, options);
  if (isBare(options.kind)) return read;
  if (!read.ok && read.fault !== undefined) return read;
  const number = bareNumber(text);
  if (number !== undefined && options.assume !== undefined) return ofBareNumber(text, number, options);
  const all = meant(text, defined({ kind: options.kind, assume: options.assume, perTurn: options.perTurn }));
  const [only, ...more] = all.filter(({ quantity }) => canBe(toSi(quantity), options.range));
  if (only === undefined) return outside(all, options);
  if (more.length === 0) return settled(only);
  return number === undefined ? asked([only, ...more]) : ofSaid([only, ...more], number, options.range);
}

/** Units of a length that are said for one another: the number stays, and what it is of was mistaken. */
const MISTAKEN: Partial<Record<Unit, Unit>> = { in: 'mm', mm: 'in' };

/**
 * What a length that the field cannot be would be in the other unit, where that is something usual there: `13.36 in` of a
 * lift is 13.36 mm.
 */
export function inOtherUnit(
  { value, unit }: Quantity,
  range: FieldRange,
): (Ambiguity & { readonly quantity: Quantity })[] {
  const other = MISTAKEN[unit];
  if (other === undefined) return [];
  const quantity = { value, unit: other };
  const fits = canBe(toSi(quantity), range) && isUsual(toSi(quantity), range);
  if (canBe(toSi({ value, unit }), range) || !fits) return [];
  const readAs = formatQuantity(quantity);
  return [{ readAs, quantity, question: `Is it ${readAs}?` }];
}

/** The same for a quantity that came as number and unit: the fault, or none. */
export function outsideOf(
  { readAs, ...quantity }: Quantity & { readonly readAs: string },
  range: FieldRange,
): string | undefined {
  if (canBe(toSi(quantity), range)) return undefined;
  return `is ${readAs}; ${rangeSaid(range, dimensionOf(quantity.unit))} is allowed`;
}
