import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence, TipMarkEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from './plain-build.ts';

/* Widths of ink are read to about .010 in: common practice, no published source. On an inline head the neighbour is of the
 * other side. */
const mark = (cylinder: number, valve: 'intake' | 'exhaust', width: number): TipMarkEvidence => ({
  id: `mark-${cylinder}-${valve}`,
  line: cylinder,
  standing: true,
  cylinder,
  valve,
  width: width * IN,
  readAs: `${width} in wide`,
  side: 'centred',
  pushrod: 7.8 * IN,
  pushrodOver: 'ends',
  spring: 'light',
  found: 'fresh-ink',
});
const wide = (exhaustLobe: number, beside = 0.05): string => {
  const evidence: Evidence = {
    ...PLAIN,
    card: { assumedRatio: 1.6, intake: { lobeLift: 0.37 * IN }, exhaust: { lobeLift: exhaustLobe * IN } },
    call: { ...PLAIN.call, goal: 'geometry' },
    tipMarks: [mark(4, 'exhaust', beside), mark(5, 'intake', 0.07)],
  };
  return assess(evidence)
    .questions.filter(({ about }) => about.of === 'valve' && about.cylinder === 5)
    .map(({ size = '' }) => size)
    .join('\n');
};

describe('a mark beside one of the other side', () => {
  test('is set against it where both arms sweep as much', () => {
    expect(wide(0.375)).toMatch(/The narrowest one beside it is \.050 in/);
  });
  test('and not where they do not', () => {
    expect(wide(0.2)).not.toMatch(/narrowest one beside/);
  });
  test('that is wider says nothing of this one', () => {
    expect(wide(0.375, 0.09)).toMatch(/beside it is \.090 in, wider than this one: it can’t be called wide/);
  });
});
