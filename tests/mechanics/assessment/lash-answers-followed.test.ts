import { describe, expect, test } from 'vitest';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { about, answering, line, log, toldOf, withLines, workOfLog } from './lash-log.ts';

/* Set .022 hot, found .034 hot: .012 more, where .004 is ordinary; common practice, no published source. */
const hot = { engine: 'hot' } as const;
const set = line(1, '2026-06-01', 0.022, { moment: 'set', ...hot });
const grown = line(2, '2026-11-20', 0.034, hot);
const NOISE = 'noise-or-failure';
const STRIKE = /strike|[Ee]nter (?:that|those)/;

describe('a gap that grew, once its question is answered', () => {
  test.each(['adjuster', NOISE] as const)('%s: wear that was found strikes nothing out', (goal) => {
    const found = toldOf(answering(about(log([set, grown]), goal), 'lash-grew', 'found'));
    expect(found.next?.sentence).not.toMatch(STRIKE);
    expect(found.told).toMatch(/grew by \.012 in.*Its cause was found, as was answered/);
    expect(found.told).not.toMatch(/Is something wearing/);
  });

  test('on an adjuster call what was found is put right, and the gap is set last', () => {
    const evidence = answering(about(log([set, grown])), 'lash-grew', 'found');
    const { mend } = workOfLog(evidence);
    expect(mend?.sentence).toMatch(
      /^3 exhaust: change what is worn, .* read that lobe’s lift against the others\. Set the lash last/,
    );
    // Set again, nothing of it is left to mend.
    expect(workOfLog(withLines(evidence, line(3, '2026-11-21', 0.022, { moment: 'set', ...hot }))).mend).toBe(
      undefined,
    );
  });

  test('set again and found as it was set, its cause is known still', () => {
    const set2 = line(3, '2026-11-21', 0.022, { moment: 'set', ...hot });
    const after = line(4, '2026-12-20', 0.023, hot);
    for (const [answer, said] of [
      ['found', /Its cause was found, as was answered\./],
      ['put-right', /Its cause was found and put right, as was answered\./],
      ['not-found', /Why it grew is not known\./],
    ] as const) {
      const evidence = answering(about(log([set, grown])), 'lash-grew', answer);
      expect(toldOf(withLines(evidence, set2, after)).told).toMatch(said);
    }
  });

  test('nothing found sends on to the lobe, and does not set it', () => {
    const looked = toldOf(answering(about(log([set, grown])), 'lash-grew', 'not-found'));
    expect(looked.told).toMatch(/Looked: nothing was found there\. It is not set again before/);
  });

  test.each([
    ['moved', 'found', /The nut let go, as was answered/],
    ['not-looked', 'found', /The nut let go, as was answered/],
    ['not-looked', 'not-found', /Looked: the nut had not moved\. Then something on that valve wears/],
  ] as const)('a nut that %s, %s', (nut, answer, said) => {
    const evidence = about(log([set, { ...grown, nut }]));
    expect(toldOf(answering(evidence, 'lash-grew', answer)).told).toMatch(said);
  });

  test('how the rockers are mounted may be said later: what was answered stays answered', () => {
    const unsaid: Evidence = {
      ...about(log([set, { ...grown, nut: 'not-looked' }])),
      engine: { cylinders: 8, lifter: 'solid-flat' },
    };
    const answered = answering(unsaid, 'lash-grew', 'found');
    const later: Evidence = { ...answered, engine: { ...answered.engine, mounting: 'shaft' } };
    expect(toldOf(later).codes).not.toContain('lash-grew');
    expect(toldOf(later).told).toMatch(/The lock nut let go/);
  });
});

describe('a gap that was read at another heat', () => {
  const cold = line(2, '2026-11-20', 0.03);
  test('as the log has them leads to a reading at the heat it was set at', () => {
    const evidence = answering(about(log([set, cold])), 'lash-heat-differs', 'not-found');
    const { told, next } = toldOf(evidence);
    expect(told).toMatch(/It is read again at the heat it was set at/);
    expect(next?.sentence).toMatch(/^Read the gap of 3 exhaust again hot, as it was set/);
  });

  test('a heat that is wrong is put right in the log', () => {
    const evidence = answering(about(log([set, cold])), 'lash-heat-differs', 'found');
    expect(toldOf(evidence).told).toMatch(/A heat in the log is wrong, as was answered/);
  });
});

describe('a setting that is unusual', () => {
  const card = { lashAt: 'hot', intake: {}, exhaust: { lash: 0.014 * IN } } as const;
  const odd: Evidence = { ...about(log([set])), card };
  test('that is asked for is told no more; one that is not is found out first', () => {
    expect(toldOf(odd).told).toMatch(/Is this the lash that the cam’s maker asks for/);
    expect(toldOf(answering(odd, 'lash-unusual', 'not-found')).told).not.toMatch(/Is this the lash/);
    expect(toldOf(answering(odd, 'lash-unusual', 'found')).told).toMatch(
      /It is not what is asked for, as was answered/,
    );
  });
});
