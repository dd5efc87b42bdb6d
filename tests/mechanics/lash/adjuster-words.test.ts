import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence, LashEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { adjusterKind, partSaid } from '../../../server/mechanics/lash/adjuster-words.ts';
import { line as lineOf } from '../assessment/lash-log.ts';
import { sentencesOf } from '../assessment/laws/law.ts';
import { PLAIN } from '../assessment/plain-build.ts';

/* What an engine has to set its gap with, and what of it there is to look at: how each is made, from memory. */

const line = (id: number, day: number, gap: number, more: Partial<LashEvidence> = {}): LashEvidence =>
  lineOf(id, `2026-02-0${day}`, gap, { engine: 'hot', nut: 'not-looked', ...more });

type Engine = Evidence['engine'];
const STUD: Engine = { cylinders: 4, lifter: 'solid-flat', mounting: 'stud' };
const OTHERS: readonly (readonly [string, Engine, RegExp])[] = [
  ['pedestal', { cylinders: 4, lifter: 'solid-flat', mounting: 'pedestal' }, /pedestal/],
  ['shaft', { cylinders: 4, lifter: 'solid-flat', mounting: 'shaft' }, /screw/],
  ['cam rocker', { cylinders: 4, lifter: 'solid-flat', gear: 'cam-rocker' }, /screw/],
  ['follower', { cylinders: 4, lifter: 'solid-flat', gear: 'finger-follower' }, /follower/],
  ['bucket', { cylinders: 4, lifter: 'solid-flat', gear: 'bucket' }, /shim/],
];
const KINDS = ['stud', 'pedestal', 'shaft', 'cam-rocker', 'follower', 'bucket', 'not-known'] as const;
const OVERHEAD = ['cam rocker', 'follower', 'bucket'];

/** It grew over .004 once, and again after it was set again: asked the first time, a stop the second. */
const GREW = [line(1, 1, 0.018, { moment: 'set' }), line(2, 2, 0.026)];
const AGAIN = [...GREW, line(3, 3, 0.018, { moment: 'set' }), line(4, 4, 0.025)];

const said = (
  engine: Engine,
  lash: readonly LashEvidence[],
  nut: LashEvidence['nut'],
  goal: Evidence['call']['goal'] = 'noise-or-failure',
): string =>
  sentencesOf(
    assess({
      ...PLAIN,
      engine,
      call: { ...PLAIN.call, goal },
      lash: lash.map((each) => ({ ...each, nut: each.moment === 'found' ? nut : each.nut })),
    }),
  ).join('\n');

describe.each(['held', 'moved', 'not-looked'] as const)('a gap that grew, the lock %s', (nut) => {
  test.each(OTHERS)('%s: no word of a stud, and the word for what it has', (name, engine, word) => {
    for (const lash of [GREW, AGAIN]) {
      const text = said(engine, lash, nut);
      expect(text).not.toMatch(/\bstuds?\b/i);
      if (OVERHEAD.includes(name)) expect(text).not.toMatch(/\bpushrods?\b/i);
    }
    expect(said(engine, AGAIN, nut)).toMatch(word);
  });

  /* No nut sets the gap of these: a pivot or a shim does (from memory). */
  test.each(OTHERS.filter(([name]) => ['follower', 'bucket'].includes(name)))(
    '%s: on a call about adjusters no word of a nut',
    (_, engine) => {
      for (const lash of [GREW, AGAIN]) expect(said(engine, lash, nut, 'adjuster')).not.toMatch(/\bnuts?\b/i);
    },
  );

  test('stud: nut and stud are looked at', () => {
    expect(said(STUD, AGAIN, nut)).toMatch(/look at nut and stud/i);
  });
});

test('nobody said how the rockers are mounted: the stop says the adjuster and its lock', () => {
  const { stop } = assess({ ...PLAIN, engine: { cylinders: 4, lifter: 'solid-flat' }, lash: AGAIN });
  expect(stop.map(({ wayOut }) => wayOut).join()).toMatch(/look at the adjuster and its lock/);
  expect(stop.map(({ wayOut }) => wayOut).join()).not.toMatch(/stud/);
});

test('what the log says of it goes by what the engine has', () => {
  expect(KINDS.map((kind) => partSaid(kind, 'held'))).toEqual([
    'nut had not moved',
    'bolt had not moved',
    'lock nut had not moved',
    'lock nut had not moved',
    'pivot had not moved',
    'shim had not moved',
    'adjuster’s lock had not moved',
  ]);
  expect(partSaid('stud', 'moved')).toBe('nut had moved');
  expect(partSaid('follower', 'not-looked')).toBe('pivot not looked at');
});

test('what an engine has: its valve gear goes before how rockers on pushrods are mounted', () => {
  expect(adjusterKind({})).toBe('not-known');
  expect(adjusterKind({ mounting: 'shaft' })).toBe('shaft');
  expect(adjusterKind({ gear: 'pushrod', mounting: 'pedestal' })).toBe('pedestal');
  expect(adjusterKind({ gear: 'finger-follower', mounting: 'stud' })).toBe('follower');
  expect(adjusterKind({ gear: 'bucket' })).toBe('bucket');
  expect(adjusterKind({ gear: 'cam-rocker' })).toBe('cam-rocker');
});
