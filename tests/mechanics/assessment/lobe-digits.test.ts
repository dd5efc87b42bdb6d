import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import { buildOf, cleanSetUp, lobe, passesOf } from './plain.ts';
import { read } from './plain-build.ts';

/*
 * A lobe of .350 under a 1.6 lifts its valve .560. Read .305 with the valve at .566 the two make 1.856, and the digits the
 * other way round 1.617: arithmetic. What is asked first is common practice, no published source.
 */
const LOBE_READ = { ...cleanSetUp, lobeSource: 'indicator' as const };
const CARD = {
  assumedRatio: 1.6,
  intake: lobe(0.35, { valveLift: 0.56 }),
  exhaust: lobe(0.35, { valveLift: 0.56 }),
};
const told = (
  lobes: readonly number[],
  lifts: readonly number[],
  sheet: Parameters<typeof buildOf>[1] = {},
) => {
  const { headlines, notToRun, stop, next, judgements } = assess(
    buildOf([], {
      card: CARD,
      rockers: { soldAs: 1.6 },
      setUps: [LOBE_READ],
      passes: [...passesOf('lobe-lift', lobes), ...passesOf('valve-lift', lifts)],
      ...sheet,
    }),
  );
  return {
    text: headlines.map(({ sentence }) => sentence).join('\n'),
    notToRun: notToRun.length,
    stops: stop.length,
    next: next?.action,
    lobe: judgements.find(({ id }) => id === `card-lobe:${LOBE_READ.id}`)?.sentence,
  };
};
const LIFTS = [0.5655, 0.566, 0.5655];

describe('two digits of a lobe the wrong way round', () => {
  test.each([
    ['.305 for .350', [0.305, 0.305, 0.3055]],
    ['.530 for .350', [0.53, 0.53, 0.53]],
  ])('%s: asked first, before wear, another cam, or a name of the arm', (_, lobes) => {
    expect(told(lobes, LIFTS)).toMatchObject({
      notToRun: 0,
      stops: 0,
      next: 'digits-swapped',
      text: expect.not.stringMatching(/the lobe reads|reads as a|which lobe|swap test/),
    });
  });

  test('it stops nothing beside two lobes that read .350 either', () => {
    const sheet = [read(2, 'intake', 'lobe-lift', 0.35), read(3, 'intake', 'lobe-lift', 0.3505)];
    expect(told([0.305, 0.305, 0.3055], LIFTS, { sheet })).toMatchObject({ notToRun: 0, stops: 0 });
  });
});

test('what a low lobe would take off the valve lift is not told where the valve reads the card’s lift', () => {
  // (.350 − .337) × .566 / .337 = .022; .566 is .006 over the .560 of the card.
  expect(told([0.337, 0.337, 0.3375], LIFTS).lobe).toMatch(
    /That would take \.022 in off the valve lift, and the valve does not show it: it reads \.566 in, and the lobe of the card makes \.560 in with 1\.6\.$/,
  );
  // .337 × 1.6 = .539, which shows it.
  expect(told([0.337, 0.337, 0.337], [0.539, 0.539, 0.539]).lobe).toMatch(
    /That takes \.021 in off the valve lift\.$/,
  );
});

test('such a lobe is read once more before those beside it; read twice, or shown at the valve, they tell', () => {
  const LOW = [0.337, 0.337, 0.3375];
  expect(told(LOW, LIFTS).next).toBe('lobe-again:1-intake');
  expect(told([...LOW, ...LOW], LIFTS).next).toBe('lobe-siblings:1-intake');
  expect(told(LOW, [0.539, 0.539, 0.539]).next).toBe('lobe-siblings:1-intake');
});

describe('passes of the valve that are off by a turn too many, and ordinary the other way round', () => {
  // .656 less a turn is .556, 1.589 over .350; the other way round .566, 1.617: arithmetic.
  const asks = (lifts: readonly number[]) =>
    assess(
      buildOf([], {
        card: CARD,
        rockers: { soldAs: 1.6 },
        setUps: [LOBE_READ],
        passes: [...passesOf('lobe-lift', [0.35, 0.35, 0.3505]), ...passesOf('valve-lift', lifts)],
      }),
    )
      .questions.filter(({ weight }) => weight === 'strong')
      .map(({ code }) => code)
      .sort();

  test.each([[[0.655, 0.656]], [[0.656, 0.656, 0.656]], [[0.656]]])('%j: both are asked', (lifts) => {
    expect(asks(lifts)).toEqual(['digits-swapped', 'turn-miscounted']);
  });

  test('where the other way round is no ordinary lift the turn alone is asked', () => {
    expect(asks([0.46, 0.46, 0.46])).toEqual(['turn-miscounted']);
  });
});

test('a lobe that was read three times is not asked to be read three times', () => {
  expect(told([0.3455, 0.3455, 0.346], LIFTS).lobe).toMatch(
    /The lobes beside it, read at the lifter, tell\.$/,
  );
  expect(told([0.3455], LIFTS).lobe).toMatch(/Read it three times at the lifter\.$/);
});
