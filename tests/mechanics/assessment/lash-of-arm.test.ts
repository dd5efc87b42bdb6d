import { describe, expect, test } from 'vitest';
import type { Evidence, LashEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { about, line, log, toldOf } from './lash-log.ts';

/* Another arm, another gap: common practice, no published source. */
const hot = { engine: 'hot' } as const;
const withA = line(1, '2026-10-01', 0.018, { moment: 'set', armId: 'a', ...hot });
const withB = line(2, '2026-10-01', 0.031, { armId: 'b', ...hot });
const on = (armId: string, lash: readonly LashEvidence[]): Evidence => ({
  ...about(log(lash)),
  arms: ['a', 'b'].map((id) => ({ id, name: `arm ${id}`, ratioStamp: '', otherNumber: '', boxLabel: '' })),
  seats: [{ cylinder: 3, valve: 'exhaust', armId }],
});

describe('a gap that was set with another arm', () => {
  test('belongs to that arm, and is set again', () => {
    const { told, next } = toldOf(on('b', [withA]));
    expect(told).toMatch(
      /Lash of 3 exhaust, not read with the arm that is on: \.018 in belongs to the arm before\. Set it again/,
    );
    expect(next?.sentence).toMatch(/^Set the gap of 3 exhaust again with the arm that is on/);
  });

  test('is no setting that the gap of this one grew from', () => {
    const { told, codes } = toldOf(on('b', [withA, withB]));
    expect(codes).not.toContain('lash-grew');
    expect(told).not.toMatch(/grew|wearing/);
    // The same arm all along: it grew.
    expect(toldOf(on('a', [withA, { ...withB, armId: 'a' }])).codes).toContain('lash-grew');
    // Where nobody named an arm when it was set, none is taken for another.
    const { armId: _, ...unnamed } = withA;
    expect(toldOf(on('b', [unnamed, withB])).codes).toContain('lash-grew');
  });

  test('takes no warning away that was seen with it', () => {
    const sunk = line(2, '2026-10-05', 0.007, { armId: 'a', ...hot });
    for (const lash of [
      [withA, sunk],
      [withA, sunk, line(3, '2026-10-06', 0.018, { moment: 'set', armId: 'b', ...hot })],
    ])
      expect(toldOf(on('b', lash)).stops).toMatch(/may be sinking/);
  });
});
