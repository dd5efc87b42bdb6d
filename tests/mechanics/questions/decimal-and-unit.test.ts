import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimalSlip } from '../../../server/mechanics/questions/decimal-slip.ts';
import { unitMixed } from '../../../server/mechanics/questions/unit-mixed.ts';
import { readCleanly, trueEngine } from './engine.ts';
import { first, fromCard, plain, valve, weightOf } from './plain.ts';

describe('a misplaced point', () => {
  it.each([
    ['5.60 for .560', 5.6, 'strong'],
    ['.056 for .560', 0.056, 'strong'],
    ['.0535: .025 off once moved', 0.0535, 'strong'],
    ['.0533: further off than that', 0.0533, 'weak'],
    ['.560', 0.56, 'quiet'],
    ['.460: another matter', 0.46, 'quiet'],
  ])('%s', (_, lift, weight) => {
    expect(weightOf(decimalSlip, { ...fromCard, valvePasses: valve(lift) })).toBe(weight);
  });

  it.each([
    ['lobe lift on the card', { ...fromCard, cardLobeLift: 0.035 }],
    ['lobe lift in the sum', { ...plain, statedLobeLift: 3.5 }],
    ['valve lift in the sum', { ...plain, statedValveLift: 5.6 }],
  ])('is named: %s', (name, given) => {
    const question = first(decimalSlip, given);
    expect(question.ask).toContain(name);
    expect(question.weight).toBe('strong');
  });
});

/** No lift is put right into one that no engine has: .15 to 1.2 at the valve, .1 to .75 at the lobe. */
describe('a point moved', () => {
  it.each([
    [1.51, 'weak'],
    [1.49, 'quiet'],
    [0.119, 'weak'],
    [0.121, 'quiet'],
  ])('in %f at the valve', (lift, weight) => {
    expect(weightOf(decimalSlip, { ...fromCard, valvePasses: valve(lift) })).toBe(weight);
  });

  it.each([
    [1.01, 'weak'],
    [0.99, 'quiet'],
    [0.074, 'weak'],
    [0.076, 'quiet'],
  ])('in %f at the lobe', (cardLobeLift, weight) => {
    expect(weightOf(decimalSlip, { ...fromCard, valvePasses: [], cardLobeLift })).toBe(weight);
  });
});

describe('millimetres for inches', () => {
  it.each([
    ['14.22 mm for .560', 14.22, 'strong'],
    ['.022: divided by 25.4 once too often', 0.56 / 25.4, 'strong'],
    ['12.24 mm is .482: not the lift expected', 12.24, 'weak'],
    ['.560', 0.56, 'quiet'],
  ])('%s', (_, lift, weight) => {
    expect(weightOf(unitMixed, { ...fromCard, valvePasses: valve(lift) })).toBe(weight);
  });

  it('are asked of the card', () => {
    const question = first(unitMixed, { ...fromCard, cardLobeLift: 8.89 });
    expect(question.ask).toBe('Could the lobe lift on the card of 8.89 be millimetres?');
    expect(question.size).toBe('That makes .350 in.');
  });

  it('and a misplaced point are both asked of 5.60, the one that fits strongly', () => {
    const given = { ...fromCard, valvePasses: valve(5.6) };
    expect([weightOf(decimalSlip, given), weightOf(unitMixed, given)]).toEqual(['strong', 'weak']);
  });

  it('are asked about strongly on every engine read so, as is a point, and of no true one', () => {
    const scaled = (factor: number, input: typeof plain) => ({
      ...input,
      valvePasses: input.valvePasses.map((each) => ({ ...each, lift: each.lift * factor })),
    });
    fc.assert(
      fc.property(trueEngine, (engine) => {
        const clean = readCleanly(engine);
        expect(weightOf(unitMixed, scaled(25.4, clean))).toBe('strong');
        expect(weightOf(unitMixed, scaled(1 / 25.4, clean))).toBe('strong');
        expect(weightOf(decimalSlip, scaled(10, clean))).toBe('strong');
        expect(weightOf(decimalSlip, scaled(0.1, clean))).toBe('strong');
        expect([weightOf(unitMixed, clean), weightOf(decimalSlip, clean)]).toEqual(['quiet', 'quiet']);
      }),
    );
  });
});
