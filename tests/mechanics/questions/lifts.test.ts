import { describe, expect, it } from 'vitest';
import { middle, nearest, spread } from '../../../server/mechanics/questions/compare.ts';
import {
  expectedLifts,
  grossExpected,
  isOrdinary,
  lashesKnown,
  lashKnown,
  lobeInUse,
  lobeLifts,
  ratioExpected,
  ratioOfCard,
  readLobe,
  valveLift,
} from '../../../server/mechanics/questions/lifts.ts';
import { defaultTolerances } from '../../../server/mechanics/questions/tolerances.ts';
import type { QuestionInput } from '../../../server/mechanics/questions/types.ts';
import { lobe, plain, valve } from './plain.ts';

const { cardLobeLift: _lobe, cardRatio: _card, nominalRatio: _nominal, cardLash: _lash, ...rest } = plain;
/** Nothing known but the readings. */
const bare: QuestionInput = { ...rest, valvePasses: [], lobePasses: [] };

describe('which lift counts', () => {
  it('at the valve the middle of the passes, else the one that was stated', () => {
    expect(valveLift({ ...bare, valvePasses: valve(0.56, 0.7, 0.561), statedValveLift: 0.6 })).toBe(0.561);
    expect(valveLift({ ...bare, statedValveLift: 0.6 })).toBe(0.6);
    expect(valveLift(bare)).toBeUndefined();
  });

  it('at the lobe what the set-up says, else whatever there is', () => {
    const all = { ...bare, lobePasses: lobe(0.34), cardLobeLift: 0.35, statedLobeLift: 0.36 };
    expect(readLobe(all)).toBe(0.34);
    expect(lobeInUse({ ...all, lobeSource: 'card' })).toBe(0.35);
    expect(lobeInUse({ ...all, lobeSource: 'indicator' })).toBe(0.34);
    expect(lobeInUse({ ...all, lobeSource: 'indicator', lobePasses: [] })).toBe(0.35);
    const { cardLobeLift: _, ...noCard } = all;
    expect(lobeInUse({ ...noCard, lobeSource: 'card' })).toBe(0.34);
    expect(lobeInUse({ ...bare, statedLobeLift: 0.36 })).toBe(0.36);
    expect(lobeInUse(bare)).toBeUndefined();
  });

  it('all lobe lifts there is a word of; a stated one only where there is no other', () => {
    expect(lobeLifts({ ...bare, lobePasses: lobe(0.34), cardLobeLift: 0.35, statedLobeLift: 0.36 })).toEqual([
      0.35, 0.34,
    ]);
    expect(lobeLifts({ ...bare, lobePasses: lobe(0.34) })).toEqual([0.34]);
    expect(lobeLifts({ ...bare, statedLobeLift: 0.36 })).toEqual([0.36]);
    expect(lobeLifts(bare)).toEqual([]);
  });
});

describe('which ratio', () => {
  it('of the card: said, else its valve lift over its lobe lift', () => {
    expect(ratioOfCard({ ...bare, cardRatio: 1.5, cardValveLift: 0.56, cardLobeLift: 0.35 })).toBe(1.5);
    expect(ratioOfCard({ ...bare, cardValveLift: 0.56, cardLobeLift: 0.35 })).toBeCloseTo(1.6, 12);
    expect(ratioOfCard({ ...bare, cardValveLift: 0.56 })).toBeUndefined();
    expect(ratioOfCard({ ...bare, cardLobeLift: 0.35 })).toBeUndefined();
  });

  it('of the rockers before that of the card', () => {
    expect(ratioExpected({ ...bare, cardRatio: 1.5, nominalRatio: 1.6 })).toBe(1.6);
    expect(ratioExpected({ ...bare, cardRatio: 1.5 })).toBe(1.5);
  });
});

describe('which lash', () => {
  it('the one it was set to before the card’s', () => {
    expect(lashKnown({ ...bare, lashSetting: 0.02, cardLash: 0.016 })).toBe(0.02);
    expect(lashKnown({ ...bare, cardLash: 0.016 })).toBe(0.016);
  });

  it('each that is known once, none of nothing', () => {
    expect(
      lashesKnown({ ...bare, lashSetting: 0.02, cardLash: 0.016, otherLashes: [0.02, 0, 0.018] }),
    ).toEqual([0.02, 0.016, 0.018]);
    expect(lashesKnown({ ...bare, cardLash: 0 })).toEqual([]);
    expect(lashesKnown(bare)).toEqual([]);
  });
});

describe('what the dial should show', () => {
  const known = { ...bare, nominalRatio: 1.6, cardLobeLift: 0.35, lobePasses: lobe(0.34) };

  it('lobe times ratio for each lobe, less the lash where it was set', () => {
    expect(grossExpected(known)).toEqual([0.35 * 1.6, 0.34 * 1.6]);
    expect(expectedLifts(known)).toEqual([0.35 * 1.6, 0.34 * 1.6]);
    expect(expectedLifts({ ...known, cardLash: 0.016 })).toEqual([0.35 * 1.6, 0.34 * 1.6]);
    const set = { ...known, lash: 'set', cardLash: 0.016 } as const;
    expect(expectedLifts(set)).toEqual([0.35 * 1.6 - 0.016, 0.34 * 1.6 - 0.016]);
    expect(expectedLifts({ ...known, lash: 'set' })).toEqual([0.35 * 1.6, 0.34 * 1.6]);
    expect(grossExpected({ ...bare, cardLobeLift: 0.35 })).toEqual([]);
  });

  it('none that a lash takes up', () => {
    const set = { ...known, lash: 'set', lashSetting: 0.344 * 1.6 } as const;
    expect(expectedLifts(set)).toHaveLength(1);
    expect(expectedLifts({ ...set, lashSetting: 0.35 * 1.6 })).toEqual([]);
  });

  it.each([
    ['light', 0.56 * 0.98 - 0.005, 0.56 * 1.045 + 0.005],
    ['running', 0.56 * 0.98 - 0.045, 0.56 * 1.045 + 0.005],
    ['not-said', 0.56 * 0.98 - 0.045, 0.56 * 1.045 + 0.005],
  ] as const)(
    'on a spring %s: 2 %% under to 4.5 %% over, .005 besides, .040 of flex but on a light one (common practice)',
    (spring, low, high) => {
      const input = { ...bare, spring, nominalRatio: 1.6, cardLobeLift: 0.35 };
      const ordinary = (lift: number) => isOrdinary(input, defaultTolerances, lift);
      expect([low - 1e-6, low, 0.56, high, high + 1e-6].map(ordinary)).toEqual([
        false,
        true,
        true,
        true,
        false,
      ]);
    },
  );

  it('nothing is ordinary where nothing is expected', () => {
    expect(isOrdinary(bare, defaultTolerances, 0.56)).toBe(false);
  });
});

describe('of several values', () => {
  it('the middle one, or the mean of the two middle ones', () => {
    expect(middle([3, 1, 2])).toBe(2);
    expect(middle([4, 1, 10, 2])).toBe(3);
    expect(middle([7])).toBe(7);
    expect(middle([])).toBeUndefined();
  });

  it('the one that is nearest, of two as near the first', () => {
    expect(nearest(1.58, [1.5, 1.6, 1.7])).toBe(1.6);
    expect(nearest(2, [1, 3])).toBe(1);
    expect(nearest(2, [3, 1])).toBe(3);
    expect(nearest(2, [])).toBeUndefined();
  });

  it('how far they lie apart', () => {
    expect(spread([0.56, 0.563, 0.561])).toBeCloseTo(0.003, 12);
    expect(spread([0.56])).toBe(0);
    expect(spread([])).toBe(0);
  });
});
