import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { grossLiftAsLobe } from '../../../server/mechanics/questions/gross-lift-as-lobe.ts';
import { liftOf, readCleanly, trueEngine } from './engine.ts';
import { first, fromCard, plain, weightOf } from './plain.ts';

const entered = (lobe: number) => ({ ...fromCard, cardLobeLift: lobe });

describe('a valve lift entered as the lobe lift', () => {
  it.each([
    ['level with the valve', 0.56, 'strong'],
    ['5 % under it', 0.5334, 'strong'],
    ['5.1 % under it', 0.5328, 'weak'],
    ['over .50, neither level nor borne out', 0.52, 'weak'],
    ['at .50, as in racing', 0.5, 'quiet'],
    ['the lobe', 0.35, 'quiet'],
  ])('%s', (_, lift, weight) => {
    expect(weightOf(grossLiftAsLobe, entered(lift))).toBe(weight);
  });

  it('is not asked of a long racing lobe that the valve bears out', () => {
    const given = { ...entered(0.52), valvePasses: [{ id: 'a', lift: 0.83 }] };
    expect(weightOf(grossLiftAsLobe, given)).toBe('quiet');
  });

  it('is seen in a sum by the card: .560 over 1.6 is its .350', () => {
    const given = { ...plain, valvePasses: [], lobePasses: [], statedLobeLift: 0.56 };
    expect(first(grossLiftAsLobe, given)).toMatchObject({
      weight: 'strong',
      ask: 'Could the lobe lift in the sum, .560 in, be a valve lift?',
      size: 'Divided by 1.6 it makes a lobe of .350 in.',
    });
  });

  it.each([
    ['.005 from the card', 0.5679, 'strong'],
    ['.0051 from the card', 0.5682, 'weak'],
  ])('over the ratio is %s', (_, statedLobeLift, weight) => {
    const given = { ...plain, valvePasses: [], lobePasses: [], statedLobeLift };
    expect(weightOf(grossLiftAsLobe, given)).toBe(weight);
  });

  it('is asked about strongly on every engine entered so, and of no true one', () => {
    fc.assert(
      fc.property(trueEngine, (engine) => {
        const clean = readCleanly(engine);
        const card = Math.round(liftOf(engine) * 1000) / 1000;
        expect(weightOf(grossLiftAsLobe, { ...clean, cardLobeLift: card })).toBe('strong');
        expect(weightOf(grossLiftAsLobe, clean)).toBe('quiet');
      }),
    );
  });
});
