import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { buildOf, cleanSetUp, stamped } from './plain.ts';

const LIFTS = [0.557, 0.557, 0.557];
const told = (evidence: Evidence) =>
  assess(evidence).judgements.find(({ id }) => id.startsWith('card-ratio:'))?.sentence;
const { armId: _, ...noArm } = cleanSetUp;

/* The card works with 1.6, and nothing was sold as anything: what is said of the mark. */
describe('a card with a ratio, and no arm to set it against', () => {
  test('no arm was named: its mark is not said', () => {
    const evidence = buildOf(LIFTS, { arms: [], seats: [], setUps: [noArm] });
    expect(told(evidence)).toMatch(/is not known, and its mark is not said\.$/);
  });

  test('an arm whose mark nobody entered', () => {
    expect(told(buildOf(LIFTS, { arms: [stamped('')] }))).toMatch(/, and its mark is not said\.$/);
  });

  test('a mark that is no ratio', () => {
    expect(told(buildOf(LIFTS, { arms: [stamped('K7')] }))).toMatch(
      /, and it has no mark that is its ratio\.$/,
    );
  });

  test.each([
    ['1.7', 'other-number', /the “1\.7” on it was said to be another number\.$/],
    ['17', 'other-number', /the “17” on it was said to be another number\.$/],
    ['17', 'not-known', /whether the “17” on it is its ratio is not said\.$/],
    ['17', undefined, /whether the “17” on it is its ratio is not said\.$/],
  ] as const)('“%s”, answered %s', (stamp, answer, said) => {
    const given = { id: 'said', line: 90, code: 'stamp-is-ratio', question: '', answer: answer ?? '' };
    const answers = answer === undefined ? [] : [given];
    expect(told(buildOf(LIFTS, { arms: [stamped(stamp)], answers }))).toMatch(said);
  });
});

/* A card of 1.5 goes with what is sold as 1.5; an arm stamped 1.6 that is to be fitted is no reason to doubt it. */
describe('a card for the rockers that are to come off', () => {
  const asksOf = (valve: 'intake' | 'exhaust', rockers: Evidence['rockers']) =>
    assess(
      buildOf([0.542, 0.542, 0.542], {
        card: { assumedRatio: 1.5, intake: { lobeLift: 0.00861 }, exhaust: { lobeLift: 0.00861 } },
        setUps: [{ ...cleanSetUp, valve }],
        seats: [{ cylinder: 1, valve, armId: 'arm-a' }],
        rockers: { soldAs: 1.5, ...rockers },
      }),
    ).questions.map(({ code }) => code);

  test('is asked about where no change is planned of that side', () => {
    expect(asksOf('intake', { plannedExhaust: 1.6 })).toContain('card-ratio');
  });

  test('is not where one is, of both sides or of the exhausts alone', () => {
    expect(asksOf('exhaust', { planned: 1.6 })).not.toContain('card-ratio');
    expect(asksOf('exhaust', { plannedExhaust: 1.6 })).not.toContain('card-ratio');
  });
});
