import { describe, expect, test } from 'vitest';
import type { ArmEvidence, Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { armOf, heard, setUpOn, together, VERIFY } from './whole-sheet.ts';

const A = armOf('Arm A');
const B = armOf('Arm B');
const LIKE_IT = [0.561, 0.561, 0.562];

interface Swapped {
  /** Lifts of Arm A on 1 intake, where it sat first, then on 3 intake. */
  readonly a: readonly [readonly number[], readonly number[]];
  /** Lifts of Arm B on 3 intake, then on 1 intake. */
  readonly b: readonly [readonly number[], readonly number[]];
  readonly arms?: readonly ArmEvidence[];
  readonly counted?: boolean;
}

/** Two arms read in set-ups, changed over, and read again. */
const swapped = ({ a, b, arms = [A, B], counted = true }: Swapped): Evidence => ({
  ...VERIFY,
  arms,
  seats: [
    { cylinder: 3, valve: 'intake', armId: A.id },
    { cylinder: 1, valve: 'intake', armId: B.id },
  ],
  ...together(
    setUpOn(1, A.id, a[0], { counted }),
    setUpOn(3, B.id, b[0], { counted }),
    setUpOn(3, A.id, a[1], { counted }),
    setUpOn(1, B.id, b[1], { counted }),
  ),
});

/* Dispute protocol (f): what follows the rocker is the part, what stays is not; common practice, no published source. */
describe.each([
  [0.528, true],
  [0.536, false],
  [0.52, true],
  [0.541, false],
])('a swap read in set-ups, .561 against %f', (off, counted) => {
  const low = [off, off, off + 0.001];

  test('goes with the arm: it is named by its mark, its ratio is told as the arm’s, and its lot is next', () => {
    const { headlines, sentence, asks } = heard(swapped({ a: [low, low], b: [LIKE_IT, LIKE_IT], counted }));
    expect(headlines[0]).toMatch(/went with Arm A, low on both valves\. It is the part: Arm A\./);
    expect(headlines).toContainEqual(
      expect.stringMatching(/^1 intake with Arm B: 1\.60.*agrees with the 1\.6/),
    );
    expect(headlines).toContainEqual(
      expect.stringMatching(
        /^3 intake with Arm A: .*under the 1\.6 stamped on it, on both valves: it is the arm/,
      ),
    );
    expect(headlines.join('\n')).not.toMatch(/doubted|not calculated with yet/);
    expect(sentence).not.toMatch(/1 intake: 1\.60/);
    expect(asks).toEqual([]);
  });

  test('stays on the valve: the position is followed, not the part number of an arm that is cleared', () => {
    const { headlines, next, asks, all } = heard(swapped({ a: [low, LIKE_IT], b: [LIKE_IT, low], counted }));
    expect(headlines[0]).toMatch(/stayed on 1 intake, low with both arms\. It is the position, not the arm/);
    expect(headlines).toContainEqual(
      expect.stringMatching(/^1 intake with Arm B: .* it is its position and not the arm/),
    );
    expect(headlines).toContainEqual(expect.stringMatching(/^3 intake with Arm A: .*agrees with the 1\.6/));
    expect(headlines.join('\n')).not.toMatch(/part number|doubted/);
    expect(next).toBe('swap-pushrods');
    expect(asks).toEqual(['pushrod-or-valve']);
    const [question] = all.questions;
    const answer = {
      id: 'a',
      line: 99,
      questionId: question?.id ?? '',
      code: '',
      question: '',
      answer: 'stays',
    };
    const after = heard({ ...swapped({ a: [low, LIKE_IT], b: [LIKE_IT, low], counted }), answers: [answer] });
    expect(after.all.questions.map(({ code }) => code)).toContain('pushrod-or-valve');
  });
});

describe('what a swap in set-ups does not tell', () => {
  test('a high arm is named as a low one is', () => {
    const high = [0.59, 0.59, 0.591];
    const { headlines } = heard(swapped({ a: [high, high], b: [LIKE_IT, LIKE_IT] }));
    expect(headlines[0]).toMatch(/went with Arm A, high on both valves\. It is the part: Arm A\./);
  });

  test('two arms that give what each is stamped as: neither is odd', () => {
    const low = [0.525, 0.525, 0.526];
    const arms = [armOf('Arm A', { ratioStamp: '1.5' }), B];
    const { headlines } = heard(swapped({ a: [low, low], b: [LIKE_IT, LIKE_IT], arms }));
    expect(headlines[0]).toMatch(/each gives what it is held to be: Arm A is \.03. in low against Arm B/);
    expect(headlines[0]).not.toMatch(/third valve|look at its lot/);
  });

  test('two arms that are both ordinary for their mark: a third one tells', () => {
    const high = [0.58, 0.58, 0.581];
    const { headlines } = heard(swapped({ a: [LIKE_IT, LIKE_IT], b: [high, high], arms: [A, B] }));
    expect(headlines[0]).not.toMatch(/It is the part: Arm/);
  });

  test('a lift read once more on its own valve alone is still asked about', () => {
    const low = [0.536, 0.536, 0.537];
    const { asks } = heard({
      ...VERIFY,
      arms: [A],
      seats: [{ cylinder: 1, valve: 'intake', armId: A.id }],
      ...together(setUpOn(1, A.id, low, { counted: false }), setUpOn(1, A.id, low, { counted: false })),
    });
    expect(asks).toContain('hand-read-backwards');
  });
});
