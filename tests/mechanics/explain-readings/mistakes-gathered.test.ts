import { describe, expect, it } from 'vitest';
import { listExplanations, rankAccounts } from '../../../server/mechanics/explain-readings/explanations.ts';
import { bestOffer, type Weighed } from '../../../server/mechanics/explain-readings/next-reading.ts';
import { describeNext } from '../../../server/mechanics/explain-readings/outcomes.ts';
import { LASH, LOBE, RATIO, TILT, ZERO } from '../../../server/mechanics/explain-readings/reading-model.ts';
import { gatherMistakes } from '../../../server/mechanics/explain-readings/single-mistakes.ts';
import { sizesOf } from '../../../server/mechanics/explain-readings/sizes.ts';
import type { ExplainInput } from '../../../server/mechanics/explain-readings/types.ts';
import { lobe, valve } from './cases.ts';
import { byHand } from './weighed-by-hand.ts';

/** Weights are put in by hand, so that sums and order are arithmetic. */
const INPUT: ExplainInput = {
  nominals: [1.5, 1.6],
  cardLobeLift: 0.35,
  otherLobeLift: 0.33,
  readings: [valve(0.56)],
};
const cosine = (degrees: number) => Math.cos((degrees * Math.PI) / 180);

describe('one mistake over all names, alone or beside another', () => {
  it('has the sum of their chances, and the heaviest speaks for it; likeliest first', () => {
    const { belief, weights, weigh, at } = byHand(INPUT);
    weigh(0.05, 0, 'lash-left-in');
    weigh(0.25, 1, 'lash-left-in');
    weigh(0.125, 1, 'lash-left-in+plunger-tilted');
    weigh(0.5, 1, 'plunger-tilted');
    weigh(0.075, -1);
    expect(gatherMistakes(belief, weights)).toEqual([
      { cause: 'plunger-tilted', probability: 0.625, representative: at(1, 'plunger-tilted') },
      { cause: 'lash-left-in', probability: 0.425, representative: at(1, 'lash-left-in') },
      { cause: 'ratio-not-listed', probability: 0.075, representative: at(-1) },
    ]);
  });

  it('of another entry it is another one, and an account that was dropped says nothing', () => {
    const { belief, weights, weigh, at } = byHand(INPUT);
    weigh(0.25, 1, 'slip@card');
    weigh(0.5, 1, 'slip@0');
    weigh(0.25, 0, 'slip@0');
    belief.alive = belief.alive.filter((index) => index !== at(0, 'slip@0'));
    expect(gatherMistakes(belief, weights)).toEqual([
      {
        cause: 'slip',
        entry: { of: 'reading', index: 0 },
        probability: 0.5,
        representative: at(1, 'slip@0'),
      },
      { cause: 'slip', entry: { of: 'card' }, probability: 0.25, representative: at(1, 'slip@card') },
    ]);
  });
});

describe('explanations by name and mistakes', () => {
  it('the likeliest first, each with the mean ratio of its accounts', () => {
    const { given, belief, weights, weigh, put, at } = byHand(INPUT);
    weigh(0.25, 0);
    weigh(0.5, 1);
    weigh(0.125, 1, 'lash-left-in');
    weigh(0.125, -1);
    put(at(1), RATIO, 1.61);
    put(at(-1), RATIO, 1.9);
    const ranked = rankAccounts(given, belief, weights);
    expect(ranked.map(({ name, causes, probability }) => ({ name, causes, probability }))).toEqual([
      { name: 1, causes: [], probability: 0.5 },
      { name: 0, causes: [], probability: 0.25 },
      { name: 1, causes: ['lash-left-in'], probability: 0.125 },
      { name: -1, causes: ['ratio-not-listed'], probability: 0.125 },
    ]);
    expect(ranked.map(({ ratio }) => ratio)).toEqual([1.61, 1.5, 1.6, 1.9]);
    expect(ranked[0]?.representative).toBe(at(1));
  });

  it('a mistake that every reading was rid of is told with what is left of them: mean by weight', () => {
    // Small hand read: a turn changes nothing, and goes with the account that has none.
    const { given, belief, weights, weigh, put, at } = byHand({
      ...INPUT,
      readings: [valve(0.56, { counted: true })],
    });
    weigh(0.25, 1);
    weigh(0.75, 1, 'turn-too-few');
    put(at(1), RATIO, 1.6);
    put(at(1, 'turn-too-few'), RATIO, 1.64);
    const [first, ...others] = rankAccounts(given, belief, weights);
    expect(others).toEqual([]);
    expect(first?.probability).toBe(1);
    // (.25 · 1.60 + .75 · 1.64) / 1
    expect(first?.ratio).toBeCloseTo(1.63, 12);
    expect(first?.representative).toBe(at(1, 'turn-too-few'));
    expect(
      listExplanations(
        given,
        belief,
        [first].flatMap((each) => each ?? []),
      ).explanations,
    ).toMatchObject([
      { nominal: 1.6, causes: [], needs: 'A 1.6 made 2 % over, if the readings are right as they stand.' },
    ]);
  });

  const listed = (more: Partial<ExplainInput> = {}, lashRatio = 1.65) => {
    const { given, belief, weights, weigh, put, at } = byHand({
      ...INPUT,
      ...more,
      assumptions: { listFrom: 0.125 },
    });
    weigh(0.5, 1);
    weigh(0.125, 1, 'lash-left-in');
    weigh(0.125, -1);
    weigh(0.0625, 0);
    weigh(0.1875, 1, 'plunger-tilted');
    put(at(1, 'lash-left-in'), RATIO, lashRatio);
    put(at(1, 'plunger-tilted'), RATIO, 1.55);
    const { explanations, rest } = listExplanations(given, belief, rankAccounts(given, belief, weights));
    return { told: explanations.map(({ causes }) => causes.join('+')), rest };
  };

  it('from a chance on, and the rest is what is not listed: together one', () => {
    expect(listed()).toEqual({
      told: ['', 'plunger-tilted', 'lash-left-in', 'ratio-not-listed'],
      rest: 0.0625,
    });
  });

  it('none that was looked for or said not to be so', () => {
    const without = { told: ['', 'lash-left-in', 'ratio-not-listed'], rest: 0.25 };
    expect(listed({ ruledOut: ['plunger-tilted'] })).toEqual(without);
    expect(listed({ denied: ['plunger-tilted'] })).toEqual(without);
  });

  it('none so small that the name gives the same without it: a thousandth on a usual lobe, .003 of ratio', () => {
    expect(listed({}, 1.6029).told).toEqual(['', 'plunger-tilted', 'ratio-not-listed']);
    expect(listed({}, 1.5971).told).toEqual(['', 'plunger-tilted', 'ratio-not-listed']);
    expect(listed({}, 1.6031).told).toContain('lash-left-in');
    expect(listed({}, 1.5969).told).toContain('lash-left-in');
  });

  it('of two together each may undo the other, and where the name alone is out of the question they stay', () => {
    const { given, belief, weights, weigh } = byHand(INPUT);
    weigh(0.5, 1);
    weigh(0.3125, 1, 'lash-left-in+plunger-tilted');
    weigh(0.1875, 0, 'lash-left-in');
    const { explanations, rest } = listExplanations(given, belief, rankAccounts(given, belief, weights));
    expect(explanations.map(({ nominal, causes }) => [nominal, ...causes])).toEqual([
      [1.6],
      [1.6, 'lash-left-in', 'plunger-tilted'],
      [1.5, 'lash-left-in'],
    ]);
    expect(rest).toBe(0);
  });
});

describe('the sizes of a mistake', () => {
  const sized = (readings: ExplainInput['readings'], key = '', name = 1) => {
    const { given, belief, put, at } = byHand({ ...INPUT, readings });
    const index = at(name, key);
    put(index, LASH, 0.013);
    put(index, ZERO, -0.004);
    put(index, LOBE, 0.347);
    return sizesOf(given, belief, index);
  };

  it('are those of its own account: lash, zero, lobe, and the card as it has it', () => {
    expect(sized([valve(0.56)])).toMatchObject({
      lash: 0.013,
      zero: -0.004,
      lobe: 0.347,
      card: 0.35,
      cardEntered: 0.35,
    });
    const { cardLobeLift: _, ...noCard } = INPUT;
    const { given, belief, at } = byHand(noCard);
    expect(sizesOf(given, belief, at(0))).toMatchObject({ card: 0, cardEntered: 0 });
  });

  it('a turn either way, and the hand the other way round: .56 is .46 and .66, and read backwards .54', () => {
    const turned = sized([valve(0.56)]);
    expect(turned.entered).toBe(0.56);
    expect(turned.missingTurn).toBeCloseTo(0.66, 12);
    expect(turned.extraTurn).toBeCloseTo(0.46, 12);
    expect(turned.turnedRound).toBeCloseTo(0.54, 12);
    const small = sized([valve(0.56, { perTurn: 0.05 })]);
    expect(small.missingTurn).toBeCloseTo(0.61, 12);
  });

  it('are shown on the first lift of the valve that nobody counted; else on the first reading', () => {
    const counted = { counted: true } as const;
    expect(sized([lobe(0.35), valve(0.55, counted), valve(0.56), valve(0.57)]).entered).toBe(0.56);
    expect(sized([valve(0.55, counted), valve(0.56, counted)]).entered).toBe(0.55);
    expect(sized([lobe(0.35), valve(0.56, counted)]).entered).toBe(0.35);
    expect(sized([]).entered).toBe(0);
    expect(sized([])).toMatchObject({ missingTurn: 0, turnedRound: 0 });
  });

  it('a slip on the reading that slipped, whichever it was', () => {
    expect(sized([valve(0.55), valve(0.57)], 'slip@1').entered).toBe(0.57);
    expect(sized([valve(0.55), valve(0.57)], 'slip@card').entered).toBe(0.55);
  });

  it('another unit: 14.224 mm read as inches are .560', () => {
    const { given, belief } = byHand({ ...INPUT, readings: [valve(14.224)] });
    const index = belief.hypotheses.findIndex(({ set }) => set.valveDivisor === 25.4);
    expect(sizesOf(given, belief, index).unitPutRight).toBeCloseTo(0.56, 12);
  });

  it.each([
    ['long on a flat face: one over the cosine', 1 / cosine(12) - 1, 12],
    ['short, held in one spot: the cosine', cosine(12) - 1, 12],
    ['upright', 0, 0],
    ['a cosine below any: turned right round', -3, 180],
  ])('a lean, %s', (_, tilt, degrees) => {
    const { given, belief, put, at } = byHand(INPUT);
    put(at(1, 'plunger-tilted'), TILT, tilt);
    expect(sizesOf(given, belief, at(1, 'plunger-tilted')).lean).toBeCloseTo(degrees, 5);
  });
});

describe('the next reading', () => {
  const offer = (bits: number, minutes: number): Weighed => ({
    offer: { action: 'one-more-pass', minutes, renewed: false },
    bits,
    indices: [],
    weights: new Float64Array(),
  });

  it('is the one that tells most for a minute, of those that tell enough', () => {
    const [short, long, little] = [offer(0.5, 2), offer(0.75, 4), offer(0.125, 0.1)];
    expect(bestOffer([long, short], 0.125)).toBe(short);
    expect(bestOffer([short, long], 0.125)).toBe(short);
    expect(bestOffer([little, long], 0.125)).toBe(long);
    expect(bestOffer([little, long], 0.1)).toBe(little);
    expect(bestOffer([little], 0.125)).toBeUndefined();
    expect(bestOffer([], 0)).toBeUndefined();
  });

  it('of two that tell alike the one that is offered first', () => {
    const [first, second] = [offer(0.5, 2), offer(0.25, 1)];
    expect(bestOffer([first, second], 0.125)).toBe(first);
    expect(bestOffer([second, first], 0.125)).toBe(second);
  });

  /** Seven accounts with weights by hand, as heavy as they are told or not. */
  const weighed = (forecast: boolean): { told: ReturnType<typeof describeNext> } => {
    const { given, belief, at } = byHand({
      ...INPUT,
      readings: [valve(0.56, { lashSet: true })],
    });
    const keys: readonly (readonly [number, string, number])[] = [
      [0, '', 0.02],
      [1, 'slip@card', 0.3],
      [1, '', 0.4],
      [-1, '', 0.1],
      [0, 'plunger-tilted', 0.08],
      [1, 'plunger-tilted', 0.0199],
      [1, 'lash-left-in', 0.0801],
    ];
    const weights = Float64Array.from(keys, ([, , weight]) => weight);
    const means = Float64Array.from(keys, (_, index) => 0.5 + index / 100);
    const spreads = Float64Array.from(keys, (_, index) => (index + 1) / 1000);
    const best: Weighed = {
      offer: { action: forecast ? 'align-plunger' : 'read-back', minutes: 4, renewed: false },
      bits: 0.75,
      indices: keys.map(([name, key]) => at(name, key)),
      weights,
      ...(forecast
        ? { forecast: { weights, means, spreads, classOf: new Int32Array(keys.length), classes: 1 } }
        : {}),
    };
    return { told: describeNext(given, belief, best) };
  };

  it('is told with the five heaviest accounts, and what it would read: 1.96 spreads to either side', () => {
    const { told } = weighed(true);
    expect(told).toMatchObject({ action: 'align-plunger', bits: 0.75, minutes: 4 });
    // The lash was taken out for every reading: with it left in nothing went wrong.
    expect(told.outcomes.map(({ cause, nominal, expected }) => [cause, nominal, expected])).toEqual([
      ['no-mistake', 1.6, 0.52],
      ['slip', 1.6, 0.51],
      ['ratio-not-listed', undefined, 0.53],
      ['no-mistake', 1.6, 0.56],
      ['plunger-tilted', 1.5, 0.54],
    ]);
    const wide = told.outcomes.map(({ plusMinus = Number.NaN }) => plusMinus);
    [3, 2, 4, 7, 5].forEach((thousandths, at) => {
      expect(wide[at]).toBeCloseTo((1.959964 * thousandths) / 1000, 9);
    });
  });

  it('a question is told with the chance that it finds something: .9 where it is that, .01 where not', () => {
    const { told } = weighed(false);
    expect(told.outcomes.map(({ cause, chanceFound }) => [cause, chanceFound])).toEqual([
      ['no-mistake', 0.01],
      ['slip', 0.9],
      ['ratio-not-listed', 0.01],
      ['no-mistake', 0.01],
      ['plunger-tilted', 0.01],
    ]);
  });

  it('an account of two in a hundred is told, one of less is not', () => {
    const { given, belief, at } = byHand(INPUT);
    const best: Weighed = {
      offer: { action: 'read-back', minutes: 1, renewed: false },
      bits: 0.5,
      indices: [at(0), at(1)],
      weights: Float64Array.of(0.02, 0.0199),
    };
    expect(describeNext(given, belief, best).outcomes.map(({ nominal }) => nominal)).toEqual([1.5]);
  });
});
