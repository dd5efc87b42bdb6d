import { describe, expect, test, vi } from 'vitest';
import { readScanRows } from '../../../server/records/gap-scans/scan-rows.ts';

const READ = '4:2.41 mm 6:2.21 mm';

/* Rows as spreadsheets and people write them; figures invented. */
test.each([
  ['a semicolon, the comma being the decimal one', '4;2,41\n6;2,21'],
  ['the same with a mark at the end of each', '4;2,41;\n6;2,21;'],
  ['a blank', '4 2,41\n6 2,21'],
  ['a comma and a blank', '4, 2,41\n6, 2,21'],
  ['a tab, and the side said', '4 after\t2,41\n6 ATDC\t2,21'],
  ['quoted cells', '"4","2,41"\n"6","2,21"'],
  ['a heading that names the unit', 'Crank (deg);Gap (mm)\n4;2,41\n6;2,21'],
  ['a unit in each row', '4, 2.41 mm\n6,2.21 mm'],
])('%s', (_, text) => {
  const { readings, faults } = readScanRows(text, 'mm');
  expect(faults).toEqual([]);
  expect(readings.map(({ crankAngle, gap }) => `${crankAngle.value}:${gap.readAs}`).join(' ')).toBe(READ);
});

test('commas that may part the columns anywhere are asked about', () => {
  expect(readScanRows('4,2,41', 'mm').faults).toMatchObject([{ line: 1, column: 'row' }]);
});

/** What was read, of rows whose gaps without a unit are inches. */
const readOf = (text: string) => {
  const { readings, faults } = readScanRows(text, 'in');
  expect(faults).toEqual([]);
  return readings.map(({ crankAngle, gap }) => `${crankAngle.readAs}: ${gap.readAs}`);
};

/* Headings as people and spreadsheets write them; figures invented. */
describe('headings', () => {
  test.each([
    [
      'a unit in square brackets',
      'Crank angle [deg]\tGap [thou]\n10\t112',
      '10° after TDC: 112 thou = .112 in',
    ],
    ['in round ones', 'Deg;Clearance (mm)\n10;2,84', '10° after TDC: 2.84 mm'],
    ['after a comma, within quotes', '"Crank, deg";"Gap, mm"\n"10";"2,84"', '10° after TDC: 2.84 mm'],
    ['a bare unit', 'deg,mm\n10,2.84', '10° after TDC: 2.84 mm'],
    ['with a blank between', 'crank gap thou\n10 112', '10° after TDC: 112 thou = .112 in'],
    ['the gap first', 'Gap [mm];Crank angle\n2,84;10', '10° after TDC: 2.84 mm'],
    ['before TDC', 'BTDC;Gap [thou]\n10;112', '10° before TDC: 112 thou = .112 in'],
    ['after TDC', 'Degrees ATDC\tPiston to valve\n10\t.112', '10° after TDC: .112 in'],
    ['the dead centre itself has no side', 'BTDC;Gap\nTDC;.112', 'TDC: .112 in'],
    ['quoted decimal commas between commas', '"Crank","Gap [mm]"\n"10","2,84"', '10° after TDC: 2.84 mm'],
    [
      'a unit in the cell goes before that of the heading',
      'Crank;Gap [thou]\n10;2,84 mm',
      '10° after TDC: 2.84 mm',
    ],
  ])('%s', (_, text, read) => {
    expect(readOf(text)).toEqual([read]);
  });

  test('a column before and one after TDC', () => {
    expect(readOf('BTDC;ATDC;Gap [thou]\n4;;120\n;4;118\n;10;112')).toEqual([
      '4° before TDC: 120 thou = .120 in',
      '4° after TDC: 118 thou = .118 in',
      '10° after TDC: 112 thou = .112 in',
    ]);
  });

  test('a row with both is no reading, nor one with a minus under BTDC', () => {
    expect(readScanRows('BTDC;ATDC;Gap\n4;6;.12', 'in').faults).toMatchObject([{ line: 2, column: 'row' }]);
    expect(readScanRows('BTDC;Gap\n-4;.12', 'in').faults).toMatchObject([{ line: 2, column: 'crank angle' }]);
  });

  test.each([
    ['Winkel;Spiel\n4;2,41', 'Winkel'],
    ['Crank;Drop\n4;.1', 'Drop'],
    ['Crank;Gap;Remark\n4;.1;first', 'Remark'],
    ['Crank;Gap [furlongs]\n4;.1', 'Gap [furlongs]'],
    ['Crank;Gap mm or thou, at what angle\n4;.1', 'Gap mm or thou, at what angle'],
  ])('%j: the heading that is not known is named, with what is allowed', (text, named) => {
    const { readings, faults } = readScanRows(text, 'mm');
    expect(readings).toEqual([]);
    expect(faults).toMatchObject([{ line: 1, column: 'heading', received: named }]);
    expect(faults[0]?.detail).toContain(
      `“${named}” is no heading of a scan; allowed are crank angle, BTDC or ATDC`,
    );
  });

  test('two gaps, or none, are asked for', () => {
    for (const text of ['Crank;Gap;Gap\n4;.1;.2', 'BTDC;ATDC\n4;5'])
      expect(readScanRows(text, 'in').faults).toMatchObject([{ line: 1, column: 'heading' }]);
  });

  test('words that are said are a row, no heading', () => {
    expect(readOf('ten after, one twelve')).toEqual(['10° after TDC: 112 thou = .112 in']);
  });
});

describe('what is far too long', () => {
  const LONG = 1_000_000;
  test.each([
    ['a heading of one word', `${'g'.repeat(LONG)};Gap\n4;.1`, 'heading'],
    ['a heading of blanks', `Crank${' '.repeat(LONG)}x;Gap\n4;.1`, 'heading'],
    ['a heading of brackets', `${'['.repeat(LONG)};Gap\n4;.1`, 'heading'],
    ['a row', `Crank;Gap\n4;${'1 '.repeat(LONG / 2)}`, 'row'],
  ])('%s: no pattern is tried on it, and it is not sent back whole', (_, text, column) => {
    const exec = vi.spyOn(RegExp.prototype, 'exec');
    const { faults } = readScanRows(text, 'in');
    const tried = exec.mock.calls.map(([tried]) => tried.length);
    exec.mockRestore();
    expect(faults).toMatchObject([{ column }]);
    expect(faults[0]?.received.length).toBeLessThanOrEqual(80);
    expect(tried.length).toBeGreaterThan(0);
    expect(Math.max(...tried)).toBeLessThanOrEqual(200);
  });
});
