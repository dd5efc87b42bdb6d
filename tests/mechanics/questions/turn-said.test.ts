import { describe, expect, it } from 'vitest';
import { lashFormula } from '../../../server/mechanics/questions/lash-formula.ts';
import { turnMiscounted } from '../../../server/mechanics/questions/turn-miscounted.ts';
import type { QuestionInput } from '../../../server/mechanics/questions/types.ts';
import { first, fromCard, lobe, plain, valve, weightOf } from './plain.ts';

/** Passes with the numbers that they have on the sheet. */
const numbered = (...lifts: number[]) =>
  lifts.map((lift, index) => ({ id: `valve${index + 1}`, number: index + 1, lift, zeroReturn: 0 }));

describe('a turn is asked of the passes that lack it', () => {
  const asked = (input: QuestionInput) => first(turnMiscounted, input);
  const missing = (...lifts: number[]) => asked({ ...fromCard, valvePasses: numbered(...lifts) }).ask;

  it('by their numbers, one with what it read', () => {
    expect(missing(0.56, 0.4604, 0.561)).toBe('Could one turn of the dial be missing from pass 2, .460 in?');
    expect(missing(0.46, 0.56, 0.461)).toBe('Could one turn of the dial be missing from passes 1 and 3?');
    expect(missing(0.46, 0.4605, 0.461)).toBe(
      'Could one turn of the dial be missing from passes 1, 2 and 3?',
    );
  });

  it('one too many likewise', () => {
    const { ask, knownBy } = asked({ ...fromCard, valvePasses: numbered(0.56, 0.66) });
    expect(ask).toBe('Could one turn of the dial too many have been counted in pass 2, .660 in?');
    expect(knownBy).toBe('Could one turn of the dial too many have been counted?');
  });

  it('without numbers where one of them has none; it is known by words that later passes do not change', () => {
    const [one, two] = numbered(0.46, 0.461);
    const { number: _, ...bare } = two ?? { id: 'valve2', lift: 0.461 };
    const { ask, knownBy } = asked({ ...fromCard, valvePasses: one === undefined ? [] : [one, bare] });
    expect(ask).toBe('Could one turn of the dial be missing?');
    expect(knownBy).toBe('Could one turn of the dial be missing?');
    expect(asked({ ...plain, lobePasses: lobe(0.25) }).knownBy).toBe(
      'Could one turn of the dial be missing at the lobe?',
    );
  });

  it('one question for each count', () => {
    const input = { ...fromCard, valvePasses: numbered(0.46, 0.36, 0.461) };
    const asks = [
      'Could one turn of the dial be missing from passes 1 and 3?',
      'Could two turns of the dial be missing from pass 2, .360 in?',
    ];
    const two = asked({ ...fromCard, valvePasses: numbered(0.36) });
    expect(two.ask).toBe('Could two turns of the dial be missing from pass 1, .360 in?');
    expect(two.size).toBe('.200 in more would make it .560 in, a ratio of 1.600.');
    expect([asks[0], asks[1]]).toContain(asked(input).ask);
    expect(asked(input).restsOn).toEqual(['valve1', 'valve3']);
  });

  it('at the lobe the lift alone is told; a caliper has no turns', () => {
    expect(asked({ ...plain, lobePasses: lobe(0.25) }).size).toBe('.100 in more would make it .350 in.');
    const caliper = { ...plain, lobePasses: lobe(0.25), lobeSource: 'caliper' } as const;
    expect(weightOf(turnMiscounted, caliper)).toBe('quiet');
  });

  it('without a card the lobe is set against the valve’s lift over the ratio', () => {
    const { cardLobeLift: _, ...noCard } = { ...plain, lobePasses: lobe(0.25) };
    expect(asked(noCard).ask).toBe('Could one turn of the dial be missing at the lobe?');
    const { nominalRatio: _nominal, cardRatio: _ratio, ...noRatio } = noCard;
    expect(weightOf(turnMiscounted, noRatio)).toBe('quiet');
  });

  it('a lift stated beside passes is not one of them', () => {
    const given = { ...fromCard, valvePasses: valve(0.56), statedValveLift: 0.46 };
    expect(weightOf(turnMiscounted, given)).toBe('quiet');
    expect(weightOf(turnMiscounted, { ...fromCard, valvePasses: [] })).toBe('quiet');
  });

  it('of two lobes that would do, the one it fits better', () => {
    // 1.6 × .350 is .560, 1.6 × .340 is .544: .456 and a turn are .556, .004 from the one and .012 from the other.
    const given = { ...plain, lobePasses: lobe(0.34), valvePasses: valve(0.456) };
    expect(weightOf(turnMiscounted, given)).toBe('strong');
    const turned = { ...given, cardLobeLift: 0.34, lobePasses: lobe(0.35) };
    expect(weightOf(turnMiscounted, turned)).toBe('strong');
  });
});

describe('lash taken off a lobe in a sum', () => {
  const sum = (more: Partial<QuestionInput>): QuestionInput => ({ ...plain, valvePasses: [], ...more });

  it('of the lobe that the sum was made with', () => {
    // (.360 − .016) × 1.6 = .5504.
    const asked = first(lashFormula, sum({ statedLobeLift: 0.36, statedValveLift: 0.5504 }));
    expect(asked.ask).toBe('Could the lash be taken off the lobe in the lift in the sum, .550 in?');
    expect(asked.size).toBe('Taken off at the valve it makes .560 in.');
    expect(weightOf(lashFormula, sum({ statedValveLift: 0.5504 }))).toBe('quiet');
  });

  it('of a number no pass gave, though passes gave others', () => {
    const { cardLash: _, ...noLash } = plain;
    const given = { ...plain, valvePasses: valve(0.56, 0.561), statedValveLift: 0.5344 };
    expect(weightOf(lashFormula, given)).toBe('strong');
    expect(weightOf(lashFormula, { ...noLash, valvePasses: [], statedValveLift: 0.5344 })).toBe('quiet');
    const { nominalRatio: _nominal, cardRatio: _ratio, ...noRatio } = given;
    expect(weightOf(lashFormula, noRatio)).toBe('quiet');
    expect(
      weightOf(lashFormula, { ...noLash, valvePasses: [], lashSetting: 0.02, statedValveLift: 0.528 }),
    ).toBe('strong');
  });
});
