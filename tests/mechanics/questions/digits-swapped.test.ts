import { describe, expect, it } from 'vitest';
import { digitsSwapped } from '../../../server/mechanics/questions/digits-swapped.ts';
import { turnMiscounted } from '../../../server/mechanics/questions/turn-miscounted.ts';
import type { QuestionInput } from '../../../server/mechanics/questions/types.ts';
import { first, fromCard, lobe, plain, valve, weightOf } from './plain.ts';

const weight = (input: QuestionInput) => weightOf(digitsSwapped, input);
const MM = 1 / 25.4;

/** A valve read so on a lobe of the card; .350 × 1.6 is expected. */
const read = (...lifts: number[]): QuestionInput => ({ ...fromCard, valvePasses: valve(...lifts) });
const atLobe = (card: number, ...lifts: number[]): QuestionInput => ({
  ...plain,
  cardLobeLift: card,
  lobePasses: lobe(...lifts),
  valvePasses: valve(card * 1.6),
});

const lobeAlone = (card: number, ...lifts: number[]): QuestionInput => ({
  ...atLobe(card, ...lifts),
  valvePasses: [],
});

describe('two digits of a valve lift the wrong way round (tolerances: common practice, no published source)', () => {
  it.each([
    ['.506 for .560', read(0.506), 'strong'],
    ['in every pass', read(0.506, 0.506, 0.506), 'strong'],
    [
      'within .002 of what is expected: .507 for .570 on .568',
      { ...read(0.507), cardLobeLift: 0.355 },
      'strong',
    ],
    ['.003 from it', { ...read(0.507), cardLobeLift: 0.3544 }, 'quiet'],
    ['.018 off: few arms are, but some', { ...read(0.546), cardLobeLift: 0.3525 }, 'weak'],
    ['one pass of two is another figure', read(0.506, 0.507), 'quiet'],
    ['what flex and the ratio band explain', read(0.575), 'quiet'],
    ['nothing wrong', read(0.56), 'quiet'],
    ['digits alike have no other way round', read(0.55), 'quiet'],
    ['a figure that no swap puts right', read(0.512), 'quiet'],
    ['no reading', read(), 'quiet'],
  ])('%s', (_, input, wanted) => {
    expect(weight(input)).toBe(wanted);
  });

  it('says both figures, how it is settled, and rests on every pass', () => {
    expect(first(digitsSwapped, read(0.506, 0.506))).toMatchObject({
      code: 'digits-swapped',
      ask: 'Could two digits of the valve lift, .506 in, be the wrong way round?',
      size: 'The other way round it is .560 in.',
      test: 'Say the unit, and read the number out again digit by digit.',
      restsOn: ['valve1', 'valve2'],
    });
  });

  it('has nothing to be set against where no ratio is known', () => {
    const { nominalRatio: _nominal, cardRatio: _card, ...bare } = read(0.506);
    expect(weight(bare)).toBe('quiet');
  });
});

describe('of a lobe lift', () => {
  it.each([
    ['.325 for .352', atLobe(0.352, 0.325, 0.325), 'strong'],
    ['.343 for .334, its lift not read', lobeAlone(0.334, 0.343), 'weak'],
    // .5344 / .334 = 1.600, and over .343 1.558: card and lift speak for .334.
    ['.343 for .334, under the lift of .334', atLobe(0.334, 0.343), 'strong'],
    // .325 the other way round is .352, .002 from .350: .025 off is what an odd arm may be, more is not.
    ['.025 off what is expected', lobeAlone(0.35, 0.325), 'weak'],
    ['a little more than .025 off', lobeAlone(0.3501, 0.325), 'strong'],
    ['.002 from the card', atLobe(0.354, 0.325), 'strong'],
    ['.003 from the card', atLobe(0.355, 0.325), 'quiet'],
    ['the card’s own', atLobe(0.352, 0.352), 'quiet'],
    ['one pass of two', atLobe(0.352, 0.325, 0.352), 'quiet'],
    // .305, .305 and .3055 the other way round are .350, .350 and .3505.
    ['passes between two graduations', atLobe(0.35, 0.305, 0.305, 0.3055), 'strong'],
    ['not read', atLobe(0.352), 'quiet'],
  ])('%s', (_, input, wanted) => {
    expect(weight(input)).toBe(wanted);
  });

  it('without a card against the lift at the valve over the ratio: .305 for .350 under .560', () => {
    const { cardLobeLift: _, ...noCard } = { ...plain, lobePasses: lobe(0.305), valvePasses: valve(0.56) };
    expect(first(digitsSwapped, noCard).ask).toBe(
      'Could two digits of the lobe lift, .305 in, be the wrong way round?',
    );
    const { nominalRatio: _nominal, cardRatio: _ratio, ...noRatio } = noCard;
    expect(weight(noRatio)).toBe('quiet');
    expect(weight({ ...noCard, valvePasses: [] })).toBe('quiet');
  });
});

describe('of readings in millimetres', () => {
  const metric = (card: number, lift: number): QuestionInput => ({
    ...lobeAlone(card * MM, lift * MM),
    inMillimetres: true,
  });
  it.each([
    ['8.19 for 8.91, .028 in off', metric(8.91, 8.19), 'strong'],
    ['8.29 for 8.92, .0248 in off', metric(8.92, 8.29), 'weak'],
    ['9.10 for 9.01: passes themselves repeat no better than .004 in', metric(9.01, 9.1), 'quiet'],
    [
      'a swap of the inches that were never typed',
      { ...lobeAlone(0.352, 0.325), inMillimetres: true },
      'quiet',
    ],
  ])('%s', (_, input, wanted) => {
    expect(weight(input)).toBe(wanted);
  });
});

describe('one pass beside others that repeat', () => {
  it('.656 beside .566 and .566: the digits, which make it level, before a turn, which leaves .010', () => {
    const input = read(0.566, 0.566, 0.656);
    expect(first(digitsSwapped, input)).toMatchObject({
      weight: 'strong',
      ask: 'Could two digits of the valve lift, .656 in, be the wrong way round?',
      size: 'The other way round it is .566 in.',
      restsOn: ['valve3'],
    });
    expect(weightOf(turnMiscounted, input)).toBe('weak');
  });

  it('.466 beside .566 and .566 is a turn, and no digits', () => {
    expect(weightOf(turnMiscounted, read(0.566, 0.566, 0.466))).toBe('strong');
    expect(weight(read(0.566, 0.566, 0.466))).toBe('quiet');
  });

  it('two that missed a turn say nothing against the third', () => {
    expect(first(turnMiscounted, read(0.461, 0.461, 0.561)).restsOn).toEqual(['valve1', 'valve2']);
  });
});
