import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { PushrodEvidence } from '../../../server/mechanics/assessment/evidence/kept-sums.ts';
import type { Evidence, TipMarkEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from './plain-build.ts';

/*
 * A pushrod is ordered once the tip’s mark is in its place: the mark goes before the sum (common practice, no published
 * source). A length over the ends is .017 in more than one by a gauge: a cam maker’s questions and answers. Engines and
 * figures are invented.
 */
const mark = (more: Partial<TipMarkEvidence> = {}): TipMarkEvidence => ({
  id: 'm',
  line: 1,
  standing: true,
  cylinder: 1,
  valve: 'intake',
  width: 0.04 * IN,
  side: 'centred',
  pushrod: 7.85 * IN,
  pushrodOver: 'ends',
  readAs: '.040 in wide',
  ...more,
});

const sumOf = (inches: number, more: Partial<PushrodEvidence> = {}): PushrodEvidence => ({
  of: 'pushrod',
  length: inches * IN,
  told: 'overall',
  ...more,
});

const ARM: Partial<Evidence> = {
  rockers: { soldAs: 1.6, pivotToTip: 1.6 * IN },
  card: { ...PLAIN.card, intake: { lobeLift: 0.375 * IN } },
};

const told = (tipMarks: readonly TipMarkEvidence[], set: PushrodEvidence, more: Partial<Evidence> = {}) =>
  assess({
    ...PLAIN,
    ...ARM,
    call: { ...PLAIN.call, goal: 'geometry' },
    ...more,
    tipMarks,
    workings: [{ id: 'sum', computation: 'pushrod-length', line: 9, set }],
  }).headlines.find(({ id }) => id === 'headline:working:pushrod')?.sentence;

const OFF = mark({ side: 'valley', off: 0.03 * IN });

describe('the length that was worked out beside the length that a mark asks for', () => {
  test('a next try goes first, whatever the sum: which is which, and that none is ordered yet', () => {
    const said = told([OFF], sumOf(7.85));
    expect(said).toMatch(/^The pushrod comes to 7\.850 in, end to end\./);
    expect(said).toMatch(
      /length to order by the checker; what the mark of 1 intake asks for next is only a length to try, and goes first: order none until a mark may stay\.$/,
    );
    expect(told([OFF, mark({ ...OFF, id: 'n', cylinder: 2 })], sumOf(7.85))).toMatch(
      /what the marks of 1 intake and 2 intake ask for next/,
    );
  });

  test('a length that may stay is the checker, and the sum with its preload is ordered: 7.850 + .040 = 7.890', () => {
    const hydraulic = { engine: { ...PLAIN.engine, lifter: 'hydraulic-roller' as const } };
    expect(told([mark()], sumOf(7.89, { added: 0.04 * IN }), hydraulic)).toMatch(
      /That is the one to order; the 7\.850 in of the mark of 1 intake is the checker, without what the adjustment adds\.$/,
    );
    expect(told([mark()], sumOf(7.84, { lashOff: true }))).toMatch(
      /without what the adjustment takes off\.$/,
    );
    // Just the length of the mark: there is nothing to tell apart.
    expect(told([mark()], sumOf(7.85))).toMatch(/end to end\.$/);
  });

  test('a sum of another length than the one that may stay gives way: 7.850 and 7.950', () => {
    const said = told([mark()], sumOf(7.95));
    expect(said).toMatch(/another length than the 7\.850 in that the mark of 1 intake lets stay/);
    expect(said).toMatch(/the mark holds: work it out again from there, and order none until then\.$/);
    // By a gauge 7.833 is the same 7.850 over the ends; .030 off is another length, unless it may be the .017.
    expect(told([mark()], sumOf(7.833, { told: 'effective' }))).not.toMatch(/mark holds/);
    expect(told([mark()], sumOf(7.803, { told: 'effective' }))).toMatch(/mark holds/);
    expect(told([mark()], sumOf(7.82, { told: 'as-read' }))).not.toMatch(/mark holds/);
  });

  test('marks that keep two lengths: the sum is of the one that it was worked out at', () => {
    const other = mark({ id: 'n', valve: 'exhaust', pushrod: 8 * IN });
    const hydraulic = { engine: { ...PLAIN.engine, lifter: 'hydraulic-roller' as const } };
    const of = (marks: readonly TipMarkEvidence[]) =>
      told(marks, sumOf(7.89, { added: 0.04 * IN }), hydraulic);
    for (const said of [of([mark(), other]), of([other, mark()])]) {
      expect(said).toMatch(/That is the one to order for 1 intake; the 7\.850 in of the mark of 1 intake is/);
      expect(said).toMatch(/The mark of 1 exhaust lets another length stay, and wants a sum of its own\.$/);
      expect(said).not.toMatch(/the mark holds/);
    }
    expect(told([mark(), other], sumOf(7.85))).toMatch(/\. The mark of 1 exhaust lets another length stay/);
    expect(told([mark({ pushrod: 7.7 * IN }), other], sumOf(7.85))).toMatch(
      /another length than the 7\.700 in/,
    );
  });

  test('nothing is added where no length moves the mark, the sum is doubted, or no mark is there', () => {
    const plain = /(end to end|is told of this length yet.*)\.$|\?$/;
    expect(told([], sumOf(7.85))).toMatch(plain);
    expect(told([{ ...OFF, side: 'sideways' }], sumOf(7.85))).toMatch(plain);
    expect(told([OFF], sumOf(7.85), { engine: { ...PLAIN.engine, mounting: 'shaft' } })).toMatch(plain);
    const hydraulic = { engine: { ...PLAIN.engine, lifter: 'hydraulic-roller' as const } };
    const doubted = told([OFF], sumOf(7.85), hydraulic);
    expect(doubted).toMatch(/^Nothing is told of this length yet/);
    expect(doubted).not.toMatch(/order none/);
  });
});
