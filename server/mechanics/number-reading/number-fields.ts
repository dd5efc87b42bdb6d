import { z } from 'zod';
import { isUnit, UNITS, type Unit } from '../../../shared/quantities/units.ts';
import { choice } from '../../../shared/schemas/fields.ts';
import { outNumber } from '../../../shared/schemas/outputs.ts';

/** What a typed or spoken number can be. */
export const numberKind = choice(
  ['length', 'angle', 'load', 'rate', 'speed', 'mass', 'ratio', 'turns'],
  'what the number is',
);

export type ReadKind = z.output<typeof numberKind>;

const UNIT_NAMES = Object.keys(UNITS);

/** The unit taken for a number that comes without one. */
export const assumedUnit = z
  .unknown()
  .transform((raw, ctx): Unit => {
    if (typeof raw === 'string' && isUnit(raw)) return raw;
    const message = `must be one of ${UNIT_NAMES.join(', ')}`;
    ctx.addIssue({ code: 'custom', message, params: { fault: 'unknown-unit' } });
    return z.NEVER;
  })
  .meta({ type: 'string', enum: UNIT_NAMES, description: 'unit of a number that comes without one' });

const outUnit = z.enum(UNIT_NAMES).meta({ description: 'the unit as it was read' });

/** A quantity in the unit it was read in, not in the units asked for. */
export const readQuantityOut = z
  .object({ value: outNumber('its number'), unit: outUnit })
  .meta({ description: 'the quantity in the unit it was read in' });

/** One meaning of several: a quantity, or a bare number. */
export const meaningOut = z
  .object({ value: outNumber('its number'), unit: outUnit.optional() })
  .meta({ description: 'what it would be' });
