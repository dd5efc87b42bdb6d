import { describe, expect, test } from 'vitest';
import { IN, MM } from '../../../server/mechanics/kit/si.ts';
import { passesApart } from '../../../server/mechanics/valve-sheet/apart.ts';

const TURN = 0.1;
const SPREAD = 0.004;

/** Lifts and the turn of the dial in inches; what stands apart as `index: turns`. */
function apartOf(lifts: readonly number[], perTurn = TURN) {
  const { together, apart, undecided } = passesApart(
    lifts.map((lift) => lift * IN),
    perTurn * IN,
    SPREAD * IN,
  );
  return { together, apart: apart.map(({ index, turns }) => `${index}: ${turns}`), undecided };
}

describe('passes of one reading', () => {
  test('those within what passes repeat go together; nothing is apart', () => {
    expect(apartOf([0.56, 0.562, 0.561])).toEqual({ together: [0, 1, 2], apart: [], undecided: false });
    expect(apartOf([0.56])).toEqual({ together: [0], apart: [], undecided: false });
    expect(apartOf([])).toEqual({ together: [], apart: [], undecided: false });
  });

  test('a spread that is just reached, whatever the last bits of the inches', () => {
    for (let thousandths = 100; thousandths < 900; thousandths += 1) {
      const [one, two] = [thousandths / 1000, (thousandths + 4) / 1000];
      expect(apartOf([one, two]).undecided, `${one}`).toBe(false);
      expect(apartOf([one, two, one + 0.3]).together, `${one}`).toEqual([0, 1]);
    }
  });

  test('of two that do not go together nobody can say which is apart, nor of two pairs', () => {
    expect(apartOf([0.56, 0.565])).toEqual({ together: [], apart: [], undecided: true });
    expect(apartOf([0.56, 0.561, 0.58, 0.581])).toEqual({ together: [], apart: [], undecided: true });
  });

  test('a turn too few is one to add, a turn too many one to take off, from the middle of the others', () => {
    expect(apartOf([0.46, 0.56, 0.562])).toEqual({ together: [1, 2], apart: ['0: 1'], undecided: false });
    expect(apartOf([0.56, 0.561, 0.762])).toEqual({ together: [0, 1], apart: ['2: -2'], undecided: false });
    const [{ off = 0 } = {}] = passesApart(
      [0.56, 0.562, 0.46].map((lift) => lift * IN),
      0.1 * IN,
      0.004 * IN,
    ).apart;
    expect(off / IN).toBeCloseTo(-0.101, 12);
  });

  test('within .008 in of whole turns it is a turn, common practice; beyond, something else', () => {
    expect(apartOf([0.56, 0.56, 0.4679]).apart).toEqual(['2: 1']);
    expect(apartOf([0.56, 0.56, 0.4521]).apart).toEqual(['2: 1']);
    expect(apartOf([0.56, 0.56, 0.4685]).apart).toEqual(['2: 0']);
    expect(apartOf([0.56, 0.56, 0.53]).apart).toEqual(['2: 0']);
  });

  test('a small turn: within a sixth of it, so that not every reading is so many turns away', () => {
    // A turn of 1 mm: .167 of it is .0066 in.
    const turn = MM / IN;
    expect(apartOf([0.56, 0.56, 0.56 - turn + 0.006], turn).apart).toEqual(['2: 1']);
    expect(apartOf([0.56, 0.56, 0.56 - turn + 0.007], turn).apart).toEqual(['2: 0']);
  });
});
