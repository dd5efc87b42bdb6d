import { expect, test } from 'vitest';
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
  ['a heading in the words of another language', 'Winkel;Spiel\n4;2,41\n6;2,21'],
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
