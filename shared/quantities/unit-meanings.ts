import { meaning, meaningsIn, tidy } from './echo.ts';
import { allowedUnits, type BareKind, kindName } from './kind-words.ts';
import {
  lengthInMil,
  lengthInParts,
  lengthInTenths,
  lengthInUnit,
  lengthWithoutUnit,
} from './length-meanings.ts';
import { quoteText } from './normalise-text.ts';
import { type Meaning, type NumberRefused, type ReadOptions, refuse } from './number-types.ts';
import type { NumberValue } from './number-value.ts';
import { type NamedUnit, unitOfWords } from './unit-words.ts';
import { type Dimension, dimensionOf, isUnit, type Unit } from './units.ts';

type Meanings = readonly Meaning[] | NumberRefused;

/** A ratio, turns or a count: a number without a dimension. */
export function bareMeanings(number: NumberValue, kind: BareKind, came: string): Meanings {
  if (kind === 'count') {
    const whole = number.readings.filter((reading) => Number.isInteger(reading.value) && number.sign > 0);
    if (whole.length === 0)
      return refuse('out-of-range', `${came} is not a count; give a whole number from 0 up.`);
    return whole.map((reading) => meaning(reading.value, undefined, whole.length > 1 ? reading : {}));
  }
  const run = number.run;
  if (run === undefined) return meaningsIn(number, undefined);
  if (kind === 'turns') {
    return refuse(
      'not-a-number',
      `${came} leaves open where the turns end; say it as "three turns forty-two".`,
    );
  }
  const head = run.groups[0] ?? '';
  const scale = head.length === 1 && head !== '0' ? 10 ** (run.digits.length - 1) : 1;
  return [meaning(number.sign * tidy((Number(run.digits) + run.part) / scale), undefined)];
}

/** Without a unit: what the assumed one allows, or a fault that names the units. */
export function unitlessMeanings(
  number: NumberValue,
  dimension: Dimension,
  assume: Unit | undefined,
  came: string,
): Meanings {
  const assumed = assume === undefined ? [] : meaningsIn(number, assume);
  const meanings = dimension === 'length' ? lengthWithoutUnit(number, assume) : assumed;
  if (meanings.length > 0) return meanings;
  const bare = `a bare number is not ${dimension === 'angle' ? 'an' : 'a'} ${kindName(dimension)}`;
  return refuse(
    'wrong-dimension',
    `${came} has no unit, and ${bare}; add one of ${allowedUnits(dimension)}.`,
  );
}

function dimensionNamed(unit: NamedUnit): Dimension | 'turns' {
  if (isUnit(unit)) return dimensionOf(unit);
  return unit === 'turn' ? 'turns' : 'length';
}

/** Pounds are a load or a mass, degrees an angle or a rise of temperature: the kind decides. */
function unitsFor(unit: NamedUnit, options: ReadOptions): NamedUnit[] {
  if (options.kind === 'load' && unit === 'lb') return ['lbf'];
  if (options.kind === 'temperature-rise' && unit === 'deg') {
    const assumed = options.assume === 'degF' || options.assume === 'degC' ? options.assume : undefined;
    return assumed === undefined ? ['degF', 'degC'] : [assumed];
  }
  return [unit];
}

function inOneUnit(number: NumberValue, unit: NamedUnit): Meaning[] {
  if (unit === 'mil') return lengthInMil(number);
  if (unit === 'tenth') return lengthInTenths(number);
  if (unit === 'tenth-inch') return lengthInParts(number, 10);
  if (unit === 'tenth-mm') return lengthInParts(number, 10, { of: 'mm' });
  if (unit === 'hundredth-mm') return lengthInParts(number, 100, { of: 'mm' });
  if (unit === 'ten-thousandth') return lengthInParts(number, 10_000);
  if (!isUnit(unit)) return [];
  return dimensionOf(unit) === 'length' ? lengthInUnit(number, unit) : meaningsIn(number, unit);
}

/** The meanings of a number with the words of a unit after it. */
export function unitMeanings(
  number: NumberValue,
  words: readonly string[],
  options: ReadOptions,
  came: string,
): Meanings {
  const allowed = allowedUnits(options.kind);
  const written = quoteText(words.join(' '));
  const turns = words.some((word) => unitOfWords([word]) === 'turn');
  const named = turns ? 'turn' : unitOfWords(words);
  if (named === undefined) {
    return refuse('unknown-unit', `${came}: the unit ${written} is not known; use ${allowed}.`);
  }
  const units = unitsFor(named, options).filter((unit) => dimensionNamed(unit) === options.kind);
  if (units.length > 0) return units.flatMap((unit) => inOneUnit(number, unit));
  const kind = kindName(options.kind);
  return refuse(
    'wrong-dimension',
    `${came} has the unit ${written}, which is not one of a ${kind}; use ${allowed}.`,
  );
}
