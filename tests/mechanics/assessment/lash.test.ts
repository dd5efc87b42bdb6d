import { describe, expect, test } from 'vitest';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { lashPart } from '../../../server/mechanics/assessment/lash/lash.ts';
import { stopReasons } from '../../../server/mechanics/assessment/stop.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { line, log } from './lash-log.ts';
import { PLAIN } from './plain-build.ts';

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
    expect(part.headlines[0]?.sentence).toMatch(/^Lash of 3 exhaust, \.017 in now\. Before that: it grew by/);
    const call = {
      ...PLAIN.call,
      stopsLifted: part.stop.map(({ id, entryId = '' }) => ({ stopId: id, entryId })),
    };
    const lifted = lashPart({ ...log(later), call });
    expect(lifted.stop).toEqual([]);
    expect(lifted.headlines[0]?.sentence).toMatch(
      /grew by .* before it was set again; whether it has grown since can’t be told/,
    );
  });

  test('hot against cold is not a growth', () => {
    const part = lashPart(
      log([line(1, '2026-01-10', 0.016, { moment: 'set' }), line(2, '2026-01-11', 0.03, { engine: 'hot' })]),
    );
    expect(part.questions.map(({ code }) => code)).toEqual(['lash-heat-differs']);
  });
});
