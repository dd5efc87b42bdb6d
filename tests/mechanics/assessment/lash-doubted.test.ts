import { describe, expect, test } from 'vitest';
import { usableLash } from '../../../server/mechanics/assessment/common/usable-lash.ts';
import type { Evidence, LashEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { lashPart } from '../../../server/mechanics/assessment/lash/lash.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { line, log } from './lash-log.ts';
import { PLAIN } from './plain-build.ts';

/* What a lash usually is, .002 to .040 in, and the slips: common practice, no published source. */
describe('a lash that hardly can be is asked, and not used until that is answered', () => {
  const sizes = (lash: readonly LashEvidence[], more: Partial<Evidence> = {}) =>
    lashPart({ ...log(lash), ...more }).questions.flatMap(({ code, size = '' }) =>
      code === 'lash-unlikely' ? [size] : [],
    );

  test.each([
    // .25 in is the size of a 0.25 mm feeler, .0098 in; a dot one place off is .025.
    ['a metric feeler typed as inches', 0.25, /Was .*0?\.25 mm/],
    ['the dot one place off', 0.16, /Was .*\.016 in/],
    ['two digits the other way round', 0.062, /Was .*\.026 in/],
    ['thinner than any feeler', 0.0009, /No feeler is so thin.*\.009 in/],
    ['a solid lash of .200', 0.2, /hardly ever set.*\.020 in/],
  ])('%s', (_, gap, said) => {
    const found = sizes([line(1, '2026-01-10', gap)]);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatch(said);
  });

  test.each([0.0015, 0.002, 0.008, 0.016, 0.03, 0.04, 0])('%f in is not', (gap) => {
    expect(sizes([line(1, '2026-01-10', gap)])).toEqual([]);
  });

  test('digits swapped within what is usual, where the other valves of its side agree', () => {
    const others = [1, 2, 4].map((cylinder) =>
      line(cylinder, '2026-01-10', 0.012, { cylinder, id: `o${cylinder}` }),
    );
    const found = sizes([...others, line(9, '2026-01-10', 0.021)]);
    expect(found).toEqual([expect.stringMatching(/have \.012 in.*Was \.012 in meant\?/)]);
    expect(sizes([...others, line(9, '2026-01-10', 0.0012)])).toEqual([
      expect.stringMatching(/Was \.012 in/),
    ]);
    // Far off with no slip that leads there: that is what a log is read for.
    expect(sizes([...others, line(9, '2026-01-10', 0.026)])).toEqual([]);
  });

  test('it is no lash to work with until then; answered, it counts', () => {
    const evidence = log([line(1, '2026-01-10', 0.2)]);
    const place = { cylinder: 3, valve: 'exhaust' } as const;
    expect(usableLash(evidence, place)).toBeUndefined();
    const part = lashPart(evidence);
    expect(part.headlines[0]?.sentence).toBe(
      'No lash of 3 exhaust counts yet. Is the lash of 3 exhaust really .200 in?',
    );
    expect(part.quantities[0]?.lacks).toEqual(['whether it was read and entered right']);
    const answers = part.questions.map(({ id, code }) => ({
      ...{ id: 'a', line: 5, questionId: id, code, question: '' },
      ...{ answer: 'not found', found: false },
    }));
    expect(usableLash({ ...evidence, answers }, place)?.id).toBe('l1');
    expect(lashPart({ ...evidence, answers }).quantities[0]?.lacks).toEqual([]);
  });
});

/* A hydraulic lifter has preload and no lash; what a gap at one means is common practice, no published source. */
describe('a gap that was found at a hydraulic lifter', () => {
  const found = line(1, '2026-02-10', 0.012);
  const hydraulic = (answer?: string, gap = found): Evidence => {
    const evidence = {
      ...log([gap]),
      engine: { ...PLAIN.engine, lifter: 'hydraulic-flat' as const },
    };
    const [question] = lashPart(evidence).questions;
    return answer === undefined
      ? evidence
      : {
          ...evidence,
          answers: [
            {
              id: 'a',
              line: 9,
              code: question?.code ?? '',
              questionId: question?.id ?? '',
              question: '',
              answer,
            },
          ],
        };
  };
  const lacks = (evidence: Evidence) => lashPart(evidence).quantities[0]?.lacks.join() ?? '';

  test('is asked strongly, and is no lash until then', () => {
    const { questions } = lashPart(hydraulic());
    expect(questions.map(({ code, weight }) => [code, weight])).toEqual([['gap-on-hydraulic', 'strong']]);
    expect(lacks(hydraulic())).toMatch(/how its hydraulic lifter stood/);
  });

  test.each([
    ['pressed-down', /no lash/, /plunger travel and no lash/],
    ['pumped-up', /^$/, /the adjuster is out by that/],
    ['solid', /lifters put right/, /the lifters are solid, as was answered/],
  ])('%s', (answer, lack, said) => {
    const evidence = hydraulic(answer);
    expect(lacks(evidence)).toMatch(lack);
    const { headlines, questions } = lashPart(evidence);
    expect(headlines.map(({ sentence }) => sentence).join()).toMatch(said);
    expect(questions.map(({ weight }) => weight)).toEqual(['weak']);
  });

  test('no gap is what one should have, and nothing is asked', () => {
    expect(lashPart(hydraulic(undefined, line(1, '2026-02-10', 0))).questions).toEqual([]);
  });
});

/* Two feelers of one gap on one morning agree within .002: common practice, no published source. */
describe('one gap that was found as two', () => {
  const twice = (second: number, day = '2026-02-10') =>
    log([line(1, '2026-02-10', 0.02), line(2, day, second)]);
  const codes = (evidence: Evidence) => lashPart(evidence).questions.map(({ code }) => code);

  const answeredWith = (answer: string, both: readonly LashEvidence[]): Evidence['answers'] => {
    const [question] = lashPart(log(both)).questions;
    return [{ id: 'a', line: 9, code: 'found-twice', questionId: question?.id ?? '', question: '', answer }];
  };

  test.each([
    [0.022, []],
    [0.0221, ['found-twice']],
    [0.018, []],
    [0.0179, ['found-twice']],
  ])('on one day, .020 and %d', (second, wanted) => {
    expect(codes(twice(second))).toEqual(wanted);
  });

  test('on two days it may have grown, which the log says by itself', () => {
    expect(codes(twice(0.023, '2026-02-11'))).toEqual([]);
    expect(codes(twice(0.026, '2026-02-11'))).toEqual(['lash-grew']);
  });

  test('both ends are told until somebody says which holds, whichever was entered first', () => {
    const [a, b] = [line(1, '2026-02-10', 0.02), line(2, '2026-02-10', 0.028)];
    const [quantity] = lashPart(log([a, b])).quantities;
    expect([(quantity?.low ?? 0) / IN, (quantity?.high ?? 0) / IN]).toEqual([
      expect.closeTo(0.02, 12),
      expect.closeTo(0.028, 12),
    ]);
    expect(quantity?.lacks).toEqual(['which of the gaps it was found at holds']);
    const swapped = log([
      line(2, '2026-02-10', 0.02, { id: 'l1' }),
      line(1, '2026-02-10', 0.028, { id: 'l2' }),
    ]);
    expect(lashPart(swapped).questions.map(({ id }) => id)).toEqual(
      lashPart(log([a, b])).questions.map(({ id }) => id),
    );
    expect(usableLash(log([a, b]), a)).toBeUndefined();
  });

  test('answered, or read a third time, that one is the lash', () => {
    const both = [line(1, '2026-02-10', 0.02), line(2, '2026-02-10', 0.028)];
    const answers = answeredWith('gap-1', both);
    expect(
      (usableLash({ ...log(both), answers }, both[0] ?? line(1, '', 0))?.gap.value ?? 0) / IN,
    ).toBeCloseTo(0.02, 12);
    const third = log([...both, line(3, '2026-02-10', 0.028)]);
    expect((usableLash(third, line(1, '', 0))?.gap.value ?? 0) / IN).toBeCloseTo(0.028, 12);
    expect(lashPart(third).questions.map(({ weight }) => weight)).toEqual(['weak']);
  });

  test('nobody can say: it is read once more, and nothing is worked with', () => {
    const both = [line(1, '2026-02-10', 0.02), line(2, '2026-02-10', 0.028)];
    const answers = answeredWith('neither', both);
    expect(usableLash({ ...log(both), answers }, line(1, '', 0))).toBeUndefined();
  });
});

describe('a figure that something else on record speaks for is asked, and counts meanwhile', () => {
  const card = { lashAt: 'hot', intake: {}, exhaust: { lash: 0.02 * IN } } as const;
  const hot = { engine: 'hot' } as const;
  const weights = (lash: readonly LashEvidence[]) =>
    lashPart({ ...log(lash), card }).questions.flatMap(({ code, weight }) =>
      code === 'lash-unlikely' ? [weight] : [],
    );

  test('found so before: .012 is no .021, and the valve may be sinking', () => {
    const lines = [
      line(1, '2026-10-02', 0.02, { moment: 'set', ...hot }),
      line(2, '2026-10-10', 0.01, hot),
      line(3, '2026-10-11', 0.02, { moment: 'set', ...hot }),
      line(4, '2026-10-20', 0.012, hot),
    ];
    expect(weights(lines)).toEqual(['weak']);
    expect(lashPart({ ...log(lines), card }).notToRun.map(({ id }) => id)).toEqual([
      'not-to-run:lash-closed:3-exhaust',
    ]);
    expect(weights(lines.slice(3))).toEqual(['strong']);
  });

  test('its nut had moved: .061 is wide for that; .25 may be a metric feeler all the same', () => {
    const moved = { nut: 'moved', ...hot } as const;
    expect(weights([line(1, '2026-10-10', 0.061, moved)])).toEqual(['weak']);
    expect(weights([line(1, '2026-10-10', 0.25, moved)])).toEqual(['strong']);
    expect(weights([line(1, '2026-10-10', 0.061, hot)])).toEqual(['strong']);
  });

  test('a wrong unit comes to the same twice', () => {
    expect(weights([line(1, '2026-10-10', 0.25, hot), line(2, '2026-10-11', 0.25, hot)])).toEqual([
      'strong',
      'strong',
    ]);
  });
});
