import { expect } from 'vitest';
import { type NumberRead, type ReadOptions, readNumber } from '../../../shared/quantities/read-number.ts';

export const LENGTH: ReadOptions = { kind: 'length' };
export const INCHES: ReadOptions = { kind: 'length', assume: 'in' };
export const DIAL: ReadOptions = { kind: 'turns', perTurn: { value: 0.1, unit: 'in' } };

/** The reading of a text that has one meaning. */
export function read(text: string, options: ReadOptions): NumberRead {
  const reading = readNumber(text, options);
  if (!reading.ok) expect.fail(`${text}: ${JSON.stringify(reading)}`);
  return reading;
}

/** The quantities that a text is asked about, in order. */
export function asked(text: string, options: ReadOptions) {
  const reading = readNumber(text, options);
  if (reading.ok || reading.fault !== undefined) expect.fail(`${text}: ${JSON.stringify(reading)}`);
  expect(reading.ambiguities.length).toBeGreaterThan(1);
  for (const each of reading.ambiguities) expect(each.question).toContain('?');
  return reading.ambiguities.map((each) => each.quantity);
}

/** The fault of a text that can't be read. */
export function refused(text: string, options: ReadOptions) {
  const reading = readNumber(text, options);
  if (reading.ok || reading.fault === undefined) expect.fail(`${text}: ${JSON.stringify(reading)}`);
  return reading.fault;
}
