import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/pushrod-length.ts';
import { inches } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';
import { describeSaid } from './helpers/said.ts';

const { run, refused, number } = runner(computation);

/** Turned out one turn of .050 in: 7.850 in is wanted where nothing is added. */
const body = { checkerAtZero: inches(7.8), pitch: inches(0.05), turns: 1 };
const LAST = ['ink the tip', 'at the crank', 'maker'];
const TOLD = 'ask which one the catalogue means';
const stock = (...lengths: number[]) => ({ stock: lengths.map(inches) });

describeSaid(computation, {
  assumes: [
    ['told in one way', body, ['the lifter under', 'told at the pushrod; a lash', 'nothing is converted']],
    [
      'lash at the valve',
      { ...body, lash: inches(0.02), ratio: 1.6 },
      ['the lifter under', 'lash at the valve tip: the pushrod', 'nothing is converted'],
    ],
    [
      'overall',
      { ...body, convention: 'overall' },
      ['the lifter under', 'told at the pushrod', 'are overall lengths'],
    ],
    [
      'effective',
      { ...body, convention: 'effective' },
      ['the lifter under', 'told at the pushrod', 'are effective lengths', '.017 in under'],
    ],
  ],
  warns: [
    ['no stock told', body, [TOLD, ...LAST]],
    ['a convention', { ...body, convention: 'overall' }, ['counted twice', ...LAST]],
    ['turned in', { ...body, turns: -1 }, [TOLD, 'past its zero', ...LAST]],
    ['at its zero', { ...body, turns: 0 }, [TOLD, ...LAST]],
    ['preload', { ...body, add: inches(0.03) }, [TOLD, ...LAST]],
    ['lash', { ...body, less: inches(0.01) }, [TOLD, ...LAST]],
    ['both, none of the one', { ...body, add: inches(0), less: inches(0.01) }, [TOLD, ...LAST]],
    ['both', { ...body, add: inches(0.03), less: inches(0.01) }, [TOLD, 'are both meant', ...LAST]],
    ['an empty stock', { ...body, ...stock() }, [TOLD, 'Nothing is in stock', ...LAST]],
    ['the very length', { ...body, ...stock(7.85) }, [TOLD, ...LAST]],
    [
      'longer, nothing allowed for',
      { ...body, ...stock(7.86) },
      [TOLD, '.010 in longer than wanted: an adjuster takes', ...LAST],
    ],
    ['shorter', { ...body, ...stock(7.84) }, [TOLD, '.010 in shorter than wanted: an adjuster', ...LAST]],
  ],
});

/** Said of the nearest in stock, between the question of convention and the last three. */
const ofNearest = (more: object) => run({ ...body, ...more }).cautions.slice(1, -LAST.length);

describe('what a pushrod that differs does to what was allowed for (sums by hand)', () => {
  test.each([
    ['.030 − .010 of preload', { add: inches(0.03), ...stock(7.87) }, 'preload becomes .020 in'],
    ['.030 + .010', { add: inches(0.03), ...stock(7.89) }, 'preload becomes .040 in'],
    ['.030 − .030', { add: inches(0.03), ...stock(7.85) }, 'no preload is left'],
    ['.030 − .040', { add: inches(0.03), ...stock(7.84) }, 'no preload is left'],
    ['.030 − .0299', { add: inches(0.03), ...stock(7.8501) }, 'preload becomes .0001 in'],
    ['.020 − .010 of gap', { less: inches(0.02), ...stock(7.84) }, 'gap at the pushrod becomes .010 in'],
    ['.020 + .010', { less: inches(0.02), ...stock(7.82) }, 'gap at the pushrod becomes .030 in'],
    ['.020 − .020', { less: inches(0.02), ...stock(7.85) }, 'no gap is left'],
    ['.020 − .030', { less: inches(0.02), ...stock(7.86) }, 'no gap is left'],
    ['.032/1.6 − .010 of gap', { lash: inches(0.032), ratio: 1.6, ...stock(7.84) }, 'becomes .010 in'],
    [
      'both allowed for',
      { add: inches(0.03), less: inches(0.01), ...stock(7.88) },
      '.010 in longer than wanted.',
    ],
  ])('%s', (_what, more, wanted) => {
    const [caution = ''] = ofNearest(more).filter((each) => each.startsWith('It is'));
    expect(caution).toContain(wanted);
    expect(ofNearest(more).filter((each) => each.startsWith('It is'))).toHaveLength(1);
  });
});

describe('a difference that looks like a slip, to within .002 in', () => {
  const told = (difference: number, more: object = {}) =>
    ofNearest({ ...stock(7.85 + difference), ...more })
      .slice(1)
      .map((each) =>
        each.includes('overall and effective')
          ? 'convention'
          : each.replace(/^.*about (.*) of the checker.*$/, '$1'),
      );
  test.each([
    [0.0149, {}, []],
    [0.0151, {}, ['convention']],
    [-0.017, {}, ['convention']],
    [0.0189, {}, ['convention']],
    [0.0191, {}, []],
    [0.0479, {}, []],
    [0.0481, {}, ['one turn']],
    [-0.05, {}, ['one turn']],
    [0.0519, {}, ['one turn']],
    [0.0521, {}, []],
    [0.1, {}, ['2 turns']],
    [-0.149, {}, ['3 turns']],
    [0.001, {}, []],
    // A pitch of .018 in: a turn of it is as good as what the two conventions differ by.
    [0.0175, { turns: 0, pitch: inches(0.018), checkerAtZero: inches(7.85) }, ['convention', 'one turn']],
    // .008 in and finer: any difference is near to some count of turns.
    [0.024, { turns: 0, pitch: inches(0.008), checkerAtZero: inches(7.85) }, []],
    [0.0243, { turns: 0, pitch: inches(0.0081), checkerAtZero: inches(7.85) }, ['3 turns']],
  ])('%d in with %j: %j', (difference, more, wanted) => {
    expect(told(difference, more)).toEqual(wanted);
  });
});

describe('lengths that can’t be: none, or beyond 100 in', () => {
  const fields = (names: readonly string[]) => names.map((name) => `/${name} impossible-input`);
  test.each([
    [{ ...body, turns: -155.99 }, []],
    [{ ...body, turns: -156 }, ['checkerAtZero', 'turns']],
    [{ ...body, turns: -157, less: inches(0.1) }, ['checkerAtZero', 'turns', 'less']],
    [{ ...body, checkerAtZero: inches(99.95) }, []],
    [{ ...body, checkerAtZero: inches(99.95), add: inches(0.001) }, ['checkerAtZero', 'turns', 'add']],
    [{ ...body, turns: -156, lash: inches(0.1), ratio: 1.5 }, ['checkerAtZero', 'turns', 'lash']],
  ])('%j', (given, wanted) => {
    expect(refused(given)).toEqual(fields(wanted));
  });

  test.each([
    [7.8, -157, 'leave no length'],
    [99.96, 1, 'beyond any machine part'],
  ])('%d in and %d turns say which of the two', (length, turns, wanted) => {
    expect(() => run({ ...body, checkerAtZero: inches(length), turns })).toThrow(
      expect.objectContaining({
        faults: expect.arrayContaining([
          expect.objectContaining({ detail: expect.stringContaining(wanted) }),
        ]),
      }),
    );
  });

  test('nothing added is nothing taken off', () => {
    expect(number(body, 'length')).toBeCloseTo(7.85, 12);
    expect(number({ ...body, lash: inches(0.032), ratio: 1.6 }, 'length')).toBeCloseTo(7.83, 12);
  });
});
