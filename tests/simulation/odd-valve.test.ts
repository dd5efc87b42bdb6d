import { describe, expect, test } from 'vitest';
import { chanceFrom } from '../mechanics/explain-readings/random.ts';
import { chanceNamed, MEDIAN_OF_SEVEN, ODD_BEYOND } from './odd-theory.ts';
import type { SheetRead } from './odd-valve.ts';
import { scoreSheets } from './score-sheets.ts';

const SHEETS = 60;
const SEED = 11;

const middleOf = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[3] ?? Number.NaN;

/** The rule by hand: further than .008 in from the middle one of its seven siblings. */
const byHand = ({ rows }: SheetRead): string[] =>
  rows
    .filter((row) => {
      const siblings = rows.filter((each) => each.valve === row.valve && each.cylinder !== row.cylinder);
      return Math.abs(row.lift - middleOf(siblings.map(({ lift }) => lift))) > ODD_BEYOND + 1e-9;
    })
    .map(({ cylinder, valve }) => `${cylinder} ${valve}`)
    .sort();

const named = (sheet: SheetRead): string[] =>
  sheet.named.map(({ cylinder, valve }) => `${cylinder} ${valve}`).sort();

test('the variance of the median of seven normal values, by drawing', () => {
  const chance = chanceFrom(SEED);
  const medians = Array.from({ length: 40_000 }, () =>
    middleOf(Array.from({ length: 7 }, () => chance.normal(1))),
  );
  const variance = medians.reduce((sum, each) => sum + each * each, 0) / medians.length;
  // Standard error of a variance: variance times the root of 2/n.
  expect(Math.abs(variance - MEDIAN_OF_SEVEN)).toBeLessThan(
    3 * MEDIAN_OF_SEVEN * Math.sqrt(2 / medians.length),
  );
});

describe(`${SHEETS} sheets of sixteen valves, repeats of .0012 in`, () => {
  test('none odd: none is named, and no row is asked about', () => {
    const { sheets, falseAlarms, inDoubt } = scoreSheets(chanceFrom(SEED), SHEETS);
    expect(sheets.every(({ named: names }) => names.length === 0)).toBe(true);
    expect([falseAlarms.of, falseAlarms.share, inDoubt.share]).toEqual([16 * SHEETS, 0, 0]);
  });

  test.each([
    ['arm', 0.008],
    ['arm', 0.012],
    ['lobe', 0.008],
  ] as const)('one %s off by %f in of lift: named as often as by theory', (what, off) => {
    const found = scoreSheets(chanceFrom(SEED), SHEETS, { what, off });
    for (const sheet of found.sheets) expect(named(sheet)).toEqual(byHand(sheet));
    const theory = chanceNamed(off);
    const error = Math.sqrt((theory * (1 - theory)) / SHEETS);
    expect(Math.abs(found.named.share - theory)).toBeLessThanOrEqual(3 * error + 0.01);
    expect(found.falseAlarms.share).toBe(0);
  });
});
