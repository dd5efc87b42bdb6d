import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { questionsFor } from '../../../server/mechanics/questions/questions.ts';
import { turnMiscounted } from '../../../server/mechanics/questions/turn-miscounted.ts';
import { liftOf, lobeOf, readCleanly, trueEngine, withLobeRead, withValveLift } from './engine.ts';
import { first, fromCard, lobe, plain, valve, weightOf } from './plain.ts';

describe('a turn of the dial', () => {
  it.each([
    ['.460 on an expected .560: common practice, no source', 0.46, 'strong'],
    ['.008 off the turn', 0.468, 'strong'],
    ['.0085 off the turn', 0.4685, 'weak'],
    ['.025 off the turn', 0.485, 'weak'],
    ['.0255 off the turn', 0.4855, 'quiet'],
    ['two turns', 0.36, 'strong'],
    ['three turns: no longer a miscount', 0.26, 'quiet'],
    ['one turn too many', 0.66, 'strong'],
    ['nothing off', 0.56, 'quiet'],
    ['flex and the ratio band', 0.575, 'quiet'],
  ])('%s', (_, lift, weight) => {
    expect(weightOf(turnMiscounted, { ...fromCard, valvePasses: valve(lift) })).toBe(weight);
  });

  it('is .286 of ratio on .350: common practice, no source', () => {
    const { size } = first(turnMiscounted, { ...plain, valvePasses: valve(0.46) });
    expect(size).toBe('.100 in more would make it .560 in, a ratio of 1.600.');
    expect(0.1 / 0.35).toBeCloseTo(0.286, 3);
  });

  it('says which way', () => {
    const { ask, size } = first(turnMiscounted, { ...fromCard, valvePasses: valve(0.76) });
    expect(ask).toBe('Could two turns of the dial too many have been counted?');
    expect(size).toMatch(/^\.200 in less would make it \.560 in/);
  });

  it.each([
    ['strong on a light spring', 'light', 'strong'],
    ['weak on a running one, whose flex is as large', 'running', 'weak'],
  ] as const)('of one millimetre is %s', (_, spring, weight) => {
    const given = { ...fromCard, spring, perTurn: 1 / 25.4, valvePasses: valve(0.56 - 1 / 25.4) };
    expect(weightOf(turnMiscounted, given)).toBe(weight);
  });

  it.each([
    ['.025 off a .200 turn', 0.2, 0.025, 'weak'],
    ['.0255 off a .200 turn', 0.2, 0.0255, 'quiet'],
    ['.0065 off a turn of 1 mm', 1 / 25.4, 0.0065, 'strong'],
    ['.0067 off a turn of 1 mm', 1 / 25.4, 0.0067, 'weak'],
    ['.0098 off a turn of 1 mm', 1 / 25.4, 0.0098, 'weak'],
    ['.0100 off a turn of 1 mm', 1 / 25.4, 0.01, 'quiet'],
  ])('%s', (_, perTurn, off, weight) => {
    const given = { ...fromCard, perTurn, valvePasses: valve(0.56 - perTurn + off) };
    expect(weightOf(turnMiscounted, given)).toBe(weight);
  });

  it('is found in the one pass that lacks it', () => {
    const given = { ...plain, valvePasses: valve(0.56, 0.46, 0.5605) };
    expect(first(turnMiscounted, given).restsOn).toEqual(['valve2']);
  });

  it('is found among the passes where nothing is known to expect', () => {
    const { nominalRatio: _, cardRatio: __, cardLobeLift: ___, ...bare } = plain;
    expect(first(turnMiscounted, { ...bare, valvePasses: valve(0.56, 0.46) }).restsOn).toEqual(['valve2']);
    expect(weightOf(turnMiscounted, { ...bare, valvePasses: valve(0.56, 0.5595) })).toBe('quiet');
  });

  it('is found at the lobe', () => {
    const question = first(turnMiscounted, { ...plain, lobePasses: lobe(0.25, 0.2505) });
    expect(question.ask).toBe('Could one turn of the dial be missing at the lobe?');
    expect(question.restsOn).toEqual(['lobe1', 'lobe2']);
  });

  it('is asked of a lift stated without passes', () => {
    const question = first(turnMiscounted, { ...fromCard, valvePasses: [], statedValveLift: 0.46 });
    expect(question.restsOn).toEqual([]);
  });

  it.each([0.05, 0.1, 0.2])(
    'of %f in, missed or added, is asked about strongly on every engine',
    (perTurn) => {
      fc.assert(
        fc.property(trueEngine, fc.constantFrom(1, -1), (engine, way) => {
          const given = { ...withValveLift(engine, liftOf(engine) + way * perTurn), perTurn };
          expect(weightOf(turnMiscounted, given)).toBe('strong');
          expect(questionsFor(given)[0]?.weight).toBe('strong');
        }),
      );
    },
  );

  it('missed at the lobe is asked about strongly on every engine', () => {
    fc.assert(
      fc.property(trueEngine, (engine) => {
        expect(weightOf(turnMiscounted, withLobeRead(engine, lobeOf(engine) - 0.1))).toBe('strong');
      }),
    );
  });

  it('is quiet on every true engine, whatever the dial', () => {
    fc.assert(
      fc.property(trueEngine, fc.constantFrom(0.05, 0.1, 0.2, 1 / 25.4), (engine, perTurn) => {
        expect(weightOf(turnMiscounted, { ...readCleanly(engine), perTurn })).toBe('quiet');
      }),
    );
  });
});
