import { describe, expect, test } from 'vitest';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { isReadTwice, type LotRead } from '../../../server/mechanics/valve-sheet/read-twice.ts';

/** `A@P`: arm A on valve P, lift in inches. */
function lot(where: string, lift: number, way = 'light'): LotRead {
  const [armId = '', place = ''] = where.split('@');
  return { armId, place, way, lift: lift * IN };
}

/** A at P is doubted at .540, where its siblings read .560; beside it the lots of a swap. */
function readTwice(...beside: readonly LotRead[]): boolean {
  const own = lot('A@P', 0.54);
  const forwards = isReadTwice(own, [own, ...beside]);
  expect(isReadTwice(own, [...beside.toReversed(), own])).toBe(forwards);
  return forwards;
}

describe('it goes with the arm', () => {
  test('low on another valve too, while another arm read otherwise on either of the two', () => {
    expect(readTwice(lot('A@Q', 0.541), lot('B@P', 0.56))).toBe(true);
    expect(readTwice(lot('A@Q', 0.541), lot('B@Q', 0.56))).toBe(true);
  });

  test('not by the arm alone, nor beside a third valve: all valves may read so', () => {
    expect(readTwice(lot('A@Q', 0.541))).toBe(false);
    expect(readTwice(lot('A@Q', 0.541), lot('B@R', 0.56))).toBe(false);
    expect(readTwice(lot('A@Q', 0.541), lot('B@P', 0.541))).toBe(false);
  });

  test('two repeats differ by twice .002, common practice, and no more; a swap shows over .008', () => {
    expect(readTwice(lot('A@Q', 0.544), lot('B@P', 0.56))).toBe(true);
    expect(readTwice(lot('A@Q', 0.536), lot('B@P', 0.56))).toBe(true);
    expect(readTwice(lot('A@Q', 0.5442), lot('B@P', 0.56))).toBe(false);
    expect(readTwice(lot('A@Q', 0.5358), lot('B@P', 0.56))).toBe(false);
    expect(readTwice(lot('A@Q', 0.541), lot('B@P', 0.548))).toBe(false);
    expect(readTwice(lot('A@Q', 0.541), lot('B@P', 0.5482))).toBe(true);
    expect(readTwice(lot('A@Q', 0.541), lot('B@P', 0.5318))).toBe(true);
  });

  test('the same arm on the same valve is the same reading again; beside it another arm must stand', () => {
    expect(readTwice(lot('A@P', 0.541), lot('B@P', 0.56))).toBe(false);
    expect(readTwice(lot('A@Q', 0.541), lot('A@P', 0.56))).toBe(false);
  });
});

describe('it stays on the valve', () => {
  test('low with another arm too, while another valve read otherwise with either of the two', () => {
    expect(readTwice(lot('C@P', 0.541), lot('A@R', 0.56))).toBe(true);
    expect(readTwice(lot('C@P', 0.541), lot('C@R', 0.56))).toBe(true);
  });

  test('not by the valve alone, nor beside a third arm', () => {
    expect(readTwice(lot('C@P', 0.541))).toBe(false);
    expect(readTwice(lot('C@P', 0.541), lot('D@R', 0.56))).toBe(false);
    expect(readTwice(lot('C@P', 0.541), lot('A@R', 0.541), lot('A@P', 0.56))).toBe(false);
    expect(readTwice(lot('C@P', 0.56), lot('A@R', 0.56))).toBe(false);
  });
});

test('lifts read another way are of another spring or side, and say nothing', () => {
  expect(readTwice(lot('A@Q', 0.541, 'running'), lot('B@P', 0.56))).toBe(false);
  expect(readTwice(lot('A@Q', 0.541), lot('B@P', 0.56, 'running'))).toBe(false);
});
