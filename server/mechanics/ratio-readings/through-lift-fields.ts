import { z } from 'zod';
import { type InputFault, InputFaults } from '../../../shared/problems/faults.ts';
import { listOf } from '../../../shared/schemas/fields.ts';
import { length, load, rate } from '../../../shared/schemas/quantity-fields.ts';

const pair = z.strictObject({
  lobeLift: length('rise of the lifter', { sign: 'not-negative' }),
  valveLift: length('lift of the valve at that rise', { sign: 'not-negative' }),
});

const pairs = (description: string) => listOf(pair, description, 3);

export const lightPass = pairs('stations on the light spring, rising, three at the least');

export const runningPass = z
  .strictObject({
    pairs: pairs('the stations again under the running spring, rising'),
    springSeatLoad: load('load of the running spring with the valve shut'),
    springRate: rate('rate of the running spring'),
  })
  .meta({ description: 'a second pass under the running spring' });

export type Pair = z.output<typeof pair>;
export type RunningPass = z.output<typeof runningPass>;

function fallsAt(list: readonly Pair[], prefix: string): InputFault[] {
  return list.slice(1).flatMap((next, before) =>
    (['lobeLift', 'valveLift'] as const).flatMap((field): InputFault[] => {
      if (next[field] > (list[before]?.[field] ?? 0)) return [];
      const pointer = `${prefix}/${before + 1}/${field}`;
      return [{ pointer, code: 'impossible-input', detail: 'must be above the one before: stations rise' }];
    }),
  );
}

/**
 * Holds the stations of both passes to rising.
 *
 * @param light [m] stations on the light spring
 * @param running [m] stations under the running spring, if any
 * @throws impossible-input when a lift is not above the one before
 */
export function refuseFalling(light: readonly Pair[], running: readonly Pair[]): void {
  const faults = [...fallsAt(light, '/pairs'), ...fallsAt(running, '/secondPass/pairs')];
  if (faults.length > 0) throw new InputFaults(faults.slice(0, 100));
}
