import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cardRatio } from '../../../server/mechanics/questions/card-ratio.ts';
import { readCleanly, trueEngine } from './engine.ts';
import { first, fromCard, valve, weightOf } from './plain.ts';

const { cardRatio: _, ...silentCard } = fromCard;

describe('a card for another ratio', () => {
  it.each([
    ['.021 over', 1.621, 'weak'],
    ['.020 over', 1.62, 'quiet'],
    ['.021 under', 1.579, 'weak'],
    ['the same', 1.6, 'quiet'],
  ])('%s', (_name, ratio, weight) => {
    expect(weightOf(cardRatio, { ...fromCard, cardRatio: ratio })).toBe(weight);
  });

  it.each([
    ['meets the rockers fitted', 0.56, 'strong'],
    ['meets the card', 0.595, 'strong'],
    ['is .008 from the rockers fitted', 0.552, 'strong'],
    ['meets neither', 0.58, 'weak'],
  ])('that prints its lift, and the reading %s', (_name, lift, weight) => {
    const given = { ...silentCard, cardValveLift: 0.595, valvePasses: valve(lift) };
    expect(weightOf(cardRatio, given)).toBe(weight);
  });

  it('says both lifts', () => {
    expect(first(cardRatio, { ...silentCard, cardValveLift: 0.595 })).toMatchObject({
      ask: 'Could the card be for another rocker? It works with 1.7; these are sold as 1.6.',
      size: 'A .350 in lobe lifts the valve .595 in with 1.7, and .560 in with 1.6.',
    });
  });

  it('is not asked of a card that prints the lift less the lash', () => {
    expect(weightOf(cardRatio, { ...silentCard, cardValveLift: 0.56 - 0.016 })).toBe('quiet');
    expect(weightOf(cardRatio, { ...silentCard, cardValveLift: 0.56 - 0.032 })).toBe('strong');
  });

  it('is asked about strongly on every engine whose card prints a lift for .1 more, and of no true one', () => {
    fc.assert(
      fc.property(trueEngine, (engine) => {
        const { cardRatio: own, ...clean } = readCleanly(engine);
        const printed = engine.cardLobe * (engine.nominal + 0.1);
        expect(weightOf(cardRatio, { ...clean, cardValveLift: printed })).toBe('strong');
        expect(weightOf(cardRatio, { ...clean, cardRatio: own })).toBe('quiet');
      }),
    );
  });
});
