import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import { buildOf, cleanSetUp, lobe, passesOf } from './plain.ts';

/* Passes of one reading agree within .002 in: common practice, no published source. Differences: arithmetic. */
const told = (lifts: readonly number[], lobes: readonly number[] = []) => {
  const { headlines, next } = assess(
    buildOf([], {
      card: { assumedRatio: 1.6, intake: lobe(0.35), exhaust: lobe(0.35) },
      setUps: [{ ...cleanSetUp, lobeSource: lobes.length > 0 ? 'indicator' : 'card' }],
      passes: [...passesOf('lobe-lift', lobes), ...passesOf('valve-lift', lifts)],
    }),
  );
  return { text: headlines.map(({ sentence }) => sentence).join('\n'), next: next?.sentence ?? '' };
};

describe('passes that scatter', () => {
  test('.560 .571 .564: two that lie .004 apart themselves make no third the odd one', () => {
    const { text, next } = told([0.56, 0.571, 0.564]);
    expect(text).not.toMatch(/pass 2 entered again/);
    expect(next).toMatch(/take one more pass of the valve lift: nothing says which of them is right/);
  });

  test('.560 .571 .561: the second is the odd one', () => {
    expect(told([0.56, 0.571, 0.561]).text).toMatch(/pass 2 entered again or struck out/);
  });

  test('once three more repeat, those before them are entered again or struck out', () => {
    expect(told([0.56, 0.571, 0.564, 0.5655, 0.566, 0.5655]).next).toBe(
      'Enter passes 1, 2 and 3 of 1 intake again, or strike them out with the reason: passes 4, 5 and 6 repeat within .001 in.',
    );
  });

  test('falling over a solid lifter, the base is looked at first, then three are taken', () => {
    // .578 .571 .562: .008 a pass, and no turn makes it.
    expect(told([0.578, 0.571, 0.562]).next).toBe(
      '1 intake: Tighten the base, look at the zero, and take three more passes.',
    );
  });
});

test('what was answered of the lobe is done, not asked once more', () => {
  const build = buildOf([], {
    card: { assumedRatio: 1.6, intake: lobe(0.35), exhaust: lobe(0.35) },
    setUps: [{ ...cleanSetUp, lobeSource: 'indicator' }],
    passes: [...passesOf('lobe-lift', [0.56, 0.56, 0.56]), ...passesOf('valve-lift', [0.56, 0.56, 0.56])],
  });
  const asked = assess(build).questions.find(({ code }) => code === 'gross-lift-as-lobe');
  expect(asked?.test).toBe(
    'Ask where the indicator stood for the lobe: at the lifter, or at the retainer. Then read the lobe at the lifter.',
  );
  const answers = [
    {
      id: 'answer-1',
      line: 100,
      code: 'gross-lift-as-lobe',
      question: asked?.ask ?? '',
      questionId: asked?.id ?? '',
      setUpId: cleanSetUp.id,
      answer: 'found',
      found: true,
    },
  ];
  const ofLobe = assess({ ...build, answers }).judgements.find(({ id }) => id.startsWith('card-lobe'));
  expect(ofLobe?.sentence).not.toMatch(/the answer to/);
  expect(ofLobe?.sentence).toMatch(/entered again or struck out/);
});

test('while nobody said whether there is a card, that is asked with what is read off it', () => {
  const { next } = assess(
    buildOf([], {
      card: { intake: {}, exhaust: {} },
      setUps: [{ ...cleanSetUp, lobeSource: 'indicator' }],
      passes: [...passesOf('lobe-lift', [0.35, 0.35, 0.35]), ...passesOf('valve-lift', [0.56, 0.56, 0.56])],
    }),
  );
  expect(next).toMatchObject({
    sentence: 'Ask whether there is a card for this cam; if there is, read the intake lobe lift off it.',
    settles: 'card-known',
  });
});
