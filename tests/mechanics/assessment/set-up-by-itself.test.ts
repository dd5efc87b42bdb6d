import { expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence, PassEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { buildOf, cleanSetUp, IN, lobe, passesOf } from './plain.ts';

/*
 * .544 less .018 of lash is .526 over a lobe of .340; at .200 of lobe (.200 × 1.6 − .018) is .302: arithmetic. A set-up that
 * is made after an answer says by itself how it was read: common practice, no published source.
 */
const passes = (id: string, from: number, lift: number): PassEvidence[] =>
  [
    ...passesOf('lobe-lift', [0.34, 0.34, 0.34], { setUpId: id }),
    ...passesOf('valve-lift', [lift, lift, lift], { setUpId: id }),
  ].map((pass, index) => ({ ...pass, line: from + index }));
const FIRST: Evidence = buildOf([], {
  card: { assumedRatio: 1.6, intake: lobe(0.34, { valveLift: 0.544 }), exhaust: lobe(0.345) },
  setUps: [{ ...cleanSetUp, lobeSource: 'indicator' }],
  passes: [
    ...passes(cleanSetUp.id, 1, 0.526),
    ...passesOf('valve-lift-at', [0.302], { atLobeLift: 0.2 * IN, line: 10 }),
  ],
});

test('lash that was left in one set-up is not in the next, which was made at zero', () => {
  const asked = assess(FIRST).questions.find(({ code }) => code === 'lash-left-in');
  expect(asked).toBeDefined();
  const found = {
    id: 'yes',
    line: 20,
    questionId: asked?.id ?? '',
    code: 'lash-left-in',
    question: asked?.ask ?? '',
    answer: 'Yes',
    found: true,
  };
  expect(assess({ ...FIRST, answers: [found] }).next?.sentence).toMatch(/zero lash/);
  const second = { ...cleanSetUp, id: 'set-up-2', number: 2, lobeSource: 'indicator' as const };
  const now = assess({
    ...FIRST,
    answers: [found],
    setUps: [...FIRST.setUps, second],
    passes: [...FIRST.passes, ...passes('set-up-2', 30, 0.544)],
  });
  const lashOf = now.questions.flatMap(({ about, code }) =>
    about.of === 'set-up' && code === 'lash-setting-not-said' ? [about.number] : [],
  );
  expect(lashOf).not.toContain(2);
  expect(now.headlines[0]?.sentence).toMatch(/1\.600 .* agrees/);
  expect(now.next?.sentence ?? '').not.toMatch(/zero lash|Take the lash/);
});

/* .345 × 1.6 = .552: lobe and lift of the exhaust to the last digit; the intake would lift .340 × 1.6 = .544 (arithmetic). */
test('lobe and lift that are the other valve’s by the card are asked first', () => {
  const { next, questions } = assess({
    ...FIRST,
    card: {
      assumedRatio: 1.6,
      intake: lobe(0.34, { valveLift: 0.544 }),
      exhaust: lobe(0.345, { valveLift: 0.552 }),
    },
    passes: [
      ...passesOf('lobe-lift', [0.345, 0.345, 0.345]),
      ...passesOf('valve-lift', [0.552, 0.552, 0.552]),
    ],
  });
  expect(questions.find(({ code }) => code === 'valve-swapped')?.weight).toBe('strong');
  expect(next?.action).toBe('valve-swapped');
});
