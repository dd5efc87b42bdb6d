import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outOfTravel } from '../../../server/mechanics/questions/out-of-travel.ts';
import { liftOf, readCleanly, trueEngine, withValveLift } from './engine.ts';
import { first, fromCard, lobe, plain, valve, weightOf } from './plain.ts';

describe('the travel of the indicator', () => {
  it.each([
    ['pushed in by .050 more than the lift', 0.61, 'quiet'],
    ['by .0495 more', 0.6095, 'weak'],
    ['by .0035 more', 0.5635, 'weak'],
    ['by .003 more', 0.563, 'strong'],
    ['by less than the lift', 0.5, 'strong'],
  ])('at the valve, %s', (_, pushedIn, weight) => {
    expect(weightOf(outOfTravel, { ...fromCard, pushedIn })).toBe(weight);
  });

  it.each([
    ['with .050 to go', 0.1, 'quiet'],
    ['with .045 to go', 0.105, 'weak'],
    ['used up', 0.15, 'strong'],
    ['pushed in so far that it is meant for the valve', 0.45, 'quiet'],
  ])('at the lobe alone, %s', (_, pushedIn, weight) => {
    const given = { ...plain, valvePasses: [], travel: 0.5, pushedIn };
    expect(weightOf(outOfTravel, given)).toBe(weight);
  });

  it.each([
    [0.2, 'strong'],
    [0.205, 'quiet'],
  ])('pushed in by %f with no valve read is the lobe’s or the valve’s', (pushedIn, weight) => {
    const given = { ...plain, valvePasses: [], travel: 0.51, pushedIn };
    expect(weightOf(outOfTravel, given)).toBe(weight);
  });

  it('pushed in for the valve is not held against the lobe', () => {
    expect(weightOf(outOfTravel, { ...plain, lobePasses: lobe(0.35), pushedIn: 0.95 })).toBe('quiet');
  });

  const { pushedIn: _, travel: __, ...unknown } = fromCard;
  it.each([
    ['alike', [0.5, 0.501, 0.499, 0.5], 'weak'],
    ['three of them only', [0.5, 0.501, 0.499], 'weak'],
    ['two of them only', [0.5, 0.501], 'quiet'],
    ['apart by .0011', [0.5011, 0.4989, 0.5011, 0.4989], 'quiet'],
    ['three quarters of them', [0.5, 0.5, 0.5, 0.54], 'weak'],
    ['three of five', [0.5, 0.5, 0.5, 0.54, 0.56], 'quiet'],
  ])('unknown, and short peaks on several valves, %s', (_name, otherPeaks, weight) => {
    expect(weightOf(outOfTravel, { ...unknown, valvePasses: valve(0.5), otherPeaks })).toBe(weight);
  });

  it('is not in question where the valves lift what they should', () => {
    const given = { ...unknown, valvePasses: valve(0.56), otherPeaks: [0.56, 0.56, 0.56, 0.56] };
    expect(weightOf(outOfTravel, given)).toBe('quiet');
  });

  it('is asked about strongly wherever the tip left the retainer, and nowhere else', () => {
    fc.assert(
      fc.property(trueEngine, fc.integer({ min: 10, max: 100 }), (engine, thousandths) => {
        const pushedIn = liftOf(engine) - thousandths / 1000;
        const left = { ...withValveLift(engine, pushedIn), pushedIn };
        expect(first(outOfTravel, left)).toMatchObject({
          weight: 'strong',
          ask: 'Could the tip have left the retainer?',
        });
        expect(weightOf(outOfTravel, readCleanly(engine))).toBe('quiet');
      }),
    );
  });
});
