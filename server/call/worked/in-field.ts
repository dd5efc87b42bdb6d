import { memberOf } from '../../../shared/member.ts';
import type { Gauged } from '../../../shared/schemas/gauged.ts';
import type { Working } from '../../records/workings/workings.ts';

/**
 * A quantity as an entry, the build or a working has it, to stand in a field: `.375 in`; nothing where it is none. What was
 * typed and how it was understood are for reading: `11/32 in = .34375 in` is no entry that a field reads.
 */
export function inField(value: unknown): string {
  const amount = memberOf(value, 'value');
  const unit = memberOf(value, 'unit');
  return typeof amount === 'number' && typeof unit === 'string'
    ? `${String(amount).replace(/^(-?)0\./, '$1.')} ${unit}`
    : '';
}

/** A length as it was found, to stand in a field again: its figure, or the gauges that it lies between. */
export function gaugedInField(gap: Omit<Gauged, 'typed' | 'readAs'>): string {
  const { value, low, high, unit } = gap;
  if (value !== undefined) return inField({ value, unit });
  return [
    ...(low === undefined ? [] : [`more than ${inField({ value: low, unit })}`]),
    ...(high === undefined ? [] : [`less than ${inField({ value: high, unit })}`]),
  ].join(', ');
}

/** Words or a bare number, to stand in a field. */
export const textInField = (value: unknown): string =>
  typeof value === 'string' || typeof value === 'number' ? String(value) : '';

/** What went into the newest of these computations under a name, where one of them has it. */
export function lastInput(
  workings: readonly Working[],
  computations: readonly string[],
  name: string,
): unknown {
  for (const { computation, inputs } of workings.toReversed()) {
    const found = computations.includes(computation) ? memberOf(inputs, name) : undefined;
    if (found !== undefined) return found;
  }
  return undefined;
}
