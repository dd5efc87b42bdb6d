import { describe, expect, it } from 'vitest';
import { cardRatio } from '../../../server/mechanics/questions/card-ratio.ts';
import { digitsSwapped } from '../../../server/mechanics/questions/digits-swapped.ts';
import { driftingPasses, fallingPasses } from '../../../server/mechanics/questions/falling-passes.ts';
import { grossLiftAsLobe } from '../../../server/mechanics/questions/gross-lift-as-lobe.ts';
import { lashFormula } from '../../../server/mechanics/questions/lash-formula.ts';
import { lifterOfEngine } from '../../../server/mechanics/questions/lifter-of-engine.ts';
import { passOfOtherLift } from '../../../server/mechanics/questions/lifts-exchanged.ts';
import { notSaid } from '../../../server/mechanics/questions/not-said.ts';
import { outOfTravel } from '../../../server/mechanics/questions/out-of-travel.ts';
import { questionsFor } from '../../../server/mechanics/questions/questions.ts';
import { springMixed } from '../../../server/mechanics/questions/spring-mixed.ts';
import { defaultTolerances } from '../../../server/mechanics/questions/tolerances.ts';
import type { QuestionInput } from '../../../server/mechanics/questions/types.ts';
import { unitMixed } from '../../../server/mechanics/questions/unit-mixed.ts';
import { valveSwapped } from '../../../server/mechanics/questions/valve-swapped.ts';
import { zeroNotReturned } from '../../../server/mechanics/questions/zero-not-returned.ts';
import { InputFaults } from '../../../shared/problems/faults.ts';
import { first, fromCard, lobe, pass, plain, valve, weightOf } from './plain.ts';

/* Ends of bands, and what a doubt is not raised by: arithmetic on the 1.6 over a .350 lobe that lifts .560. */

describe('a pass of the other place', () => {
  it('is seen of two: their middle is at neither', () => {
    const given = { ...plain, lobePasses: lobe(0.35, 0.56) };
    expect(first(passOfOtherLift, given)).toMatchObject({
      ask: 'Could lobe pass, .560 in, have been read at the valve?',
      restsOn: ['lobe2'],
    });
    expect(weightOf(passOfOtherLift, { ...plain, lobePasses: lobe(0.56) })).toBe('quiet');
  });

  it('is told by its number, and known by it', () => {
    const numbered = valve(0.56, 0.56, 0.35).map((each, index) => ({ ...each, number: index + 1 }));
    const asked = first(passOfOtherLift, { ...plain, valvePasses: numbered });
    expect(asked.ask).toBe('Could pass 3, .350 in, have been read at the lobe?');
    expect(asked.knownBy).not.toBe(
      first(passOfOtherLift, {
        ...plain,
        valvePasses: [...numbered.slice(0, 2), { ...pass(0.35, 'valve3', 0), number: 4 }],
      }).knownBy,
    );
  });

  it('cannot be told where the two lifts are as good as level', () => {
    // .350 and .356: within .008 of one another a pass at .355 may be of either.
    const level = { ...plain, valvePasses: valve(0.356), lobePasses: lobe(0.35, 0.35, 0.355) };
    expect(weightOf(passOfOtherLift, level)).toBe('quiet');
  });
});

describe('passes that fall or drift by half a turn are a matter of the count', () => {
  // Eighths of an inch, so that half a turn is met to the last bit.
  const falling = (by: number): QuestionInput => ({
    ...plain,
    ...{ perTurn: 0.125, lifter: 'hydraulic', valvePasses: valve(0.5625, 0.5625 - by, 0.5625 - 2 * by) },
  });
  const drifting = (by: number): QuestionInput => ({
    ...plain,
    ...{ perTurn: 0.125, lobePasses: lobe(0.375, 0.375 - by, 0.375 - 2 * by) },
  });
  it.each([
    [0.0625, 'quiet'],
    [0.0624, 'strong'],
  ])('by %f: %s', (by, weight) => {
    expect(weightOf(fallingPasses, falling(by))).toBe(weight);
    expect(weightOf(driftingPasses, drifting(by))).toBe(weight);
  });

  it('two passes are too few for a slight fall, and for a drift', () => {
    const hydraulic: QuestionInput = { ...plain, lifter: 'hydraulic' };
    expect(weightOf(fallingPasses, { ...hydraulic, valvePasses: valve(0.56, 0.558) })).toBe('quiet');
    expect(weightOf(fallingPasses, { ...hydraulic, valvePasses: valve(0.56, 0.558, 0.556) })).toBe('weak');
    expect(weightOf(fallingPasses, { ...hydraulic, valvePasses: valve(0.56, 0.556) })).toBe('strong');
    expect(weightOf(driftingPasses, { ...plain, lobePasses: lobe(0.35, 0.34) })).toBe('quiet');
  });

  it('short on a running spring it may be the spring as well', () => {
    const short = { ...plain, lifter: 'hydraulic', valvePasses: valve(0.545, 0.543, 0.541) } as const;
    expect(weightOf(fallingPasses, short)).toBe('strong');
    expect(weightOf(fallingPasses, { ...short, spring: 'running' })).toBe('weak');
  });

  it.each([
    ['none', { valvePasses: [] }],
    ['on a solid lifter', { lifter: 'solid' }],
    ['on a light spring', { spring: 'light' }],
    ['three', { valvePasses: valve(0.55, 0.55, 0.55) }],
  ] as const)('more are wanted of a hydraulic lifter on its running spring, not %s', (_, more) => {
    const few = { ...plain, lifter: 'hydraulic', spring: 'running', valvePasses: valve(0.55) } as const;
    expect(weightOf(fallingPasses, few)).toBe('weak');
    expect(weightOf(fallingPasses, { ...few, ...more })).toBe('quiet');
  });

  it('under a lifter that is locked it is the base that slips', () => {
    const locked = { ...plain, lifter: 'locked', valvePasses: valve(0.56, 0.555, 0.55) } as const;
    expect(fallingPasses(locked, defaultTolerances)).toEqual([]);
    expect(first(driftingPasses, locked).ask).toContain('indicator base');
  });
});

describe('what stands for nothing', () => {
  const peaks = (lift: number): QuestionInput => ({
    ...fromCard,
    ...{
      pushedIn: undefined,
      travel: undefined,
      valvePasses: valve(lift),
      otherPeaks: [lift, lift, lift, lift],
    },
  });
  it.each([
    [
      'a lift that no indicator reads is a matter of unit or point',
      { ...fromCard, valvePasses: valve(1.3) },
      'quiet',
    ],
    ['peaks alike that are long', peaks(0.7), 'quiet'],
    ['peaks alike that are short', peaks(0.5), 'weak'],
    ['such peaks where it was pushed in far enough', { ...peaks(0.5), pushedIn: 0.9 }, 'quiet'],
  ])('of the travel: %s', (_, given, weight) => {
    expect(weightOf(outOfTravel, given)).toBe(weight);
  });

  it('a lobe off a caliper is not held against the card, nor against the other valve', () => {
    const caliper = { ...plain, lobeSource: 'caliper', lobePasses: lobe(0.33) } as const;
    expect(weightOf(valveSwapped, caliper)).toBe('quiet');
    expect(weightOf(valveSwapped, { ...caliper, lobeSource: 'indicator' })).toBe('strong');
    expect(weightOf(outOfTravel, { ...caliper, travel: 0.3, pushedIn: 0.9 })).toBe('quiet');
  });

  it('a lifter of the engine: only a hydraulic one in an engine of solid ones', () => {
    const both = { ...plain, engineLifter: 'solid', lifter: 'hydraulic' } as const;
    expect(weightOf(lifterOfEngine, both)).toBe('weak');
    expect(weightOf(lifterOfEngine, { ...both, engineLifter: 'hydraulic' })).toBe('quiet');
    expect(weightOf(lifterOfEngine, { ...both, lifter: 'locked' })).toBe('quiet');
    expect(weightOf(lifterOfEngine, { ...both, valvePasses: [] })).toBe('quiet');
  });

  it('passes a turn apart do not scatter; both places scatter once', () => {
    const blind = (...lifts: number[]) => lifts.map((lift, index) => pass(lift, `a${index}`));
    expect(weightOf(zeroNotReturned, { ...plain, valvePasses: blind(0.46, 0.56) })).toBe('quiet');
    expect(weightOf(zeroNotReturned, { ...plain, valvePasses: blind(0.46, 0.563) })).toBe('weak');
    const both = { ...plain, valvePasses: blind(0.56, 0.565), lobePasses: blind(0.35, 0.355) };
    expect(questionsFor(both).filter(({ code }) => code === 'zero-not-returned')).toHaveLength(1);
    // Somebody looked at all but one: it is that one.
    const looked = { ...plain, valvePasses: [pass(0.56, 'a', 0), pass(0.565, 'b')] };
    expect(first(zeroNotReturned, looked).restsOn).toEqual(['b']);
  });
});

describe('two figures that are known', () => {
  it('digits fit either lobe that there is a word of', () => {
    // .506 the other way round is .560: 1.6 times the card’s .350, whatever was read at the lobe.
    const given = { ...plain, lobePasses: lobe(0.33), valvePasses: valve(0.506) };
    expect(first(digitsSwapped, given).size).toBe('The other way round it is .560 in.');
  });

  it('a lash taken off the lobe is asked of the lobe that fits', () => {
    // (.350 − .016) · 1.6 = .5344; over .330 it would be .5024.
    const given = { ...plain, valvePasses: [], lobePasses: lobe(0.33), statedValveLift: 0.5344 };
    expect(weightOf(lashFormula, given)).toBe('strong');
    expect(weightOf(lashFormula, { ...given, statedValveLift: 0.5024 })).toBe('strong');
    expect(weightOf(lashFormula, { ...given, statedValveLift: 0.518 })).toBe('quiet');
  });

  it('no ratio, no lobe that a valve lift would make', () => {
    const { nominalRatio: _nominal, cardRatio: _card, ...bare } = plain;
    const given = { ...bare, valvePasses: [], lobePasses: lobe(0.56) };
    expect(first(grossLiftAsLobe, given).size).toBe('The ratio would not be known.');
  });

  it('a card for another rocker: stamped or sold as, and how far apart where no lobe is known', () => {
    const { cardLobeLift: _, ...noLobe } = { ...fromCard, cardRatio: 1.5 };
    expect(first(cardRatio, noLobe).size).toBe('The ratios are .1 apart.');
    expect(first(cardRatio, { ...noLobe, nominalFrom: 'mark' }).ask).toContain('these are stamped 1.6.');
    expect(first(cardRatio, { ...noLobe, nominalFrom: 'sold-as' }).ask).toContain('these are sold as 1.6.');
    expect(weightOf(cardRatio, { ...noLobe, alsoHeldAs: [1.7, 1.51] })).toBe('quiet');
    expect(weightOf(cardRatio, { ...noLobe, alsoHeldAs: [1.7] })).toBe('weak');
  });

  it('millimetres for inches are so many more; inches divided once too often so many less', () => {
    expect(first(unitMixed, { ...plain, valvePasses: valve(14.22) }).ask).toMatch(/14\.22 be millimetres/);
    const divided = first(unitMixed, { ...plain, valvePasses: valve(0.56 / 25.4) });
    expect(divided.ask).toMatch(/inches already before it was divided by 25\.4/);
    expect(divided.size).toBe('That makes .560 in.');
  });
});

describe('springs', () => {
  const two = { ...plain, lightRatio: 1.6, runningRatio: 1.55 } as const;
  it.each([
    ['a running ratio by itself', { ...plain, spring: 'running' }, 'spring-mixed'],
    ['beside a light one it is there for the flex', { ...two, spring: 'running' }, undefined],
    ['no spring, beside a light one', { ...two, spring: 'not-said' }, 'spring-not-said'],
    ['as much on both', { ...two, runningRatio: 1.6 }, undefined],
    ['at one lash', { ...two, lightLash: 'zero', runningLash: 'zero' }, undefined],
    [
      'at two, both said: asked of the running one',
      { ...two, lightLash: 'zero', runningLash: 'set' },
      undefined,
    ],
    [
      'at one that nobody said',
      { ...two, lightLash: 'zero', runningLash: 'not-said' },
      'springs-at-different-lash',
    ],
  ] as const)('%s', (_, given, code) => {
    expect(questionsFor(given).find(({ code: each }) => each.startsWith('spring'))?.code).toBe(code);
  });

  it('the lash of each is told as it was said', () => {
    const asked = first(springMixed, { ...two, lightLash: 'not-said', runningLash: 'set' });
    expect(asked.size).toBe('Light was read at a lash not said, running with the lash set.');
    expect(asked.weight).toBe('weak');
  });

  it('which it is, is asked without a nominal too, and of whoever stands there by looking', () => {
    const { nominalRatio: _, cardRatio: __, ...bare } = { ...plain, spring: 'not-said' } as const;
    const asked = first(notSaid, bare);
    expect(asked).toMatchObject({ code: 'spring-not-said', weight: 'weak' });
    expect(asked.testAtBench).toMatch(/^Look/);
    expect(weightOf(notSaid, { ...plain, spring: 'not-said' })).toBe('quiet');
    expect(first(notSaid, { ...plain, lash: 'not-said' })).not.toHaveProperty('testAtBench');
  });
});

describe('figures that may be none', () => {
  const faultsOf = (given: QuestionInput) => {
    try {
      questionsFor(given);
    } catch (error) {
      if (error instanceof InputFaults) return error.faults.map(({ pointer }) => pointer);
      throw error;
    }
    return [];
  };
  it('a lash of nothing, and a lean of none; not one below', () => {
    expect(
      faultsOf({ ...plain, lashSetting: 0, cardLash: 0, lean: 0, pushedIn: 0, otherLashes: [0] }),
    ).toEqual([]);
    expect(faultsOf({ ...plain, otherLashes: [0.016, -0.001] })).toEqual(['/otherLashes/1']);
    expect(faultsOf({ ...plain, lean: -0.1 })).toEqual(['/lean']);
    expect(faultsOf({ ...plain, valvePasses: [pass(0.56, 'a', -0.001)] })).toEqual([]);
  });
});
