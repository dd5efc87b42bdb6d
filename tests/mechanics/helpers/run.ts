import { expect } from 'vitest';
import { type Answer, register } from '../../../server/compute/registry.ts';
import type { AnyComputation } from '../../../server/mechanics/kit/computation.ts';
import { type InputFault, InputFaults } from '../../../shared/problems/faults.ts';
import { valueAt } from '../../../shared/problems/pointer.ts';
import type { Unit, UnitSystem } from '../../../shared/quantities/units.ts';

export const quantity = (value: number, unit: Unit) => ({ value, unit });
export const inch = (value: number) => quantity(value, 'in');
export const mm = (value: number) => quantity(value, 'mm');
export const deg = (value: number) => quantity(value, 'deg');

/** A computation run as a client runs it: JSON in, JSON out. */
export interface Runner {
  answer(body: unknown, system?: UnitSystem): Answer;
  /** The number at a pointer into the result; a quantity's own value where one stands. */
  number(body: unknown, pointer: string, system?: UnitSystem): number;
  /** All numbers of a list in the result, each at `pointer` within its item. */
  numbers(body: unknown, list: string, pointer?: string): number[];
  faults(body: unknown): readonly InputFault[];
  /** Faults as `pointer code`, in the order they came. */
  refused(body: unknown): string[];
  readonly example: { readonly inputs: { readonly [key: string]: unknown }; readonly result: unknown };
}

function numberAt(document: unknown, pointer: string): number {
  const found = valueAt(document, pointer);
  const value = typeof found === 'object' ? valueAt(found, '/value') : found;
  if (typeof value !== 'number') throw new Error(`no number at ${pointer} of ${JSON.stringify(document)}`);
  return value;
}

export function runnerOf(computation: AnyComputation): Runner {
  const registered = computation.open(register);
  const answer = (body: unknown, system: UnitSystem = 'inch') => registered.run(body, system);
  const faults = (body: unknown): readonly InputFault[] => {
    try {
      answer(body);
    } catch (error) {
      if (error instanceof InputFaults) return error.faults;
      throw error;
    }
    return [];
  };
  return {
    answer,
    faults,
    number: (body, pointer, system = 'inch') => numberAt(answer(body, system).result, pointer),
    numbers(body, list, pointer = '') {
      const items = valueAt(answer(body).result, list);
      if (!Array.isArray(items)) throw new Error(`no list at ${list}`);
      return items.map((item) => numberAt({ item }, `/item${pointer}`));
    },
    refused: (body) => faults(body).map((fault) => `${fault.pointer} ${fault.code}`),
    example: registered.example,
  };
}

/** Below this a double has lost its figures. */
const TINY = 1e-290;

/** Holds two numbers to each other with a relative tolerance; nought is held to within the tolerance itself. */
export function expectClose(found: number, wanted: number, relative = 1e-9): void {
  const within = relative * Math.max(Math.abs(wanted), wanted === 0 ? 1 : TINY);
  expect(Math.abs(found - wanted), `${found} against ${wanted}`).toBeLessThanOrEqual(within);
}

/** Holds two documents to each other: the same shape and words, numbers with a relative tolerance. */
export function expectSame(found: unknown, wanted: unknown): void {
  if (typeof wanted === 'number' && typeof found === 'number') {
    expectClose(found, wanted);
    return;
  }
  if (typeof wanted !== 'object' || wanted === null || typeof found !== 'object' || found === null) {
    expect(found).toEqual(wanted);
    return;
  }
  expect(Object.keys(found).sort()).toEqual(Object.keys(wanted).sort());
  for (const [key, part] of Object.entries(wanted)) expectSame(Reflect.get(found, key), part);
}
