import { describe, expect, test } from 'vitest';
import { chanceFrom } from '../mechanics/explain-readings/random.ts';
import { followDesks } from './desk-call.ts';
import { followCalls } from './follow-call.ts';
import { scoreRows } from './score-rows.ts';
import { meanOf, type Share, scored } from './shares.ts';

/*
 * Calls as the design note draws them, entered as the desk enters them: set-ups, passes off the dial, lobes, stations,
 * answers and strikes. `npm run simulate` does it with as many as the note.
 */
const CALLS = 300;
const FOLLOWED = 80;
const SEED = 11;

/** Three standard errors of the difference of two shares, and the last figure that is printed. */
function isNear(found: Share, printed: number, there: number): void {
  const error = Math.sqrt(printed * (1 - printed) * (1 / found.of + 1 / there));
  expect(Math.abs(found.share - printed)).toBeLessThanOrEqual(3 * error + 0.0005);
}

// Source: inference.md, "Simulated call", an independent implementation, n 6 000; per cent.
describe.each([
  { set: '1', nameRight: 69.3, held: 95.2, half: 6 },
  { set: '5', nameRight: 74.9, held: 93.3, half: 3 },
  { set: 'L', nameRight: 82.6, held: 95.3, half: 3 },
] as const)('readings $set of simulated calls, entered on the record', ({ set, nameRight, held, half }) => {
  const { ofNote, ofCall } = scoreRows(set, CALLS, SEED);

  test('the names of the note: as often right, held and as wide as the computation alone', () => {
    isNear(ofNote.nameRight, nameRight / 100, 6000);
    isNear(ofNote.ratioHeld, held / 100, 6000);
    expect((100 * ofNote.halfWidth) / half).toBeGreaterThan(0.85);
    expect((100 * ofNote.halfWidth) / half).toBeLessThan(1.15);
  });

  test('the names of the call, two more: the ratio is held as often', () => {
    isNear(ofCall.ratioHeld, held / 100, 6000);
    // Said .9 or more, right nearly as often: the note has .95 to .97.
    expect(ofCall.said90.right.share).toBeGreaterThan(0.9);
  });
});

// Source: inference.md, "Followed to the end", an independent implementation, n 2 000.
describe('simulated calls followed to the end on the record', () => {
  const rows = followCalls(chanceFrom(SEED), FOLLOWED, 'of-note');
  const found = scored(rows);

  test('as many readings and minutes', () => {
    expect(meanOf(rows.map(({ steps }) => steps)) / 3.3).toBeGreaterThan(0.8);
    expect(meanOf(rows.map(({ steps }) => steps)) / 3.3).toBeLessThan(1.2);
    expect(meanOf(rows.map(({ minutes }) => minutes)) / 29).toBeGreaterThan(0.8);
    expect(meanOf(rows.map(({ minutes }) => minutes)) / 29).toBeLessThan(1.2);
  });

  test('name right, ratio held, near, settled', () => {
    isNear(found.nameRight, 0.892, 2000);
    isNear(found.ratioHeld, 0.959, 2000);
    isNear(found.near, 0.973, 2000);
    isNear(found.settled, 0.47, 2000);
    isNear(found.settledRight, 0.971, 940);
  });
});

describe('what is next at the desk is done each time', () => {
  const rows = followDesks(chanceFrom(SEED), 120);

  test('the call comes to its end: the same thing is hardly ever asked again and again', () => {
    // 4 of 120 is 3.3 %; of 1 500 calls 1.4 % went round in a circle.
    expect(rows.filter(({ stuckAt }) => stuckAt !== undefined).length).toBeLessThanOrEqual(4);
  });

  test('and what is said then is right as often as the note has it', () => {
    const found = scored(rows);
    isNear(found.nameRight, 0.93, 1500);
    isNear(found.ratioHeld, 0.95, 1500);
  });
});
