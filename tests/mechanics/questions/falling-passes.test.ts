import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { driftingPasses, fallingPasses } from '../../../server/mechanics/questions/falling-passes.ts';
import type { QuestionInput } from '../../../server/mechanics/questions/types.ts';
import { liftOf, readCleanly, trueEngine } from './engine.ts';
import { first, plain, valve, weightOf } from './plain.ts';

const hydraulic: QuestionInput = { ...plain, lifter: 'hydraulic' };
const fall = (by: number, from = 0.56, input = hydraulic) => ({
  ...input,
  valvePasses: valve(from, from - by, from - 2 * by),
});

describe('passes that fall', () => {
  it.each([
    [
      '.478 .471 .462 on a running hydraulic: common practice, no source',
      { ...hydraulic, spring: 'running' as const, valvePasses: valve(0.478, 0.471, 0.462) },
      'strong',
    ],
    ['by .0035 a pass', fall(0.0035), 'strong'],
    ['by .003 a pass', fall(0.003), 'weak'],
    ['by .001 a pass', fall(0.001), 'weak'],
    ['by .0009 a pass', fall(0.0009), 'quiet'],
    ['by .001 a pass, .010 short', fall(0.001, 0.551), 'strong'],
    ['by .001 a pass, .0095 short', fall(0.001, 0.5515), 'weak'],
    ['and rise again', { ...hydraulic, valvePasses: valve(0.56, 0.55, 0.556) }, 'quiet'],
    ['under a lifter not said', fall(0.005, 0.56, { ...plain, lifter: 'not-said' }), 'weak'],
    ['slightly under a solid lifter', fall(0.003, 0.56, plain), 'weak'],
    ['clearly under a solid lifter: that is asked as a drift', fall(0.005, 0.56, plain), 'quiet'],
    ['not at all', fall(0), 'quiet'],
  ] as const)('%s', (_, given, weight) => {
    expect(weightOf(fallingPasses, given)).toBe(weight);
  });

  it('over a solid lifter point at the base', () => {
    expect(first(fallingPasses, fall(0.003, 0.56, plain)).ask).toContain('indicator base');
    // No lifter that cannot sink does it: the base is looked at first, and then three passes are taken.
    expect(first(driftingPasses, fall(0.005, 0.56, plain))).toMatchObject({
      weight: 'strong',
      test: 'Tighten the base, look at the zero, and take three more passes.',
    });
    expect(weightOf(driftingPasses, fall(0.005))).toBe('quiet');
    expect(first(fallingPasses, fall(0.005)).ask).toContain('lifter be sinking');
  });

  it('never gives a mean', () => {
    expect(first(fallingPasses, fall(0.008)).size).toBe('They fall .008 in a pass; their mean says nothing.');
  });

  it('are looked for on a running hydraulic with fewer than three', () => {
    const few = { ...hydraulic, spring: 'running' as const, valvePasses: valve(0.55, 0.55) };
    expect(first(fallingPasses, few).test).toContain('three passes');
    expect(weightOf(fallingPasses, { ...few, valvePasses: valve(0.55, 0.55, 0.55) })).toBe('quiet');
  });

  it('are asked about strongly on every engine that sinks by .006 to .009 a pass', () => {
    fc.assert(
      fc.property(trueEngine, fc.integer({ min: 6, max: 9 }), (engine, thousandths) => {
        const lifts = engine.valveNoise.map((noise, i) => liftOf(engine) + noise - (i * thousandths) / 1000);
        const given = { ...readCleanly(engine), lifter: 'hydraulic' as const, valvePasses: valve(...lifts) };
        expect(weightOf(fallingPasses, given)).toBe('strong');
      }),
    );
  });

  it('are asked about strongly on no engine that does not sink', () => {
    fc.assert(
      fc.property(trueEngine, (engine) => {
        const given = { ...readCleanly(engine), lifter: 'hydraulic' as const };
        expect(weightOf(fallingPasses, given)).not.toBe('strong');
      }),
    );
  });
});
