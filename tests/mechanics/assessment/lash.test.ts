import { describe, expect, test } from 'vitest';
import { usableLash } from '../../../server/mechanics/assessment/common/usable-lash.ts';
import type { Evidence, LashEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { lashPart } from '../../../server/mechanics/assessment/lash/lash.ts';
import { stopReasons } from '../../../server/mechanics/assessment/stop.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from './plain-build.ts';

const line = (number: number, day: string, gap: number, more: Partial<LashEvidence> = {}): LashEvidence => ({
  id: `l${number}`,
  line: number,
  standing: true,
  cylinder: 3,
  valve: 'exhaust',
  gap: { value: gap * IN },
  readAs: `${gap} in`,
  moment: 'found',
  engine: 'cold',
  nut: 'held',
  day,
  ...more,
});
const log = (lash: readonly LashEvidence[]): Evidence => ({ ...PLAIN, lash });

/** Set at .016, found at .024, set again, found at .023: it grew by .008 and by .007, where .004 is ordinary. */
const GREW_AGAIN = [
  line(1, '2026-01-10', 0.016, { moment: 'set' }),
  line(2, '2026-02-10', 0.024),
  line(3, '2026-02-10', 0.016, { moment: 'set' }),
  line(4, '2026-03-10', 0.023),
];

describe('the lash log: growth over .004 is asked about, common practice, no published source', () => {
  test('the newest line is the lash, though a larger gap was found before', () => {
    const part = lashPart(log(GREW_AGAIN.slice(0, 3)));
    expect((part.quantities[0]?.value ?? 0) / IN).toBeCloseTo(0.016, 12);
    expect(part.quantities[0]?.conditions).toEqual(['cold', 'as it was set']);
  });

  test('grown once is a question, grown again after a reset a stop', () => {
    const once = lashPart(log(GREW_AGAIN.slice(0, 2)));
    expect(once.questions.map(({ code, weight }) => [code, weight])).toEqual([['lash-grew', 'weak']]);
    expect(once.stop).toEqual([]);
    const again = lashPart(log(GREW_AGAIN));
    expect(again.questions.map(({ code, weight }) => [code, weight])).toEqual([['lash-grew', 'strong']]);
    expect(again.stop.map(({ code, line: at }) => [code, at])).toEqual([['lash-grew-again', 4]]);
    expect(again.headlines[0]?.sentence).toBe(
      'Lash of 3 exhaust, .023 in now. It grew by .007 in, where .004 in is ordinary. Is something wearing on this valve?',
    );
  });

  test('the days count, not the order of entry', () => {
    expect(lashPart(log(GREW_AGAIN.toReversed()))).toEqual(lashPart(log(GREW_AGAIN)));
    const late = line(9, '2026-01-05', 0.03);
    expect((lashPart(log([...GREW_AGAIN, late])).quantities[0]?.value ?? 0) / IN).toBeCloseTo(0.023, 12);
  });

  test('the stop is lifted by a person once what was found is on the record', () => {
    const evidence = log(GREW_AGAIN);
    const [question] = lashPart(evidence).questions;
    const answered: Evidence = {
      ...evidence,
      answers: [
        {
          id: 'a',
          line: 7,
          questionId: question?.id ?? '',
          code: 'lash-grew',
          question: '',
          answer: 'stem tip',
          found: true,
        },
      ],
    };
    const call = {
      ...PLAIN.call,
      stopsLifted: lashPart(evidence).stop.map(({ id, entryId = '' }) => ({ stopId: id, entryId })),
    };
    const stops = (given: Evidence) => stopReasons(given, lashPart(given).stop).length;
    expect([stops(answered), stops({ ...evidence, call }), stops({ ...answered, call })]).toEqual([1, 1, 0]);
  });

  test('a later reading that is right again takes no stop away: only a person does, once it is answered', () => {
    const later = [
      ...GREW_AGAIN,
      line(5, '2026-03-11', 0.016, { moment: 'set' }),
      line(6, '2026-03-20', 0.017),
    ];
    const part = lashPart(log(later));
    expect(part.stop.map(({ code, entryId }) => [code, entryId])).toEqual([['lash-grew-again', 'l4']]);
    expect(part.questions.map(({ code, weight }) => [code, weight])).toEqual([['lash-grew', 'strong']]);
    expect(part.headlines[0]?.sentence).toMatch(/^Lash of 3 exhaust, \.017 in now\. Before that: It grew by/);
    const call = {
      ...PLAIN.call,
      stopsLifted: part.stop.map(({ id, entryId = '' }) => ({ stopId: id, entryId })),
    };
    const lifted = lashPart({ ...log(later), call });
    expect(lifted.stop).toEqual([]);
    expect(lifted.headlines[0]?.sentence).toMatch(/grew by .* before it was set again, and has grown by/);
  });

  test('hot against cold is not a growth', () => {
    const part = lashPart(
      log([line(1, '2026-01-10', 0.016, { moment: 'set' }), line(2, '2026-01-11', 0.03, { engine: 'hot' })]),
    );
    expect(part.questions.map(({ code }) => code)).toEqual(['lash-heat-differs']);
  });
});

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
