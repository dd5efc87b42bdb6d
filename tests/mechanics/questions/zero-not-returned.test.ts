import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { zeroNotReturned } from '../../../server/mechanics/questions/zero-not-returned.ts';
import { readCleanly, trueEngine } from './engine.ts';
import { first, pass, plain, weightOf } from './plain.ts';

describe('a zero that did not return', () => {
  it.each([
    ['.0025 off', 0.0025, 'strong'],
    ['.0025 under', -0.0025, 'strong'],
    ['.002 off', 0.002, 'weak'],
    ['.0015 off', 0.0015, 'weak'],
    ['.0011 off', 0.0011, 'weak'],
    ['.001 off', 0.001, 'quiet'],
    ['back on it', 0, 'quiet'],
  ])('%s', (_, zero, weight) => {
    const given = { ...plain, valvePasses: [pass(0.56, 'a', 0), pass(0.56, 'b', zero)] };
    expect(weightOf(zeroNotReturned, given)).toBe(weight);
  });

  it('names the passes that must be repeated', () => {
    const given = { ...plain, valvePasses: [pass(0.56, 'a', 0), pass(0.56, 'b', 0.004)] };
    expect(first(zeroNotReturned, given)).toMatchObject({ restsOn: ['b'], size: 'It stood .004 in off.' });
  });

  it('is asked of passes that scatter where nobody looked', () => {
    const apart = (by: number) => ({ ...plain, valvePasses: [pass(0.56, 'a'), pass(0.56 + by, 'b')] });
    expect(weightOf(zeroNotReturned, apart(0.0025))).toBe('weak');
    expect(weightOf(zeroNotReturned, apart(0.002))).toBe('quiet');
  });

  it('is asked about strongly on every engine whose zero moved, and of no true one', () => {
    fc.assert(
      fc.property(trueEngine, fc.integer({ min: 0, max: 2 }), (engine, which) => {
        const clean = readCleanly(engine);
        const moved = clean.valvePasses.map((each, i) =>
          i === which ? { ...each, zeroReturn: -0.005 } : each,
        );
        expect(weightOf(zeroNotReturned, { ...clean, valvePasses: moved })).toBe('strong');
        expect(weightOf(zeroNotReturned, clean)).toBe('quiet');
      }),
    );
  });
});
