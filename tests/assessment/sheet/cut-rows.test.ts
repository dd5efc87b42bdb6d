import { parse } from 'csv-parse/sync';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cutRows } from '../../../server/records/pasted/cut-rows.ts';

const FILE = { delimiter: ',', rowEnd: '\r\n', longestRow: 1000 };
const TYPED = { delimiter: ',', rowEnd: '\n', longestRow: 1000, asTyped: true, skipsEmpty: true };

describe('rows by RFC 4180', () => {
  test.each([
    [
      '2, 1 and 2: rows end with CRLF, the last one with or without',
      'aaa,bbb,ccc\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    ['2, 4: spaces are part of a cell', ' a , b ', [[' a ', ' b ']]],
    [
      '2, 5: quote marks around a cell are none of it',
      '"aaa","bbb"\r\nzzz,yyy',
      [
        ['aaa', 'bbb'],
        ['zzz', 'yyy'],
      ],
    ],
    [
      '2, 6: an end of line and a comma within them',
      '"aaa","b\r\nbb","c,c"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'b\r\nbb', 'c,c'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    ['2, 7: two for one', '"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
    ['empty cells and rows', ',\r\n\r\n"",""', [['', ''], [''], ['', '']]],
    ['a mark of the order of bytes', '\uFEFFa,b', [['a', 'b']]],
    ['nothing', '', []],
  ])('%s', (_, text, cells) => {
    const read = cutRows(text, FILE);
    expect(read.ok && read.rows.map((row) => row.cells)).toEqual(cells);
  });

  test.each([
    ['one in a cell', 'a,b\r\nc"d,e'],
    ['one that is left open', 'a,b\r\n"c,d'],
    ['something behind a cell', 'a,b\r\n"c"d,e'],
  ])('a quote mark that is no part of it is told by its line: %s', (_, text) => {
    expect(cutRows(text, FILE)).toMatchObject({ ok: false, line: 2 });
  });

  test('any file is read as another reader of such files has it', () => {
    const cell = fc.string({ unit: fc.constantFrom('a', ',', '"', '\r\n', '\n', ' ', '1') });
    const quoted = cell.map((text) => `"${text.replaceAll('"', '""')}"`);
    const plain = cell.map((text) => text.replaceAll(/["\r\n,]/g, 'x'));
    const row = fc.array(fc.oneof(quoted, plain), { minLength: 1, maxLength: 4 });
    const agree = () =>
      fc.assert(
        fc.property(fc.array(row, { minLength: 1 }), (rows) => {
          const text = rows.map((cells) => cells.join(',')).join('\r\n');
          const read = cutRows(text, FILE);
          const other = parse(text, { relax_column_count: true, record_delimiter: '\r\n' });
          expect(read.ok && read.rows.map(({ cells }) => [...cells])).toEqual(other);
        }),
      );
    expect(agree).not.toThrow();
  });
});

describe('rows as people type them', () => {
  test.each([
    ['spaces around a cell say nothing', ' a ,\tb , "c" \n', [['a', 'b', 'c']]],
    [
      'a quote mark is one of inches',
      '.350",7/16"\n"a"b,c',
      [
        ['.350"', '7/16"'],
        ['"a"b', 'c'],
      ],
    ],
    ['empty rows are passed over', '\n , ,\n\na\n\n', [['a']]],
  ])('%s', (_, text, cells) => {
    const read = cutRows(text, TYPED);
    expect(read.ok && read.rows.map((row) => row.cells)).toEqual(cells);
  });

  test('each row has the line on which it begins', () => {
    const read = cutRows('\n\na\n"b\n\nc",d\ne', TYPED);
    expect(read.ok && read.rows.map(({ line }) => line)).toEqual([3, 4, 7]);
  });

  test('no more than one row too long is looked at', () => {
    expect(cutRows(`a\n${'b,'.repeat(1_000_000)}`, TYPED)).toMatchObject({ ok: false, line: 2 });
    expect(cutRows(`a\n"${'b,'.repeat(1_000_000)}"`, TYPED)).toMatchObject({ ok: false, line: 2 });
  });
});
