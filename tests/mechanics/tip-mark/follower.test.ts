import { describe, expect, test } from 'vitest';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { markAdvice, markInShort, markQuestions } from '../../../server/mechanics/tip-mark/mark-questions.ts';
import type { Mark, MarkContext } from '../../../server/mechanics/tip-mark/types.ts';

/* A finger follower lies on its pivot and the valve's tip, with no pushrod: common practice, no published source. */
const ON_FOLLOWER: MarkContext = { leastSweep: 0.06 * IN, overLeast: 0.015 * IN, follower: true, beside: [] };
const mark = (side: Mark['side'], width: number): Mark => ({ side, width: width * IN });
const ON_STUD = /pushrod (?:longer|shorter|is too)|guide plate|\bstuds?\b|stands|shim|\.050/;

const said = (own: Mark): string =>
  [
    ...markQuestions([own], ON_FOLLOWER).flatMap(({ ask, size = '', test: todo }) => [ask, size, todo]),
    markAdvice([own], ON_FOLLOWER) ?? '',
    markInShort([own], ON_FOLLOWER)?.said ?? '',
  ].join('\n');

describe('the mark of a finger follower', () => {
  test.each([
    ['toward the valley', mark('valley', 0.065), 'mark-off-centre'],
    ['toward the exhaust side', mark('exhaust', 0.065), 'mark-off-centre'],
    ['wide and centred', mark('centred', 0.09), 'mark-wide'],
  ] as const)('%s: the heights of pivot and valve tip are asked, and nothing of a stud', (_, own, code) => {
    expect(markQuestions([own], ON_FOLLOWER).map((each) => each.code)).toEqual([code]);
    expect(said(own)).toContain('the part maker’s figures');
    expect(said(own)).not.toMatch(ON_STUD);
  });

  test('sideways: it is looked at on its pivot, not at a guide plate', () => {
    expect(said(mark('sideways', 0.065))).toContain('square on its pivot');
    expect(said(mark('sideways', 0.065))).not.toMatch(ON_STUD);
  });

  test('ordinary and centred: nothing is asked, and the heights may stay', () => {
    expect(markQuestions([mark('centred', 0.065)], ON_FOLLOWER)).toEqual([]);
    expect(markInShort([mark('centred', 0.065)], ON_FOLLOWER)).toEqual({
      said: 'The heights of pivot and valve tip may stay.',
      todo: false,
      turns: false,
    });
  });

  test('where it sits is told by its pivot: no valley and no pushrod is there (from memory)', () => {
    expect(said(mark('valley', 0.065))).toContain('Toward the pivot: no length is set on a follower');
    expect(said(mark('exhaust', 0.065))).toContain('Away from the pivot');
    for (const side of ['valley', 'exhaust', 'centred', 'sideways'] as const)
      expect(said(mark(side, 0.09))).not.toMatch(/valley|exhaust side|pushrod|\brockers?\b/);
  });

  test('narrower than it can sweep: it is inked again, as any tip is', () => {
    expect(markQuestions([mark('centred', 0.05)], ON_FOLLOWER)[0]?.size).toMatch(
      /; this follower can’t sweep/,
    );
    expect(markInShort([mark('centred', 0.05)], ON_FOLLOWER)?.said).toMatch(/ink the whole tip/);
  });
});
