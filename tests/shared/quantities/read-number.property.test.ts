import fc from 'fast-check';
import { expect, test } from 'vitest';
import { formatQuantity } from '../../../shared/quantities/format.ts';
import { type NumberKind, readNumber } from '../../../shared/quantities/read-number.ts';
import { dimensionOf, isUnit, UNITS } from '../../../shared/quantities/units.ts';
import { read } from './reading-helpers.ts';

const units = Object.keys(UNITS).filter(isUnit);
const kinds: NumberKind[] = [...new Set<NumberKind>(units.map(dimensionOf)), 'ratio', 'turns', 'count'];
const unit = fc.constantFrom(...units);

test('what is written is read as the same number in the same unit', () => {
  const decimal = fc.tuple(fc.integer({ min: -99_999_999, max: 99_999_999 }), fc.integer({ min: 0, max: 6 }));
  fc.assert(
    fc.property(decimal, unit, ([digits, places], each) => {
      const value = digits === 0 ? 0 : Number(`${digits}e${-places}`);
      const answer = read(formatQuantity({ value, unit: each }), { kind: dimensionOf(each) });
      expect(answer).toMatchObject({ value, unit: each });
    }),
    { numRuns: 2000 },
  );
});

test('a derived length is read as the rounded number', () => {
  fc.assert(
    fc.property(fc.double({ min: -100, max: 100, noNaN: true }), (value) => {
      const answer = read(formatQuantity({ value, unit: 'in' }, { derived: true }), { kind: 'length' });
      expect(Math.abs(answer.value - value)).toBeLessThanOrEqual(0.00005 * (1 + 1e-9));
    }),
  );
});

test('a whole number of turns and a needle is their sum', () => {
  fc.assert(
    fc.property(fc.nat(20), fc.nat(99), (turns, needle) => {
      const answer = read(`${turns} turns ${needle}`, { kind: 'turns', perTurn: { value: 0.1, unit: 'in' } });
      expect(answer.length?.value).toBe((turns * 100 + needle) / 1000);
      expect(answer.turns).toBe((turns * 100 + needle) / 100);
    }),
  );
});

/** Pieces of the language in any order are more trying than noise alone. */
const pieces = fc.constantFrom(
  ...[
    '1',
    '12',
    '1,234',
    '.5',
    '5e9',
    '1e999',
    '/',
    '-',
    'and',
    'a',
    'half',
    'oh',
    'forty',
    'two',
    'hundred',
  ],
  ...[
    'thousand',
    'point',
    'thou',
    'in',
    '"',
    'mil',
    'tenths',
    'turns',
    't',
    'lb',
    'per',
    'deg',
    'f',
    '½',
    ' ',
    '\u0000',
  ],
);
const babble = fc
  .array(pieces, { maxLength: 40 })
  .chain((words) => fc.constantFrom(words.join(' '), words.join('')));
const junk = fc.oneof(
  babble,
  fc.string({ unit: 'binary', maxLength: 300 }),
  fc.string({ unit: 'grapheme', maxLength: 100 }),
);
const assume = fc.constantFrom(undefined, ...units);

test('nothing that is entered throws, and every answer is whole', () => {
  fc.assert(
    fc.property(junk, fc.constantFrom(...kinds), assume, fc.boolean(), (text, kind, assumed, dial) => {
      const answer = readNumber(text, {
        kind,
        ...(assumed === undefined ? {} : { assume: assumed }),
        ...(dial ? { perTurn: { value: 0.1, unit: 'in' as const } } : {}),
      });
      if (answer.ok) {
        expect(Number.isFinite(answer.value)).toBe(true);
        expect(answer.readAs).not.toMatch(/NaN|Infinity|undefined/);
      } else if (answer.fault === undefined) {
        expect(answer.ambiguities.length).toBeGreaterThan(1);
        expect(answer.ambiguities.every((each) => Number.isFinite(each.quantity.value))).toBe(true);
      } else {
        expect(answer.fault.detail).toMatch(/\.$/);
      }
    }),
    { numRuns: 5000 },
  );
});

test.each([
  '1',
  '1,',
  '1.',
  ' ',
  '-',
  '1/',
  'a ',
  'one ',
  'ten ',
  'hundred ',
  'and ',
  '"',
  'thirty ',
  '½',
  '1e',
])('the longest text of %j takes no time', (piece) => {
  const text = piece.repeat(200).slice(0, 200);
  for (let round = 0; round < 50; round += 1) {
    for (const kind of kinds) readNumber(text, { kind });
  }
  // 750 readings; a reading that grows with the square of the length or worse would take far longer.
});
