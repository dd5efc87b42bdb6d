import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence, PartEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { inHand, partOf, SORREL, seen, sized } from './hand-part.ts';

/* The part is invented; what a cover has to clear is common practice, no published source. */

const READ: readonly PartEvidence[] = [
  ...SORREL,
  seen('other-number', 'X7'),
  sized('stud-diameter', 0.433),
  sized('stud-pitch', 0.7, { count: 14, tool: 'rule' }),
];
const nextOf = (evidence: Evidence) => assess(evidence).next;

describe('a part that was measured whole', () => {
  test('is wide: how the cover is bolted is asked before the call ends, and where that is entered', () => {
    expect(nextOf(inHand(READ))).toMatchObject({ action: 'cover', step: 'build', turns: false });
  });

  test('is narrow: it goes under either cover, and nobody is asked', () => {
    const narrow = [
      ...READ.filter(({ kind }) => kind !== 'width-across-trunnion' && kind !== 'rings'),
      sized('width-across-trunnion', 1.2),
      seen('rings', 'none'),
    ];
    const codes = assess(inHand(narrow)).missing.map(({ id }) => id);
    expect(codes.some((id) => id.includes('cover'))).toBe(false);
  });

  test('ends with what is not known: no ratio before a valve was read', () => {
    const all = inHand(READ, { engine: { coverBolting: 'perimeter' } });
    expect(nextOf(all)?.action).toBe('said');
    expect(nextOf(all)?.reason).toMatch(/What is not known yet is said with the answer/);
  });
});

test('the bench estimate has all ratios of the trade that are within it', () => {
  // 1.5 / .955 = 1.571, 1.549 to 1.593 by two arms of ± .010 in.
  const { benchRatio } = partOf(assess(inHand([sized('pivot-to-tip', 1.5), sized('pivot-to-cup', 0.955)])));
  expect(benchRatio).toMatchObject({ inReach: [1.55, 1.56] });
});
