import { expect } from 'vitest';
import { type Answer, register } from '../../../server/compute/registry.ts';
import type { AnyComputation } from '../../../server/mechanics/kit/computation.ts';
import { memberOf } from '../../../shared/member.ts';
import type { UnitSystem } from '../../../shared/quantities/units.ts';
import { faultsOf } from './faults-of.ts';

/** A caution is a sentence to be read aloud; an assumption goes on from “this assumes”; neither is said twice. */
function expectWellSaid({ assumptions, cautions }: Answer): void {
  for (const caution of cautions) expect(caution, 'a caution').toMatch(/^["“\p{Lu}\d].*[.?!]$/su);
  for (const assumption of assumptions) expect(assumption, 'an assumption').toMatch(/^[^\p{Lu}].*[^.\s]$/su);
  expect(new Set([...assumptions, ...cautions]).size).toBe(assumptions.length + cautions.length);
}

/** On record at a dotted path of an answer (`loads.0.seatLoad`); of a quantity, its number. */
export function partOf(result: unknown, path: string): unknown {
  const here = path.split('.').reduce(memberOf, result);
  return memberOf(here, 'unit') === undefined ? here : memberOf(here, 'value');
}

function numberAt(result: unknown, path: string): number {
  const part = partOf(result, path);
  if (typeof part !== 'number') throw new Error(`no number at ${path}: ${String(part)}`);
  return part;
}

/** A computation run as a client runs it: JSON in, JSON out. */
export function runner(computation: AnyComputation) {
  const registered = computation.open(register);
  const run = (body: unknown, units: UnitSystem = 'inch'): Answer => {
    const answer = registered.run(body, units);
    expectWellSaid(answer);
    return answer;
  };

  /** One number of the answer. */
  function number(body: unknown, path: string, units: UnitSystem = 'inch'): number {
    return numberAt(run(body, units).result, path);
  }

  /** The numbers of a list in the answer: its items, or what is on record at `path` within each. */
  function numbers(body: unknown, list: string, path = ''): number[] {
    const items = partOf(run(body).result, list);
    if (!Array.isArray(items)) throw new Error(`no list at ${list}`);
    return items.map((item) => numberAt({ item }, path === '' ? 'item' : `item.${path}`));
  }

  const refused = (body: unknown): string[] => faultsOf(() => run(body));

  /** The same, sorted; an answer is a failure of the test. */
  function faults(body: unknown): string[] {
    const told = refused(body).sort();
    if (told.length === 0)
      throw new Error(`answered ${JSON.stringify(run(body).result)} instead of refusing`);
    return told;
  }

  return { registered, run, number, numbers, refused, faults };
}

export type Runner = ReturnType<typeof runner>;
