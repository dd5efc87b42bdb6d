import { memberOf } from '../../../shared/member.ts';
import type { Working } from '../../records/workings/workings.ts';

/** A quantity as the build or a working has it, to stand in a field: `.375 in`; nothing where it is none. */
export function inField(value: unknown): string {
  const amount = memberOf(value, 'value');
  const unit = memberOf(value, 'unit');
  return typeof amount === 'number' && typeof unit === 'string'
    ? `${String(amount).replace(/^(-?)0\./, '$1.')} ${unit}`
    : '';
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
