import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { SetEvidence } from '../../../server/mechanics/assessment/evidence/kept-sums.ts';
import type { Evidence, LashEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { geared, MM } from './geared.ts';
import { logged } from './noise-build.ts';
import { PLAIN } from './plain-build.ts';

/* “Everything is there” is said once everything is. Engines and figures are invented; that gaps come before a camshaft: common practice, no source. */
const goal = (evidence: Evidence, of: Evidence['call']['goal']) =>
  assess({ ...evidence, call: { ...evidence.call, goal: of } });

const CARD = { ...PLAIN.card, lashAt: 'cold', intake: { ...PLAIN.card.intake, lash: 0.018 * IN } } as const;
const found = (cylinder: number, gap: number): LashEvidence =>
  logged(cylinder, 'found', gap, 'held', { cylinder });
const turn = (from: number, line = 60): Evidence['workings'][number] => {
  const set: SetEvidence = {
    of: 'turns',
    thread: '7/16-20',
    size: '7/16',
    pitch: 0.05 * IN,
    mount: 'stud-nut',
    ratio: 1.6,
    lifter: 'solid',
    turns: (from - 0.018) / 0.13,
    lashFound: from * IN,
    lashWanted: 0.018 * IN,
  };
  return { id: `turn-${line}`, line, computation: 'adjuster', set };
};

describe('valves of the log without a turn worked out', () => {
  const log = [found(1, 0.022), found(2, 0.026), found(3, 0.018)];
  const with_ = (workings: Evidence['workings']) =>
    goal({ ...PLAIN, card: CARD, lash: log, workings }, 'adjuster');

  test('the one found at another gap is next, and the one as the card asks is not', () => {
    const { next } = with_([turn(0.022)]);
    expect(next?.action).toBe('turns');
    expect(next?.sentence).toBe('Work out the turn of 2 intake, found at .026 in, in the same way.');
  });

  test('with a turn for each, nothing is asked for once more', () => {
    expect(with_([turn(0.022), turn(0.026, 61)]).missing.map(({ id }) => id)).not.toContain(
      'missing:adjuster:turns',
    );
  });
});

describe('a bucket engine', () => {
  const line = (cylinder: number, valve: 'intake' | 'exhaust'): LashEvidence =>
    logged(cylinder, 'found', 0.008, 'not-looked', {
      cylinder,
      valve,
      id: `${cylinder}-${valve}`,
      gap: { value: 0.1 * MM },
      shim: 2.7 * MM,
    });
  const card = { lashAt: 'cold', intake: { lash: 0.2 * MM }, exhaust: { lash: 0.25 * MM } } as const;
  const at = (lash: readonly LashEvidence[]) => goal(geared('bucket', { lash, card }), 'adjuster');

  test('after one valve the others are next, before a camshaft comes out', () => {
    expect(at([line(1, 'intake')]).next?.sentence).toMatch(
      /^Read the gap of the 7 other valves too, before a camshaft comes out/,
    );
  });

  test('with every valve read it ends', () => {
    const all = [1, 2, 3, 4].flatMap((cylinder) => [line(cylinder, 'intake'), line(cylinder, 'exhaust')]);
    expect(at(all).next?.action).toBe('said');
  });
});

test('a rocker under the cam with hydraulic pivots is asked for no preload that is not worked out', () => {
  const told = goal(
    geared('cam-rocker', { engine: { cylinders: 4, gear: 'cam-rocker', lifter: 'hydraulic-flat' } }),
    'adjuster',
  );
  expect(told.headlines[0]?.sentence).toMatch(/its preload is not worked out\. Instead: /);
  expect(told.next?.action).not.toBe('preload');
});

test('a pushrod length worked out at another length than the mark that holds is worked out again before it ends', () => {
  const build: Evidence = {
    ...PLAIN,
    rockers: { soldAs: 1.6, pivotToTip: 1.6 * IN },
    card: { ...PLAIN.card, intake: { lobeLift: 0.375 * IN } },
    tipMarks: [
      {
        ...{ id: 'm', line: 1, standing: true, cylinder: 1, valve: 'intake' },
        ...{
          width: 0.03 * IN,
          side: 'centred',
          pushrod: 7.85 * IN,
          pushrodOver: 'ends',
          readAs: '.030 in wide',
        },
      },
    ],
  };
  const at = (inches: number) =>
    goal(
      {
        ...build,
        workings: [
          {
            id: 'w9',
            computation: 'pushrod-length',
            line: 9,
            set: { of: 'pushrod', length: inches * IN, told: 'overall' },
          },
        ],
      },
      'geometry',
    ).next;
  expect(at(7.95)?.sentence).toBe(
    'Work the pushrod length out again from the 7.850 in that the mark of 1 intake lets stay; order none until then.',
  );
  expect(at(7.85)?.action).toBe('said');
});

test('with nothing told of a follower, it is not said that everything is there', () => {
  const { next, headlines } = goal(
    geared('finger-follower', { workings: [{ id: 'w', line: 3, computation: 'follower-ratio' }] }),
    'geometry',
  );
  expect(headlines).toEqual([]);
  expect(next?.reason).toBe('Nothing that was entered tells of it yet: that is what is said.');
});
