import type { Bounds, EvidenceEntry } from '../../../server/mechanics/assessment/evidence.ts';
import type { Entry } from '../../../server/records/corrections/entries.ts';
import { defined } from '../../../shared/defined.ts';
import { formatQuantity } from '../../../shared/quantities/format.ts';
import { UNITS, type Unit } from '../../../shared/quantities/units.ts';
import type { Entered } from '../../../shared/schemas/entered.ts';
import type { Gauged } from '../../../shared/schemas/gauged.ts';

export const CALL = '0197d3a0-0000-7000-8000-000000000001';
export const AT = new Date('2026-03-01T09:00:00Z');
export const WHO = { by: 'Robin at the desk', byKind: 'staff', at: AT };

export const typed = (si: number, unit: Unit): Entered => {
  const value = si / UNITS[unit].toSi;
  const readAs = formatQuantity({ value, unit });
  return { typed: readAs, value, unit, readAs };
};
export const inches = (si: number) => typed(si, 'in');
export const ifKnown = (si: number | undefined, unit: Unit = 'in') =>
  si === undefined ? undefined : typed(si, unit);

export const entry = ({ id, line, standing }: EvidenceEntry): Entry => ({
  id,
  seq: line,
  replaces: undefined,
  replacedBy: standing ? undefined : 'later',
  struck: false,
  reason: '',
  ...WHO,
});

export const gauged = ({ value, low, high }: Bounds, readAs: string): Gauged => {
  const part = (si: number | undefined) => (si === undefined ? undefined : si / UNITS.in.toSi);
  return {
    typed: readAs,
    readAs,
    unit: 'in',
    ...defined({ value: part(value), low: part(low), high: part(high) }),
  };
};

/** Parts that are not there are left out, as JSON of the record has them. */
export function without<T extends object>(parts: T): T;
export function without(parts: object): object {
  return defined(parts);
}
