import { describe, expect, test } from 'vitest';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { buildOf, cleanSetUp, lobe, passesOf, stamped } from './plain.ts';

const assess = assessAsTold('how-passes-repeat');

/** Lifts of an arm stamped 1.6 on a light spring, solid lifter, zero lash; the lobe .400 in. All invented. */
const readAs = (lifts: readonly number[]) =>
  buildOf([], {
    arms: [stamped('1.6')],
    card: { assumedRatio: 1.6, intake: lobe(0.4), exhaust: lobe(0.42) },
    setUps: [cleanSetUp],
    passes: passesOf('valve-lift', lifts).map((pass) => ({ ...pass, counted: true })),
  });

const lacking = (lifts: readonly number[]): readonly string[] =>
  assess(readAs(lifts)).details.setUps[0]?.lacks ?? [];

/*
 * Three passes within .004 in is the trade's rule: common practice, no published source. The mean range of normal
 * values, in standard deviations: 1.693 of three, 2.704 of seven (ISO 7870-2:2013, table 2, from memory), so that
 * seven of the same scatter lie within .0064.
 */
describe('how far passes may lie apart', () => {
  test.each([
    { said: 'three, .004 apart', lifts: [0.638, 0.64, 0.642], repeats: true },
    { said: 'three, .005 apart', lifts: [0.638, 0.64, 0.643], repeats: false },
    { said: 'seven, .005 apart', lifts: [0.638, 0.639, 0.643, 0.641, 0.64, 0.642, 0.64], repeats: true },
    { said: 'seven, .006 apart', lifts: [0.573, 0.569, 0.567, 0.569, 0.57, 0.569, 0.57], repeats: true },
    {
      said: 'seven, .008 apart, evenly',
      lifts: [0.636, 0.637, 0.638, 0.64, 0.642, 0.643, 0.644],
      repeats: false,
    },
  ])('$said', ({ lifts, repeats }) => {
    expect(lacking(lifts).length === 0).toBe(repeats);
  });

  test('two that do not repeat take one more; six want a set-up that holds, not a seventh pass', () => {
    expect(lacking([0.638, 0.643])[0]).toContain('one more pass');
    const six = [0.6, 0.61, 0.62, 0.63, 0.64, 0.65];
    expect(lacking(six)[0]).toContain('these 6 passes lie .050 in apart; find first what moves');
    const { next, judgements } = assess(readAs(six));
    expect(next?.sentence).toContain('find first what moves');
    expect(next?.sentence).not.toContain('one more pass');
    expect(judgements.filter(({ against, word }) => against.to === 'mark' && word !== undefined)).toEqual([]);
  });

  test('a set of 26 and more is held to the rule of 25', () => {
    const many = Array.from({ length: 40 }, (_, index) => 0.64 + (index % 2 === 0 ? 0.004 : -0.004));
    expect(lacking(many)).toEqual([]);
  });
});

describe('a pass that stands a turn apart, on the running spring', () => {
  const running = (lifts: readonly number[]) =>
    assess(
      buildOf([], {
        card: { assumedRatio: 1.6, intake: lobe(0.4), exhaust: lobe(0.42) },
        setUps: [{ ...cleanSetUp, spring: 'running' }],
        passes: passesOf('valve-lift', lifts),
      }),
    );

  test('is looked at before another spring is fitted', () => {
    const { next, headlines } = running([0.66, 0.661, 0.66, 0.56]);
    expect(next?.action).toMatch(/^enter-again-pass-4/);
    expect(headlines[0]?.sentence).toContain(
      'pass 4 entered again or struck out: it reads .560 in, one turn',
    );
  });

  test('once it is gone the light spring is next', () => {
    expect(running([0.66, 0.661, 0.66]).next?.action).toContain('light-spring-solid-lifter');
  });
});
