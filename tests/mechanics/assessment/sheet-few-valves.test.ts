import { describe, expect, test } from 'vitest';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { lobesApart, lobesDown } from '../../../server/mechanics/valve-sheet/lobes-down.ts';
import { judgeSide } from '../../../server/mechanics/valve-sheet/odd-valves.ts';
import { PLAIN, read } from './plain-build.ts';
import { heard } from './whole-sheet.ts';

/** Exhaust valves of a solid engine of which nobody said how many cylinders it has: lobes .360, lifts as given. */
const exhausts = (lifts: readonly number[], more: Partial<Evidence> = {}): Evidence => ({
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'one-valve-differs' },
  engine: { lifter: 'solid-flat', mounting: 'stud' },
  card: { intake: {}, exhaust: {} },
  rockers: {},
  ...more,
  sheet: lifts.flatMap((lift, index) => [
    read(index + 1, 'exhaust', 'lobe-lift', 0.36, { lash: 'zero' }),
    read(index + 1, 'exhaust', 'valve-lift', lift, { lash: 'zero' }),
  ]),
});
const oddOf = (evidence: Evidence) =>
  heard(evidence)
    .all.judgements.filter(({ word }) => word === 'odd')
    .map(({ sentence }) => sentence);

describe('few valves of a side', () => {
  test('.541, .540 and .522: the median is .540, and the third alone is odd, .018 low', () => {
    const [only, ...more] = oddOf(exhausts([0.541, 0.54, 0.522]));
    expect(more).toEqual([]);
    expect(only).toContain('3 exhaust is the odd one');
    expect(only).toContain('.018 in low');
  });

  test('whichever comes first, and with a high one', () => {
    expect(oddOf(exhausts([0.522, 0.541, 0.54])).map((each) => each.slice(0, 9))).toEqual(['1 exhaust']);
    expect(oddOf(exhausts([0.541, 0.56, 0.54])).map((each) => each.slice(0, 9))).toEqual(['2 exhaust']);
  });

  test('two that differ, and three of which no two go together: which is off is not told', () => {
    const two = heard(exhausts([0.541, 0.522]));
    expect(oddOf(exhausts([0.541, 0.522]))).toEqual([]);
    expect(two.headlines.join(' ')).toContain(
      '1 and 2 exhaust lie .019 in apart. Two can’t tell which of them is off. First: ',
    );
    expect(two.sentence).toContain('another exhaust');
    expect(oddOf(exhausts([0.541, 0.53, 0.515]))).toEqual([]);
    expect(heard(exhausts([0.541, 0.53, 0.515])).headlines.join()).toContain('.026 in apart');
  });

  test('of four: two off to one side are not told from the others, two off to either side are', () => {
    expect(oddOf(exhausts([0.54, 0.541, 0.522, 0.51]))).toEqual([]);
    expect(heard(exhausts([0.54, 0.541, 0.522, 0.51])).headlines.join()).toContain('.031 in apart');
    expect(oddOf(exhausts([0.54, 0.541, 0.52, 0.56])).map((each) => each.slice(0, 9))).toEqual([
      '3 exhaust',
      '4 exhaust',
    ]);
  });

  test('all read, and they still differ: each is read once more, then nothing goes round', () => {
    const all = exhausts([0.541, 0.522], { engine: { cylinders: 2, lifter: 'solid-flat' } });
    expect(heard(all).sentence).toContain('Read 1 and 2 exhaust once more');
    const again = [0.541, 0.522].map((lift, index) =>
      read(index + 1, 'exhaust', 'valve-lift', lift, { lash: 'zero' }),
    );
    expect(heard({ ...all, sheet: [...all.sheet, ...again] }).sentence).not.toContain('once more');
  });

  test('with one valve read the next is another of its side, not the end of the call', () => {
    expect(heard(exhausts([0.541])).sentence).toContain('another exhaust');
  });

  test('the same of lobes: a good one between a high one and one like itself is on the middle', () => {
    const lobes = (values: readonly number[]) =>
      values.map((lobe, index) => ({ cylinder: index + 1, valve: 'exhaust' as const, lobeLift: lobe * IN }));
    expect(lobesDown(lobes([0.36, 0.36, 0.382]))).toEqual([]);
    expect(lobesDown(lobes([0.36, 0.36, 0.342])).map(({ cylinder }) => cylinder)).toEqual([3]);
    // Half of them low: no middle tells which half is worn, so that the side is stopped and no lobe is named.
    expect(lobesDown(lobes([0.358, 0.358, 0.343, 0.343]))).toEqual([]);
    expect(lobesApart(lobes([0.358, 0.358, 0.343, 0.343]))?.apart).toBeCloseTo(0.015 * IN, 9);
    const odd = judgeSide('exhaust', lobes([0.36, 0.36, 0.342]));
    expect(odd.odd.map(({ cylinder }) => cylinder)).toEqual([3]);
  });
});

test('the geometry of a finger follower: its arms are next, and the call does not end with nothing read', () => {
  const said = heard({
    ...PLAIN,
    call: { ...PLAIN.call, goal: 'geometry' },
    engine: { gear: 'finger-follower' },
  });
  expect(said.sentence).toContain('follower’s arms');
});
