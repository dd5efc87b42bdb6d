import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence, PassEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { answered } from './hand-part.ts';
import { nothingKnown } from './plain.ts';
import { SET_UP } from './plain-build.ts';

/* Common practice, no published source: no mark proves a ratio, and what does not go together is asked. */

const boxed = (ratioStamp: string, boxLabel: string, more: Partial<Evidence> = {}): Evidence => ({
  ...nothingKnown,
  call: { ...nothingKnown.call, goal: 'verify-ratio' },
  arms: [{ id: 'arm', name: 'arm 1', ratioStamp, otherNumber: 'L204', boxLabel }],
  ...more,
});

/** Three passes over a lobe of .350 in and at its valve: 1.600. */
const PASSES = (['lobe-lift', 'valve-lift'] as const).flatMap((kind, of): PassEvidence[] =>
  [1, 2, 3].map((pass) => ({
    id: `${kind}-${pass}`,
    line: 20 + 3 * of + pass,
    standing: true,
    setUpId: SET_UP.id,
    kind,
    pass,
    value: (kind === 'lobe-lift' ? 0.35 : 0.56) * IN,
    counted: true,
    readAs: kind,
  })),
);

const asks = (evidence: Evidence) =>
  assess(evidence).questions.filter(({ code }) => code === 'box-against-stamp');

describe('an arm on record whose box names another ratio than its stamp', () => {
  test('is asked about before anything is read, with nothing turned for it', () => {
    const apart = boxed('1.6', 'Yarrow 1.7 (set)');
    expect(asks(apart).map(({ ask, about }) => [ask, about.of])).toEqual([
      ['arm 1 is stamped “1.6”, and its box says “Yarrow 1.7 (set)”. Is it the box of this arm?', 'arm'],
    ]);
    expect(assess({ ...apart, call: { ...apart.call, goal: 'returned-part' } }).questions).toContainEqual(
      expect.objectContaining({ code: 'box-against-stamp' }),
    );
  });

  test.each([
    ['1.6', 'Yarrow 1.6 (set)'],
    ['1.6', 'Yarrow'],
    ['', 'Yarrow 1.7 (set)'],
    ['16', 'Yarrow 1.6'],
  ])('“%s” in “%s” is not', (stamp, box) => {
    expect(asks(boxed(stamp, box))).toEqual([]);
  });

  test('answered, it stays answered; the box of another arm is held against it nowhere', () => {
    const apart = boxed('1.6', 'Yarrow 1.7 (set)');
    const setUps = [{ ...SET_UP, armId: 'arm' }];
    const others = answered(apart, 'box-against-stamp', 'found');
    expect(asks(others).map((each) => each.answered?.found)).toEqual([true]);
    expect(assess(others).next?.action).not.toBe('box-against-stamp');
    const own = answered(apart, 'box-against-stamp', 'not-found');
    const codes = (evidence: Evidence) =>
      assess({ ...evidence, setUps, passes: PASSES }).questions.map(({ code }) => code);
    expect(codes(others)).not.toContain('stamp-against-sold');
    expect(codes(own)).toContain('stamp-against-sold');
    // Read on the engine, one question is enough.
    expect(codes(apart)).not.toContain('box-against-stamp');
  });
});
