import { describe, expect, test } from 'vitest';
import type { Evidence, PartEvidence } from '../../server/mechanics/assessment/evidence.ts';
import { firstOf, inHand, partOf, SORREL, seen, sized, without } from '../mechanics/assessment/hand-part.ts';
import { assessAsTold } from '../tools/told/assess-as-told.ts';

const assess = assessAsTold('part-calls');

/*
 * Calls about a part in the hand, each told in three orders of entry: what stands first, what is asked, what comes
 * next and what word the hole has. Families are invented; bands by common practice, no published source.
 */

interface Told {
  readonly call: string;
  readonly part: readonly PartEvidence[];
  readonly more?: Partial<Evidence>;
  /** Family that stands first, or `none`; with the least chance it must have. */
  readonly first: readonly [code: string, least: number];
  readonly asks?: readonly string[];
  readonly next?: string;
  readonly hole?: 'agrees' | 'cannot-tell' | 'differs';
  readonly threads?: RegExp;
}

const HOLE = 'hole-across-trunnion';
const holes = (...sizes: readonly number[]) => sizes.map((size) => sized(HOLE, size));

const CALLS: readonly Told[] = [
  {
    call: 'everything read with a caliper',
    part: SORREL,
    first: ['DEMO-SOR-160-B', 0.8],
    hole: 'agrees',
    threads: /^7\/16/,
  },
  {
    call: '“hole’s four thirty-five and a half: is that three-eighths?”',
    part: holes(0.4355, 0.436),
    first: ['held back', 0],
    hole: 'agrees',
    threads: /^7\/16/,
    next: 'width',
  },
  {
    call: 'a hole between sizes is tried by hand before anything is named',
    part: holes(0.384, 0.3845),
    first: ['held back', 0],
    asks: ['hole-between-sizes'],
    next: 'hole-between-sizes',
    hole: 'cannot-tell',
    threads: /^3\/8/,
  },
  {
    call: 'a hole of no size that rockers are made for',
    part: holes(0.41, 0.4105),
    first: ['held back', 0],
    asks: ['hole-between-sizes'],
    next: 'hole-between-sizes',
    hole: 'differs',
  },
  {
    call: 'the dot of the roller one place off',
    part: [...without('roller-diameter'), sized('roller-diameter', 4.96)],
    first: ['DEMO-SOR-160-B', 0.6],
    asks: ['size-impossible'],
    next: 'size-impossible',
    hole: 'agrees',
  },
  {
    call: 'millimetres of the pivot to tip typed as inches',
    part: [...without('pivot-to-tip'), sized('pivot-to-tip', 36.9)],
    first: ['DEMO-SOR-160-B', 0.5],
    asks: ['size-impossible'],
    next: 'size-impossible',
  },
  {
    call: 'hole and body entered for each other',
    part: [
      ...SORREL.filter(({ kind }) => kind !== HOLE && kind !== 'body-width'),
      ...holes(0.841, 0.842),
      sized('body-width', 0.4358),
    ],
    first: ['DEMO-SOR-160-B', 0.3],
    asks: ['sizes-swapped'],
    next: 'sizes-swapped',
  },
  {
    call: 'one roller that fits nothing, where all else fits one family',
    part: [...without('roller-diameter'), sized('roller-diameter', 0.35)],
    first: ['held back', 0],
    asks: ['reading-stands-alone'],
    next: 'reading-stands-alone',
  },
  {
    call: 'an oval hole',
    part: [...without(HOLE), ...holes(0.4355, 0.4405)],
    first: ['held back', 0],
    asks: ['two-sizes'],
  },
  {
    call: 'rings looked at in oil',
    part: [...without('rings'), seen('rings', 'none')],
    first: ['DEMO-SOR-160-B', 0.5],
    asks: ['rings-against-width'],
  },
  {
    call: 'all sizes guessed: nothing is settled, and the sizes are asked for again',
    part: SORREL.map((each) => (each.size === undefined ? each : { ...each, tool: 'guess' as const })),
    first: ['held back', 0],
    next: 'hole',
    hole: 'cannot-tell',
  },
];

/** By entry, backwards, and the marks and words before the sizes; lines are given out anew each time. */
const ORDERS: readonly ((part: readonly PartEvidence[]) => readonly PartEvidence[])[] = [
  (part) => part,
  (part) => part.toReversed(),
  (part) => [
    ...part.filter(({ size }) => size === undefined),
    ...part.filter(({ size }) => size !== undefined),
  ],
];

function toldIn(part: readonly PartEvidence[], more: Partial<Evidence> = {}): Evidence {
  return inHand(
    part.map((each, index) => ({ ...each, line: index + 1 })),
    more,
  );
}

describe.each(CALLS)('$call', ({ part, more, first, asks = [], next, hole, threads }) => {
  const [asEntered, ...others] = ORDERS.map((order) => toldIn(order(part), more));
  if (asEntered === undefined) throw new Error('three orders are expected');

  test('what stands first, what is asked, what is next and the word of the hole', () => {
    const [code, chance] = firstOf(asEntered);
    expect(code).toBe(first[0]);
    expect(chance).toBeGreaterThanOrEqual(first[1]);
    const assessment = assess(asEntered);
    expect(assessment.questions.map((each) => each.code)).toEqual(asks);
    if (next !== undefined) expect(assessment.next?.action).toBe(next);
    const [read] = partOf(assessment).holes;
    if (hole !== undefined) expect(read?.word).toBe(hole);
    if (threads !== undefined)
      for (const each of read?.threads ?? []) expect(each.designation).toMatch(threads);
  });

  test('the same in the other orders of entry', () => {
    for (const other of others) expect(assess(other)).toEqual(assess(asEntered));
  });
});
