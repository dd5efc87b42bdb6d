import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { caliperOnLobe } from '../../../server/mechanics/questions/caliper-on-lobe.ts';
import { copiedReading } from '../../../server/mechanics/questions/copied-reading.ts';
import type { QuestionInput } from '../../../server/mechanics/questions/types.ts';
import { cleanEngine, lobeOf, passes, readCleanly, trueEngine } from './engine.ts';
import { first, lobe, plain, valve, weightOf } from './plain.ts';

const caliper = (lift: number): QuestionInput => ({
  ...plain,
  lobeSource: 'caliper',
  lobePasses: lobe(lift),
});

describe('a caliper on the loose cam', () => {
  it.each([
    ['2 % under the card', 0.343, 'strong'],
    ['1.9 % under', 0.3434, 'quiet'],
    ['6 % under', 0.329, 'strong'],
    ['6.1 % under', 0.3286, 'quiet'],
    ['level with it', 0.35, 'quiet'],
  ])('%s', (_, lift, weight) => {
    expect(weightOf(caliperOnLobe, caliper(lift))).toBe(weight);
  });

  it('9.41 mm where 9.79 mm was true is 3.9 % low: a cam specialist’s page on measuring lobes', () => {
    const given = { ...caliper(9.41 / 25.4), cardLobeLift: 9.79 / 25.4 };
    expect(first(caliperOnLobe, given).size).toBe('.370 in is 3.9 % under .385 in.');
  });

  it('is hinted at by the valve where there is no card', () => {
    const { cardLobeLift: _, ...rest } = caliper(0.336);
    expect(weightOf(caliperOnLobe, rest)).toBe('weak');
    expect(weightOf(caliperOnLobe, { ...rest, lobeSource: 'indicator' })).toBe('quiet');
  });

  it('is asked about strongly on every engine read 3 to 5 % low, and of none read rightly', () => {
    const read = (engine: Parameters<typeof readCleanly>[0], share: number): QuestionInput => ({
      ...readCleanly(engine),
      lobeSource: 'caliper',
      lobePasses: passes('lobe', lobeOf(engine) * share, engine.lobeNoise),
    });
    fc.assert(
      fc.property(trueEngine, fc.integer({ min: 30, max: 50 }), (engine, low) => {
        expect(weightOf(caliperOnLobe, read(engine, 1 - low / 1000))).toBe('strong');
        expect(weightOf(caliperOnLobe, read(engine, 1))).toBe('quiet');
      }),
    );
  });
});

describe('one number on many valves', () => {
  const others = (...otherPeaks: number[]) => ({ ...plain, otherPeaks });
  it.each([
    ['five alike', others(0.56, 0.56, 0.56, 0.56, 0.56), 'strong'],
    ['within .0005', others(0.5605, 0.5595, 0.56, 0.56, 0.56), 'strong'],
    ['four alike', others(0.56, 0.56, 0.56, 0.56), 'weak'],
    ['five alike and one not', others(0.56, 0.56, 0.56, 0.56, 0.56, 0.57), 'weak'],
    ['two alike', others(0.56, 0.56), 'quiet'],
    ['.0006 apart', others(0.5606, 0.5594, 0.5606, 0.5594, 0.5606), 'quiet'],
    ['no other valve', plain, 'quiet'],
  ])('%s', (_, given, weight) => {
    expect(weightOf(copiedReading, given)).toBe(weight);
  });

  it('is asked about strongly wherever it was carried over, and hardly where each was read', () => {
    const engines = fc.sample(cleanEngine, { numRuns: 1000, seed: 5 });
    const asked = engines.map((engine) => {
      const read = readCleanly(engine);
      const middle = [...read.valvePasses].map((each) => each.lift).sort((a, b) => a - b)[1] ?? 0;
      return [
        weightOf(copiedReading, read),
        weightOf(copiedReading, { ...read, otherPeaks: Array.from({ length: 15 }, () => middle) }),
      ];
    });
    expect(asked.every(([, copied]) => copied === 'strong')).toBe(true);
    expect(asked.filter(([clean]) => clean !== 'quiet').length).toBeLessThan(10);
  });
});

describe('the lift that a card for other rockers makes', () => {
  // .3605 x 1.5 = .54075: arithmetic. Arms stamped 1.6 lift .577 of it.
  const card15: QuestionInput = {
    ...plain,
    lobePasses: lobe(0.3605),
    cardLobeLift: 0.3605,
    cardRatio: 1.5,
    nominalRatio: 1.6,
    valvePasses: valve(0.541),
  };

  it('is asked about, weakly: was it read, or is it the card’s', () => {
    expect(weightOf(copiedReading, card15)).toBe('weak');
    expect(first(copiedReading, card15).ask).toBe('Was the valve lift of .541 in read, or is it the card’s?');
  });

  it('is not, where it reads otherwise, where the arms are as the card has them, or an arm may make it', () => {
    expect(weightOf(copiedReading, { ...card15, valvePasses: valve(0.543) })).toBe('quiet');
    expect(weightOf(copiedReading, { ...card15, valvePasses: valve(0.541, 0.5425) })).toBe('quiet');
    expect(weightOf(copiedReading, { ...card15, nominalRatio: 1.5 })).toBe('quiet');
    expect(weightOf(copiedReading, { ...card15, nominalRatio: 1.52 })).toBe('quiet');
  });
});
