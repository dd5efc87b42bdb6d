import { register } from '../../../server/compute/registry.ts';
import type { AnyComputation } from '../../../server/mechanics/kit/computation.ts';
import { InputFaults } from '../../../shared/problems/faults.ts';
import type { UnitSystem } from '../../../shared/quantities/units.ts';

function child(parent: unknown, key: string): unknown {
  return typeof parent === 'object' && parent !== null ? Reflect.get(parent, key) : undefined;
}

/** What stands at a dotted path of an answer (`loads.0.seatLoad`); of a quantity, its number. */
export function partOf(result: unknown, path: string): unknown {
  const here = path.split('.').reduce(child, result);
  return child(here, 'unit') === undefined ? here : child(here, 'value');
}

export function runner(computation: AnyComputation) {
  const registered = computation.open(register);
  const run = (body: unknown, units: UnitSystem = 'inch') => registered.run(body, units);

  /** One number of the answer. */
  function number(body: unknown, path: string, units: UnitSystem = 'inch'): number {
    const part = partOf(run(body, units).result, path);
    if (typeof part !== 'number') throw new Error(`no number at ${path}: ${String(part)}`);
    return part;
  }

  /** `pointer code` of every fault, sorted; an answer is a failure of the test. */
  function faults(body: unknown): string[] {
    try {
      const answer = run(body);
      throw new Error(`answered ${JSON.stringify(answer.result)} instead of refusing`);
    } catch (error) {
      if (!(error instanceof InputFaults)) throw error;
      return error.faults.map(({ pointer, code }) => `${pointer} ${code}`).sort();
    }
  }

  return { registered, run, number, faults };
}
