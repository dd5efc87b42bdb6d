import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { answered, codesOf, inHand, partOf, sized, without } from './hand-part.ts';

/** Once more the same figure, entered after everything that was said before it. */
const again = (evidence: Evidence, kind: string, inches: number, id: string): Evidence => ({
  ...evidence,
  part: [...evidence.part, { ...sized(kind, inches, { id }), line: 100 + evidence.part.length }],
});

const countsOf = (evidence: Evidence) =>
  partOf(assess(evidence)).readings.map(({ entryId, counts }) => [entryId, counts]);

const openOf = (evidence: Evidence, code: string): string[] =>
  assess(evidence).questions.flatMap((each) =>
    each.code === code && each.answered === undefined ? [each.id] : [],
  );

/* An invented family is 1.600 wide; .700 is no width of it, and 4.355 no hole of any rocker: judgement, no published source. */
const ALONE = inHand([...without('width-across-trunnion'), sized('width-across-trunnion', 1.2)]);
const IMPOSSIBLE = inHand([...without('hole-across-trunnion'), sized('hole-across-trunnion', 4.355)]);
const TWO = inHand([
  ...without('roller-diameter'),
  sized('roller-diameter', 0.496, { id: 'less' }),
  sized('roller-diameter', 0.51, { id: 'more' }),
]);

describe('a reading that was asked about and is entered again with the same figure', () => {
  test('alone among the others: misread, and it comes out the same: it counts, and is not asked again', () => {
    expect(codesOf(ALONE)).toContain('reading-stands-alone');
    const misread = answered(ALONE, 'reading-stands-alone', 'found');
    const once = again(misread, 'width-across-trunnion', 1.2, 'again');
    expect(openOf(once, 'reading-stands-alone')).toEqual([]);
    expect(countsOf(once)).toContainEqual(['again', 'yes']);
    expect(assess(once).next?.action).not.toBe('reading-stands-alone');
  });

  test('alone among the others, read again before anybody answered', () => {
    expect(codesOf(again(ALONE, 'width-across-trunnion', 1.2, 'again'))).not.toContain(
      'reading-stands-alone',
    );
  });

  test('another figure than before is its cure as ever', () => {
    const cured = again(
      answered(ALONE, 'reading-stands-alone', 'found'),
      'width-across-trunnion',
      1.6,
      'again',
    );
    expect(codesOf(cured)).not.toContain('two-sizes');
    expect(countsOf(cured)).toContainEqual(['again', 'yes']);
  });

  test('a size that cannot be: misread, and the same again, counts as read; as it was meant, it is meant so again', () => {
    const misread = answered(IMPOSSIBLE, 'size-impossible', 'found');
    const once = again(misread, 'hole-across-trunnion', 4.355, 'again');
    expect(openOf(once, 'size-impossible')).toEqual([]);
    const meant = again(
      answered(IMPOSSIBLE, 'size-impossible', 'dot-left'),
      'hole-across-trunnion',
      4.355,
      'again',
    );
    expect(partOf(assess(meant)).readings.find(({ entryId }) => entryId === 'again')?.said).toMatch(
      /^meant as \.4355/,
    );
    // With the same figure there from the start nobody has read it again.
    const twice = answered(
      again(IMPOSSIBLE, 'hole-across-trunnion', 4.355, 'again'),
      'size-impossible',
      'found',
    );
    const open = assess({
      ...twice,
      answers: twice.answers.map((each) => ({ ...each, line: 999 })),
    }).questions;
    expect(
      open.filter((each) => each.code === 'size-impossible' && each.answered === undefined),
    ).toHaveLength(1);
  });

  test('two sizes of one thing: neither trusted, and both come out again: each counts for itself', () => {
    const neither = answered(TWO, 'two-sizes', 'found');
    const both = again(again(neither, 'roller-diameter', 0.496, 'a'), 'roller-diameter', 0.51, 'b');
    expect(openOf(both, 'two-sizes')).toEqual([]);
    expect(countsOf(both)).toEqual(
      expect.arrayContaining([
        ['a', 'yes'],
        ['b', 'yes'],
        ['less', 'left-out'],
      ]),
    );
  });

  test('said to be uneven, one of them entered once more asks nothing', () => {
    const uneven = answered(TWO, 'two-sizes', 'not-found');
    const more = again(uneven, 'roller-diameter', 0.51, 'b');
    expect(openOf(more, 'two-sizes')).toEqual([]);
  });

  test('said to be uneven, a reading between the two, or as near to one as reading goes, asks nothing', () => {
    const uneven = answered(TWO, 'two-sizes', 'not-found');
    for (const [inches, open] of [
      [0.5, 0],
      [0.511, 0],
      [0.53, 1],
    ] as const)
      expect(openOf(again(uneven, 'roller-diameter', inches, 'c'), 'two-sizes')).toHaveLength(open);
  });

  test('both read again as was asked: they are not sent to be read a third time', () => {
    const both = again(again(TWO, 'roller-diameter', 0.496, 'a'), 'roller-diameter', 0.51, 'b');
    const question = assess(both).questions.find(({ code }) => code === 'two-sizes');
    expect(question?.size).toBe(
      'Each of the two came out again: 0.496 in was read 2 times, 0.51 in was read 2 times.',
    );
    expect(question?.test).not.toMatch(/read the same size again/i);
    expect(question?.test).toMatch(/uneven/);
  });

  test('one against two that agree is said, and the two are offered as one', () => {
    const hole = inHand([0.375, 0.381, 0.3745].map((inches) => sized('hole-across-trunnion', inches)));
    const question = assess(hole).questions.find(({ code }) => code === 'two-sizes');
    expect(question?.size).toBe('0.3745 in and 0.375 in agree; 0.381 in stands alone.');
    expect(question?.answers.slice(0, 2).map(({ label }) => label)).toEqual([
      '0.3745 in and 0.375 in are right',
      '0.381 in is right',
    ]);
    expect(countsOf(answered(hole, 'two-sizes', 'smallest'))).toContainEqual([
      'hole-across-trunnion-0.381',
      'left-out',
    ]);
  });
});
