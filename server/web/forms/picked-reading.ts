import type { PossibleReading } from '../../../shared/problems/faults.ts';
import type { FieldRange } from '../../../shared/quantities/field-range.ts';
import { readInField } from '../../../shared/quantities/read-in-field.ts';
import type { Dimension, Quantity, Unit } from '../../../shared/quantities/units.ts';

/*
 * An entry that can be read in more than one way, or in one that nobody said, comes back with its readings to pick
 * from. What was picked goes beside the entry, which stays as it was typed.
 */

const SUFFIX = '~as';

/** The field that a picked reading of `name` comes in. */
export const pickName = (name: string): string => `${name}${SUFFIX}`;

export const isPick = (field: string): boolean => field.endsWith(SUFFIX);

/** What was picked in a form, for whoever passes on some of its fields. */
export const picksOf = (fields: Readonly<Record<string, string>>): Record<string, string> =>
  Object.fromEntries(Object.entries(fields).filter(([field]) => isPick(field)));

/** `482 thou`: a reading as the pick of it is sent. */
export const pickValue = ({ quantity: { value, unit } }: Pick<PossibleReading, 'quantity'>): string =>
  `${value} ${unit}`;

interface Place {
  readonly dimension: Dimension;
  readonly canBe?: FieldRange;
  readonly canBeByKind?: readonly FieldRange[];
  readonly assume: Unit;
}

/** What was picked, if what is typed can still be read so: a pick of what stood there before counts for nothing. */
export function pickedFrom(
  text: string,
  pick: string | undefined,
  { dimension, canBe, canBeByKind = [], assume }: Place,
): Quantity | undefined {
  if (pick === undefined || pick === '' || canBe === undefined) return undefined;
  const quantities = [canBe, ...canBeByKind].flatMap((range) => {
    const read = readInField(text, { kind: dimension, assume, range });
    if (read.ok || read.fault !== undefined) return [];
    return read.ambiguities.flatMap(({ quantity }) => ('unit' in quantity ? [quantity] : []));
  });
  return quantities.find((quantity) => pickValue({ quantity }) === pick);
}
