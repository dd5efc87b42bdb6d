import { describe, expect, test } from 'vitest';
import type { Evidence, PassEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { MM } from '../../../server/mechanics/kit/si.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { PLAIN, SET_UP } from './plain-build.ts';

const assess = assessAsTold('bucket-lift');

/*
 * Lifts under buckets. That a bucket moves one to one with its lobe is how it is made, general knowledge; that lash left
 * in shows as the lash within ± .003 in is common practice, no published source. Figures invented.
 */

const lifts = (...all: number[]): PassEvidence[] =>
  all.map((value, at) => ({
    id: `pass-${at + 1}`,
    line: at + 1,
    standing: true,
    setUpId: SET_UP.id,
    kind: 'valve-lift',
    pass: at + 1,
    value: value * MM,
    counted: true,
    readAs: `${value} mm`,
  }));

const told = (passes: readonly PassEvidence[], more: Partial<Evidence> = {}) =>
  assess({
    ...PLAIN,
    call: { ...PLAIN.call, units: 'metric' },
    engine: { cylinders: 4, gear: 'bucket', lifter: 'solid-flat' },
    card: { intake: { lobeLift: 9.79 * MM, lash: 0.2 * MM }, exhaust: { lobeLift: 9.2 * MM } },
    setUps: [{ ...SET_UP, perTurn: MM, graduation: 0.01 * MM, errorLimit: 0.03 * MM }],
    passes,
    ...more,
  });

describe('a lift under a bucket', () => {
  test('is its lobe’s: as the card’s it agrees, with no ratio, no name and no doubt', () => {
    const { headlines, questions, judgements, explanations, remaining, quantities } = told(
      lifts(9.79, 9.79, 9.78),
    );
    expect(headlines.map(({ sentence }) => sentence)).toEqual([
      'Lift of 1 intake, 9.79 mm: as the card’s lobe, 9.79 mm. A bucket moves as its lobe does.',
    ]);
    expect(questions.map(({ code }) => code)).toEqual(['valve-gear']);
    expect(judgements.map(({ word }) => word)).toEqual(['agrees']);
    expect([explanations, remaining]).toEqual([[], []]);
    expect(quantities.filter(({ dimension }) => dimension === 'ratio')).toEqual([]);
  });

  test.each([
    ['short by the lash of the card, and said to be at zero', [9.58, 9.59, 9.59], 'lash-left-in'],
    ['short by a whole turn of the hand', [8.79, 8.79, 8.78], 'turn-miscounted'],
    ['short by neither', [9.3, 9.31, 9.3], 'card-not-this-lobe'],
  ])('%s: asked', (_, passes, code) => {
    const { questions, judgements, headlines } = told(lifts(...passes));
    expect(questions.map((each) => each.code)).toContain(code);
    expect(judgements.map(({ word }) => word)).toEqual([undefined]);
    for (const { sentence } of headlines) expect(sentence.split(' ').length).toBeLessThanOrEqual(25);
  });

  test('read with the lash in and its setting said: it is put back', () => {
    const set = {
      ...SET_UP,
      perTurn: MM,
      errorLimit: 0.03 * MM,
      lash: 'set',
      lashSetting: 0.2 * MM,
    } as const;
    const { questions, headlines } = told(lifts(9.59, 9.59, 9.58), { setUps: [set] });
    expect(questions.map(({ code }) => code)).toEqual(['valve-gear']);
    expect(headlines[0]?.sentence).toMatch(/as the card’s lobe/);
  });

  test('without a card it is told, and what is not on record', () => {
    const { headlines } = told(lifts(9.79), { card: { intake: {}, exhaust: {} } });
    expect(headlines[0]?.sentence).toMatch(/it is the lobe’s own.*not on record\.$/);
  });
});
