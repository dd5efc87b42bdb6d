import { describe, expect, it } from 'vitest';
import { openCase } from '../../../server/mechanics/explain-readings/case.ts';
import { explainReadings } from '../../../server/mechanics/explain-readings/explain.ts';
import { isSinking } from '../../../server/mechanics/explain-readings/questions.ts';
import type { ExplainInput, ExplainReading } from '../../../server/mechanics/explain-readings/types.ts';
import { LIST, lobe, valve } from './cases.ts';

const input = (readings: readonly ExplainReading[], more: Partial<ExplainInput> = {}): ExplainInput => ({
  nominals: LIST,
  cardLobeLift: 0.35,
  readings,
  ...more,
});

describe('a lifter that sinks: every pass lower, by more than .003 in on average (design note)', () => {
  const sinks = (
    lifts: readonly number[],
    said: Partial<ExplainReading> = {},
    more: readonly ExplainReading[] = [],
  ) =>
    isSinking(
      openCase(
        input([
          ...lifts.map((lift, index) => valve(lift, { lifter: 'hydraulic', pass: index + 1, ...said })),
          ...more,
        ]),
      ),
    );
  it.each([
    [[0.528, 0.523, 0.517], true],
    [[0.528, 0.5245], true],
    [[0.528, 0.5255], false],
    [[0.53, 0.53, 0.517], false],
    [[0.53, 0.517, 0.52], false],
    [[0.517, 0.523, 0.53], false],
    [[0.528], false],
    [[], false],
  ])('%j: %s', (lifts, wanted) => {
    expect(sinks(lifts)).toBe(wanted);
  });

  it('a solid one does not, nor do lobe lifts or lifts on the way up', () => {
    const falling = [0.528, 0.523, 0.517];
    expect(sinks(falling, { lifter: 'solid' })).toBe(false);
    expect(sinks(falling, { atLobeLift: 0.2 })).toBe(false);
    expect(sinks([0.528, 0.528], {}, [lobe(0.3, { lifter: 'hydraulic' })])).toBe(false);
    expect(sinks(falling, {}, [lobe(0.6, { lifter: 'hydraulic' })])).toBe(true);
  });
});

describe('what was not said is asked', () => {
  const asked = (readings: readonly ExplainReading[], more: Partial<ExplainInput> = {}) =>
    explainReadings(input(readings, more))
      .questions.filter(({ cause }) => cause === 'state-not-said' || cause === 'sinking')
      .map(({ text }) => text.split(/[ ,]/).slice(0, 2).join(' '));
  const bare = (value: number): ExplainReading => ({ of: 'valve-lift', value, pass: 1, setUp: 0 });

  it('spring, lifter and lash of the valve’s readings, of one that lacks it among others too', () => {
    expect(asked([bare(0.56)])).toEqual(['Which spring', 'Is the', 'Was the']);
    expect(asked([valve(0.56, { lashSet: true }), bare(0.561)])).toEqual([
      'Which spring',
      'Is the',
      'Was the',
    ]);
    expect(asked([valve(0.56)])).toEqual(['Was the']);
  });

  it('not what was said, nor of a lobe', () => {
    expect(asked([valve(0.56)], { lash: 'zero' })).toEqual([]);
    expect(asked([valve(0.56, { lashSet: true })])).toEqual([]);
    const { spring: _spring, lifter: _lifter, ...atLobe } = lobe(0.35);
    expect(asked([valve(0.56, { lashSet: true }), atLobe])).toEqual([]);
  });
});
