import { expect } from 'vitest';
import type { AnyComputation } from '../../../server/mechanics/kit/computation.ts';
import { FAULT_CODES, InputFaults } from '../../../shared/problems/faults.ts';
import { processorTimeOf } from './processor-time.ts';
import { type Runner, runner } from './runner.ts';

const many = (count: number, item: unknown) => Array.from({ length: count }, () => item);

/** What a client might send in place of any field. */
const HOSTILE: readonly unknown[] = [
  null,
  true,
  'NaN',
  'Infinity',
  '',
  '1e999 in',
  '-.001 in',
  '🔧',
  'x'.repeat(5000),
  0,
  1,
  -1,
  1e308,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  {},
  [],
  [[]],
  { value: 1e308, unit: 'in' },
  { value: 1e308, unit: 'deg' },
  { value: Number.NaN, unit: 'in' },
  { value: '1', unit: 'in' },
  { value: 1, unit: 'furlong' },
  { value: 1, unit: 'in', more: 1 },
  { value: 1, unit: 'lbf' },
  { value: -1, unit: 'in' },
  { value: 0, unit: 'in' },
  { value: 5e-324, unit: 'in' },
  { value: 100, unit: 'in' },
  { value: 5e-324, unit: 'deg' },
  { value: 1440, unit: 'deg' },
  { value: -1440, unit: 'deg' },
  { value: 0, unit: 'deg' },
  many(2000, { value: 1, unit: 'deg' }),
  many(2000, 1),
  many(100_000, { value: 1, unit: 'in' }),
  { values: many(100_000, 1), unit: 'deg' },
  JSON.parse('{"__proto__": {"value": 1, "unit": "in"}}'),
];

function expectFinite(document: unknown): void {
  if (typeof document === 'number') expect(Number.isFinite(document)).toBe(true);
  expect(document).not.toBeNull();
  if (typeof document === 'object' && document !== null) Object.values(document).forEach(expectFinite);
}

/** Either a sound answer with no NaN or null in it, or faults that each have a pointer, a known code and a sentence. */
function expectAnswer({ run }: Runner, body: unknown, below: string): void {
  try {
    expectFinite(run(body).result);
  } catch (error) {
    if (!(error instanceof InputFaults)) throw error;
    expect(error.faults.length).toBeGreaterThan(0);
    for (const fault of error.faults) {
      expect(FAULT_CODES).toContain(fault.code);
      expect(fault.detail.length).toBeGreaterThan(5);
      expect(JSON.stringify(fault).length).toBeLessThan(3000);
    }
    if (below !== '' && error.faults.every((fault) => fault.code !== 'impossible-input')) {
      expect(error.faults.every((fault) => fault.pointer.startsWith(below))).toBe(true);
    }
  }
}

/**
 * Lists of 2 000 are taken, and each of their items may be used some twenty times. What went with the
 * square of the list, or took the longer lists too, would come to millions.
 */
const MOST_PROCESSOR_TIME = 100_000;

function expectSound(run: Runner, body: unknown, below = ''): void {
  expect(processorTimeOf(() => expectAnswer(run, body, below))).toBeLessThan(MOST_PROCESSOR_TIME);
}

/** Puts every hostile value in place of every field of a good body, and bodies that are none. */
export function expectSoundUnderFire(
  computation: AnyComputation,
  good: { readonly [key: string]: unknown },
): void {
  const run = runner(computation);
  for (const hostile of HOSTILE) {
    expectSound(run, hostile);
    for (const field of Object.keys(good)) expectSound(run, { ...good, [field]: hostile }, `/${field}`);
  }
  for (const field of Object.keys(good)) {
    const { [field]: _gone, ...rest } = good;
    expectSound(run, rest);
  }
  const polluted: unknown = JSON.parse(`${JSON.stringify(good).slice(0, -1)},"__proto__":{"admin":1}}`);
  expect(run.refused(polluted)).toEqual(['/__proto__ unknown-field']);
  expect(run.refused({ ...good, surprise: 1 })).toEqual(['/surprise unknown-field']);
  expect(run.refused([])).toEqual([' not-allowed']);
}
