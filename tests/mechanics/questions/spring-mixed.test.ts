import { describe, expect, it } from 'vitest';
import { questionsFor } from '../../../server/mechanics/questions/questions.ts';
import { springMixed } from '../../../server/mechanics/questions/spring-mixed.ts';
import { defaultTolerances as tolerances } from '../../../server/mechanics/questions/tolerances.ts';
import type { QuestionInput } from '../../../server/mechanics/questions/types.ts';
import { first, lobe, plain, valve, weightOf } from './plain.ts';

const both = (lightRatio: number, runningRatio: number): QuestionInput => ({
  ...plain,
  lightRatio,
  runningRatio,
  lightLash: 'zero',
  runningLash: 'zero',
});

describe('two springs', () => {
  it.each([
    ['running under light by its flex', both(1.6, 1.55), 'quiet'],
    ['running over light by .0065', both(1.6, 1.6065), 'strong'],
    ['by .006', both(1.6, 1.606), 'weak'],
    ['by .0025', both(1.6, 1.6025), 'weak'],
    ['by .002', both(1.6, 1.602), 'quiet'],
    [
      'light at zero lash, running with it set, asked of the running one',
      { ...both(1.6, 1.55), spring: 'running', runningLash: 'set' },
      'strong',
    ],
    ['and not of the light one again', { ...both(1.6, 1.55), spring: 'light', runningLash: 'set' }, 'quiet'],
    ['lash said for one of them', { ...both(1.6, 1.55), runningLash: 'not-said' }, 'weak'],
    ['one of them alone', plain, 'quiet'],
  ] as const)('%s', (_, given, weight) => {
    expect(weightOf(springMixed, given)).toBe(weight);
  });

  it('are asked about under codes of their own', () => {
    const given: QuestionInput = { ...both(1.55, 1.6), spring: 'running', runningLash: 'set' };
    const codes = springMixed(given, tolerances).map((question) => question.code);
    expect(codes.slice(0, 2)).toEqual(['springs-swapped', 'springs-at-different-lash']);
  });
});

describe('a running-spring ratio next to a stamp', () => {
  const read: QuestionInput = {
    ...plain,
    spring: 'running',
    cardLobeLift: 0.482,
    otherCardLobeLift: 0.471,
    cardRatio: 1.75,
    nominalRatio: 1.75,
    lobePasses: lobe(0.482, 0.4825, 0.4815),
    valvePasses: valve(0.842, 0.842, 0.842),
    pushedIn: 0.95,
  };

  it('.842 over .482 is 1.747 and is asked nothing but whether it is set against the stamp', () => {
    expect(questionsFor(read)).toEqual([
      {
        code: 'spring-mixed',
        weight: 'weak',
        ask: 'Is this being set against the 1.75? It was read on the running spring.',
        size: 'A running spring takes .005 to .040 in off the lift.',
        test: 'Fit a light spring, same lifter, same lash, same zero, and read again.',
        restsOn: ['valve1', 'valve2', 'valve3'],
      },
    ]);
  });

  it('is asked nothing on a light spring', () => {
    expect(questionsFor({ ...read, spring: 'light' })).toEqual([]);
  });

  it('is asked its spring where none is said, once', () => {
    const codes = questionsFor({ ...read, spring: 'not-said' }).map((question) => question.code);
    expect(codes).toEqual(['spring-not-said']);
    expect(first(springMixed, { ...read, spring: 'not-said' }).ask).toContain('Only a light-spring ratio');
  });

  it('can be set against no stamp where none is known', () => {
    const { nominalRatio: _, ...rest } = read;
    expect(weightOf(springMixed, rest)).toBe('quiet');
  });
});
