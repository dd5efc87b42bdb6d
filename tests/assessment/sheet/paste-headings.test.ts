import { describe, expect, test, vi } from 'vitest';
import { readPasted } from '../../../server/records/sheet/paste.ts';

/* Headings as people and spreadsheets write them; figures invented. */
const readOf = (text: string) => {
  const { readings, faults } = readPasted({ text, unit: 'in' }, undefined);
  expect(faults).toEqual([]);
  return readings.map(
    ({ cylinder, valve, kind, reading }) => `${cylinder} ${valve} ${kind} ${reading.readAs}`,
  );
};

describe('units in a heading', () => {
  test.each([
    ['in square brackets', 'Cyl\tValve\tLash [thou]\n1\tI\t16', '1 intake lash 16 thou = .016 in'],
    ['in round ones', 'Cyl;Valve;Lash (mm)\n1;I;0,41', '1 intake lash 0.41 mm'],
    ['after a comma, in quotes', '"Cyl","Valve","Lash, mm"\n"1","I","0,41"', '1 intake lash 0.41 mm'],
    ['after a blank', 'Cyl;Valve;Lash mm\n1;I;0,41', '1 intake lash 0.41 mm'],
    ['as the mark of inches', 'Cyl\tValve\tLobe lift (″)\n1\tE\t.361', '1 exhaust lobe-lift .361 in'],
    ['the intake is no inch', 'Cyl\tLobe lift in\n1\t.348', '1 intake lobe-lift .348 in'],
  ])('%s', (_, text, read) => {
    expect(readOf(text)).toEqual([read]);
  });
});

test('a heading that is not known is named, with what is allowed', () => {
  const { readings, faults } = readPasted({ text: 'Cyl;Valve;Torque [Nm]\n1;I;30', unit: 'in' }, undefined);
  expect(readings).toEqual([]);
  expect(faults).toMatchObject([{ line: 1, column: 'Torque [Nm]', received: 'Torque [Nm]' }]);
  expect(faults[0]?.detail).toMatch(/no heading of a sheet: cylinder, valve, lobe lift/);
});

test.each([
  ['three thousand blanks', `Lash${' '.repeat(3_000)}x`, 'longer than 80'],
  ['three thousand brackets', `Lash ${'('.repeat(3_000)}mm`, 'longer than 80'],
  ['a million blanks', `Lash${' '.repeat(1_000_000)}x`, 'a row of more than 4000 signs'],
  ['a million brackets', `Lash ${'('.repeat(1_000_000)}mm`, 'a row of more than 4000 signs'],
  ['a million letters', 'l'.repeat(1_000_000), 'a row of more than 4000 signs'],
])('a heading of %s: no pattern is tried on it, and it is not sent back whole', (_, heading, said) => {
  const exec = vi.spyOn(RegExp.prototype, 'exec');
  const { faults } = readPasted({ text: `Cyl;Valve;${heading}\n1;I;.1`, unit: 'in' }, undefined);
  const tried = exec.mock.calls.map(([text]) => text.length);
  exec.mockRestore();
  expect(faults).toMatchObject([{ line: 1, detail: expect.stringContaining(said) }]);
  expect(faults[0]?.received.length).toBeLessThanOrEqual(80);
  expect(Math.max(...tried)).toBeLessThanOrEqual(80);
});
