import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { handReadBackwards } from '../../../server/mechanics/questions/hand-read-backwards.ts';
import { liftOf, readCleanly, trueEngine, withValveLift } from './engine.ts';
import { first, fromCard, valve, weightOf } from './plain.ts';

/** A lobe whose 1.6 makes .582, five turns and eighty-two. */
const fiveAndEightyTwo = { ...fromCard, cardLobeLift: 0.582 / 1.6 };

describe('a hand read the wrong way round', () => {
  it.each([
    ['5 and 18 was 5 and 82: common practice, no source', 0.518],
    ['4 and 18 was 5 and 82: common practice, no source', 0.418],
  ])('%s', (_, lift) => {
    const question = first(handReadBackwards, { ...fiveAndEightyTwo, valvePasses: valve(lift) });
    expect(question.weight).toBe('strong');
    expect(question.size).toMatch(/would make it \.582 in, a ratio of 1\.600\.$/);
  });

  it('4 turns and 82 back stands at 18: common practice, no source', () => {
    const given = { ...fromCard, cardLobeLift: 0.482 / 1.6, valvePasses: valve(0.418) };
    expect(first(handReadBackwards, given).size).toMatch(/^\.064 in more would make it \.482 in/);
  });

  it.each([
    ['.008 off', 0.526, 'strong'],
    ['.0085 off', 0.5265, 'weak'],
    ['.015 off', 0.533, 'weak'],
    ['.0155 off', 0.5335, 'quiet'],
    ['right as read', 0.582, 'quiet'],
  ])('%s', (_, lift, weight) => {
    expect(weightOf(handReadBackwards, { ...fiveAndEightyTwo, valvePasses: valve(lift) })).toBe(weight);
  });

  it('is seen where the hand stands a hair before zero', () => {
    const given = { ...fromCard, cardLobeLift: 0.5 / 1.6, valvePasses: valve(0.3995) };
    expect(first(handReadBackwards, given).size).toMatch(/^\.101 in more would make it \.501 in/);
  });

  it('keeps to the big hand where the dial has another turn', () => {
    const given = { ...fiveAndEightyTwo, perTurn: 0.05, valvePasses: valve(0.418) };
    expect(weightOf(handReadBackwards, given)).toBe('quiet');
  });

  it('is asked about strongly on every engine on which it shows', () => {
    fc.assert(
      fc.property(trueEngine, fc.boolean(), (engine, both) => {
        const lift = liftOf(engine);
        const round = both ? 1 - lift : (2 * Math.floor(lift * 10)) / 10 + 0.1 - lift;
        fc.pre(Math.abs(round - lift) > 0.04);
        expect(weightOf(handReadBackwards, withValveLift(engine, round))).toBe('strong');
      }),
    );
  });

  it('is quiet on every true engine', () => {
    fc.assert(
      fc.property(trueEngine, (engine) => {
        expect(weightOf(handReadBackwards, readCleanly(engine))).toBe('quiet');
      }),
    );
  });
});
