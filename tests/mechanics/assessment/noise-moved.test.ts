import { describe, expect, test } from 'vitest';
import { QUESTIONS } from '../../../server/mechanics/assessment/noise/answers.ts';
import { logged, noiseOf, said } from './noise-build.ts';

/* Common practice, no published source: set again without its cause a nut moves again; locking shifts a gap. */

const engine = { cylinders: 8, mounting: 'stud', lifter: 'solid-flat' } as const;
/** All that can be asked or looked at was, and nobody knew. */
const asked = [
  said('noise-signs', 'none', { line: 51 }),
  said('noise-which', 'one', { line: 52, place: { cylinder: 2, valve: 'intake' } }),
  ...QUESTIONS.filter((each) => !['noise-signs', 'noise-which', 'noise-nut'].includes(each)).map((each, at) =>
    said(each, 'not-known', { line: 60 + at }),
  ),
];
type Log = Parameters<typeof logged>[];
const next = (...log: Log) =>
  noiseOf({ engine, answers: asked, lash: log.map((each) => logged(...each)) }).next;

describe('a nut that had moved', () => {
  test('is asked why it moved, before other valves are read', () => {
    const moved = next([1, 'found', 0.026, 'moved']);
    expect(moved?.action).toBe('why-moved');
    expect(moved?.sentence).toMatch(/^2 intake, why the nut moved: look at the stud’s top/);
    // A gap that grew as well is asked of already.
    const grown = next([1, 'set', 0.018], [2, 'found', 0.026, 'moved']);
    expect([grown?.action, grown?.reason]).toEqual(['lash-grew', 'Did the lock let go?']);
  });

  test('once it was set again its gap is read again, and then the call goes on', () => {
    const set: Log = [
      [1, 'found', 0.026, 'moved'],
      [2, 'set', 0.018],
    ];
    expect(next(...set)?.action).toBe('lash-again');
    expect(next(...set)?.sentence).toMatch(/say whether the lock held/);
    expect(next(...set, [3, 'found', 0.018, 'held'])?.action).not.toMatch(/^(?:lash-again|why-moved)$/);
    expect(next(...set, [3, 'found', 0.021, 'moved'])?.action).toBe('why-moved');
  });

  test('what the log says of it is not asked beside it', () => {
    const { questions } = noiseOf({ engine, answers: asked, lash: [logged(1, 'found', 0.026, 'moved')] });
    expect(questions.filter(({ answered }) => answered === undefined)).toEqual([]);
  });

  test('on a shaft it is the screw and its lock nut', () => {
    const shaft = noiseOf({
      engine: { ...engine, mounting: 'shaft' },
      answers: asked,
      lash: [logged(1, 'found', 0.026, 'moved')],
    });
    expect(shaft.next?.sentence).toMatch(/look at the screw’s thread and its lock nut/);
  });
});
