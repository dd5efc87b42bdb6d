import { describe, expect, test } from 'vitest';
import { computation as hole } from '../../server/mechanics/computations/fastener-for-hole.ts';
import { computation as thread } from '../../server/mechanics/computations/thread.ts';
import { seatPerAdvance } from '../../server/mechanics/threads/adjuster-screw.ts';
import { readDesignation } from '../../server/mechanics/threads/read-designation.ts';
import { inches } from './helpers/quantities.ts';
import { partOf, runner } from './helpers/runner.ts';
import { describeSaid } from './helpers/said.ts';

const body = { hole: inches(0.4375) };
const between = { hole: inches(0.405) };
const zero = { below: inches(0), above: inches(0) };

describeSaid(thread, {
  assumes: [['a thread', { designation: '7/16-20' }, ['single start', 'class 2A']]],
  warns: [['a thread', { designation: '7/16-20' }, ['pitch gauge']]],
});
describeSaid(hole, {
  assumes: [
    ['the hole alone', body, ['made for', 'default reading band']],
    ['a band', { ...body, readingBand: zero }, ['made for']],
    ['a pitch', { ...body, pitch: '20 tpi' }, ['made for', 'default reading band', 'pitch given']],
  ],
  warns: [
    ['one agrees', body, ['its thread decides']],
    ['none does', between, ['None of these', 'its thread decides']],
  ],
});

describe('a list of fasteners', () => {
  const { run, numbers } = runner(hole);
  const fits = (given: object) => {
    const list = partOf(run(given).result, 'fasteners');
    return Array.isArray(list) ? list.map((each) => partOf(each, 'fit')) : [];
  };
  test.each([[0.4375], [0.405], [0.3125], [0.318], [0.376], [0.3]])(
    'of a hole of %d in: by fit, then the nearest first',
    (read) => {
      const order = ['agrees', 'cannot-tell', 'differs'];
      const ranks = fits({ hole: inches(read) }).map((fit) => order.indexOf(String(fit)));
      const away = numbers({ hole: inches(read) }, 'fasteners', 'offset').map(Math.abs);
      expect(ranks.length).toBeGreaterThan(3);
      for (let at = 1; at < ranks.length; at += 1) {
        const [before = 0, here = 0] = ranks.slice(at - 1);
        expect(here).toBeGreaterThanOrEqual(before);
        if (here === before) expect(away[at]).toBeGreaterThanOrEqual((away[at - 1] ?? 0) - 1e-12);
      }
    },
  );

  test.each([
    [
      '5/16 and 8 mm are .0025 in apart (25.4 mm to the inch)',
      0.3135,
      'the pitch: 18 or 24 threads to the inch, or 1.25 mm?',
    ],
    ['7/16 alone', 0.4375, 'the pitch: 14 or 20 threads to the inch?'],
  ])('what is asked of two in reach: %s', (_what, read, wanted) => {
    expect(partOf(run({ hole: inches(read) }).result, 'ask')).toBe(wanted);
  });

  test.each([
    [0.4415, 'agrees'],
    [0.4416, 'cannot-tell'],
    [0.4335, 'agrees'],
    [0.4334, 'cannot-tell'],
  ])('the ends of a band count as within it: %d in %s 7/16', (read, wanted) => {
    expect(fits({ hole: inches(read), pitch: '20 tpi' })).toEqual([wanted]);
  });

  test.each([
    ['within 1 % of .050 in', 0.05049, 1],
    ['past it', 0.05051, 0],
  ])('a pitch %s', (_what, pitch, wanted) => {
    expect(fits({ hole: inches(0.4375), pitch: inches(pitch) })).toHaveLength(wanted);
  });
});

describe('what a turn does at the cup', () => {
  // By the lever about the valve's tip: the pivot's height, the cup's, and the tip's, for r = 1.6.
  test.each([
    ['stud-nut', 1.6, 1.625],
    ['stud-nut', 2, 1.5],
    ['cup-screw', 1.6, 1],
    ['valve-end-screw', 1.6, 0.625],
    ['valve-end-screw', 2, 0.5],
  ] as const)('%s at %d: %d', (mount, ratio, wanted) => {
    expect(seatPerAdvance(mount, ratio)).toBe(wanted);
  });
});

describe('designations as they are written', () => {
  const read = (text: string) => {
    const found = readDesignation(text);
    return found.ok ? found.thread.designation : found.detail;
  };
  test.each([
    ['7/16   -   20', '7/16-20 UNF'],
    ['7/16-  20', '7/16-20 UNF'],
    ['7/16  -20', '7/16-20 UNF'],
    ['7/16   20', '7/16-20 UNF'],
    ['7 / 16 - 20   UNF   2A', '7/16-20 UNF'],
    ['.4375-20', '7/16-20 UNF'],
    ['7/16 UNF', '7/16-20 UNF'],
    ['7/16 UNC', '7/16-14 UNC'],
    ['M8   x   1.25', 'M8×1.25'],
    ['M8.0x1.25', 'M8×1.25'],
    ['M8 × 1,25 - 6g', 'M8×1.25'],
  ])('%j', (text, wanted) => {
    expect(read(text)).toBe(wanted);
  });

  test.each([
    ['7/16', 'needs its pitch; known of this size: 7/16-14 UNC, 7/16-20 UNF'],
    ['M8', 'needs its pitch; known of this size'],
    ['7/16-18', 'has a pitch that is not in the table; known of this size: 7/16-14 UNC, 7/16-20 UNF'],
    ['7/16 UNEF', 'has a pitch that is not in the table'],
    ['M8x3', 'has a pitch that is not in the table; known of this size'],
    ['7/16-20 UNC', '7/16-20 UNF is not UNC'],
    ['7/16-20 3A', 'in class 2A alone'],
    ['M8x1.25-4h', 'in class 6g alone'],
    ['.4376-20', 'is of a size that is not in the table'],
    ['9/16-12', 'is of a size that is not in the table'],
    ['M7.5x1', 'is of a size that is not in the table'],
    ['bolt', 'must be a thread such as'],
  ])('%j %s', (text, wanted) => {
    expect(read(text)).toContain(wanted);
  });

  test('sixty characters are read, sixty-one are not', () => {
    expect(read(`7/16-${' '.repeat(53)}20`)).toBe('7/16-20 UNF');
    expect(read(`7/16-${' '.repeat(54)}20`)).toContain('must be a thread such as');
  });
});
