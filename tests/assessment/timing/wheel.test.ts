import { describe, expect, test } from 'vitest';
import { workingEvidence } from '../../../server/assessment/evidence/other-entries.ts';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import { computation as centreline } from '../../../server/mechanics/computations/centreline.ts';
import { PLAIN } from '../../mechanics/assessment/plain-build.ts';
import { runner } from '../../mechanics/helpers/runner.ts';

/*
 * Calls about the cam's timing. By hand: the peak is midway between two readings at equal drop, less what the wheel reads
 * too much after TDC, half the difference of the two readings at the stop (trade practice 2.6, 2.7). A wheel is good to a
 * degree either way: common practice, no published source.
 */
type Kept = readonly [computation: string, inputs: object];
const at = (before: string, after: string, card: string, side: 'intake' | 'exhaust', more = {}): Kept => [
  'centreline',
  { before, after, card, side, ...more },
];
const stop = (after: number, before: number): Kept => [
  'top-dead-centre',
  { stopReadings: [`${after} deg`, `${before} deg`] },
];
const INTAKE = at('62 deg', '148 deg', '108 deg', 'intake');
const RIGHT = stop(36, 36);

const said = (...kept: readonly Kept[]) =>
  assess({
    ...PLAIN,
    call: { ...PLAIN.call, goal: 'cam-timing' },
    card: { intake: { centreline: 1.885 }, exhaust: { centreline: 1.955 } },
    springs: {},
    rockers: {},
    workings: kept.map(([computation, inputs], index) =>
      workingEvidence({
        id: `working-${index}`,
        seq: index + 1,
        revision: 1,
        computation,
        inputs,
        answer: {},
        by: 'desk',
        at: new Date('2026-03-01T10:00:00Z'),
      }),
    ),
  });
const headline = (...kept: readonly Kept[]) => said(...kept).headlines[0]?.sentence;

describe('a pointer that stood out at the stop', () => {
  test('62 and 148 are 105; 37 after and 35 before are 1° too much after TDC: 104, 4° before the card’s 108', () => {
    for (const kept of [
      [INTAKE, stop(37, 35)],
      [stop(37, 35), INTAKE],
    ]) {
      expect(headline(...kept)).toMatch(/105° ± 1° after TDC: 3° advanced.*1° out.*at 104°, 4° advanced/);
      expect(said(...kept).next?.sentence).toMatch(
        /^Move the pointer 1° toward the reading after TDC\. Then read the wheel at the stop/,
      );
    }
  });

  test('the other way round it is 106, 2° advanced; of an exhaust the error goes the other way', () => {
    expect(headline(stop(35, 37), INTAKE)).toMatch(/at 106°, 2° advanced/);
    // −160 and −70 are 115 before TDC; 1° too much after TDC is 1° too little before it: 116.
    expect(headline(stop(37, 35), at('160 BTDC', '70 BTDC', '112 deg', 'exhaust'))).toMatch(
      /115° ± 1° before TDC: 3° advanced.*at 116°, 4° advanced/,
    );
  });

  test('which gap it costs is told only where it is the same either way', () => {
    // 107 is 1° advanced as read, and with the pointer 4° the other way 3° retarded.
    expect(headline(stop(32, 40), at('64 deg', '150 deg', '108 deg', 'intake'))).not.toMatch(/costs/);
  });

  test('set by the stop since: the peak is read once more', () => {
    const moved = said(stop(37, 35), INTAKE, RIGHT);
    expect(moved.headlines[0]?.sentence).toMatch(/pointer was set after that reading/);
    expect(moved.next?.action).toBe('centreline');
    expect(headline(stop(37, 35), RIGHT, INTAKE)).not.toMatch(/[Bb]ut/);
  });
});

test('within a degree of the card it is not told from straight up, and costs nothing', () => {
  expect(headline(RIGHT, at('64.5 deg', '150 deg', '108 deg', 'intake'))).toMatch(
    /107\.25° ± 1° after TDC: \.75° advanced, which a wheel does not tell from straight up/,
  );
  expect(headline(RIGHT, at('64.5 deg', '150 deg', '108 deg', 'intake'))).not.toMatch(/costs/);
});

test('nothing of the lobes’ lift is waited for', () => {
  expect(said(RIGHT, INTAKE).next?.sentence).toMatch(/^Say what was found/);
  expect(said().next?.action).toBe('top-dead-centre');
});

describe('a peak outside of 95 to 120 (trade practice, section 7)', () => {
  const far = said(RIGHT, INTAKE, at('62 deg', '188 deg', '108 deg', 'intake'));

  test('has no word until its side is answered for, on every face', () => {
    expect(far.headlines[0]?.sentence).toMatch(/125° ± 1° after TDC as read: no word yet/);
    expect(far.next?.action).toBe('centreline-unusual');
    expect(far.questions.map(({ code }) => code)).toEqual(['centreline-unusual', 'centreline-read-twice']);
  });
});

describe('an exhaust whose readings are told after TDC', () => {
  const { refused, number } = runner(centreline);

  test('is refused, and so is an intake told before it', () => {
    const either = ['/before impossible-input', '/after impossible-input'];
    expect(refused({ before: '70 deg', after: '160 deg', side: 'exhaust' })).toEqual(either);
    expect(refused({ before: '-160 deg', after: '-70 deg', side: 'intake' })).toEqual(either);
  });

  test('is read with its side: 160 and 70 before TDC are 115', () => {
    const given = { before: '160 BTDC', after: '70 BTDC', side: 'exhaust' };
    expect(number(given, 'centreline')).toBeCloseTo(115, 10);
    expect(number({ before: '8 BTDC', after: '205 ATDC' }, 'centreline')).toBeCloseTo(98.5, 10);
  });
});
