import { describe, expect, test } from 'vitest';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN, LBF, LBF_PER_IN } from '../../../server/mechanics/kit/si.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { PLAIN } from './plain-build.ts';

const assess = assessAsTold('figures');

/* What springs and cranks ordinarily are: common practice, no published source. */

const asked = (more: Partial<Evidence>): string[] =>
  assess({ ...PLAIN, ...more }).questions.flatMap(({ code, ask }) =>
    code.startsWith('figure') ? [`${code}: ${ask}`] : [],
  );
const springs = (more: Evidence['springs']) => ({ springs: { ...PLAIN.springs, ...more } });

describe('figures of the engine that cannot be, or hardly are', () => {
  test('those of an ordinary engine are not asked about', () => {
    expect(asked({})).toEqual([]);
    expect(asked({ engine: { ...PLAIN.engine, stroke: 3.48 * IN, rodLength: 5.7 * IN } })).toEqual([]);
    expect(asked(springs({ seatLoad: 45 * LBF, rate: 120 * LBF_PER_IN }))).toEqual([]);
    expect(asked(springs({ seatLoad: 400 * LBF, rate: 900 * LBF_PER_IN }))).toEqual([]);
  });

  test.each<[string, Partial<Evidence>, RegExp]>([
    [
      'solid above installed',
      springs({ installedHeight: 1.7 * IN, solidHeight: 1.75 * IN }),
      /^figures-impossible: The coil-bind height, 1\.750 in, is not under/,
    ],
    [
      'solid as installed',
      springs({ installedHeight: 1.7 * IN, solidHeight: 1.7 * IN }),
      /^figures-impossible/,
    ],
    ['a seat load of 13 lb', springs({ seatLoad: 13 * LBF }), /^figure-unusual: A seat load of 13 lb/],
    [
      'a rate of 3500 lb/in',
      springs({ rate: 3500 * LBF_PER_IN }),
      /^figure-unusual: A spring rate of 3500 lb\/in/,
    ],
    [
      'a rod of 18 in to 3.48',
      { engine: { ...PLAIN.engine, stroke: 3.48 * IN, rodLength: 18 * IN } },
      /^figure-unusual: A rod of 18\.000 in/,
    ],
    [
      'rod and stroke exchanged',
      { engine: { ...PLAIN.engine, stroke: 5.7 * IN, rodLength: 3.48 * IN } },
      /^figure-unusual: A rod of 3\.480 in/,
    ],
  ])('%s', (_, more, pattern) => {
    expect(asked(more)).toEqual([expect.stringMatching(pattern)]);
  });

  test('what a change would do is asked after before it is told', () => {
    const { next } = assess({
      ...PLAIN,
      call: { ...PLAIN.call, goal: 'clearances-after-a-change' },
      rockers: { ...PLAIN.rockers, planned: 1.6 },
      ...springs({ installedHeight: 1.7 * IN, solidHeight: 1.75 * IN }),
    });
    expect(next?.action).toBe('figures-impossible');
  });
});
