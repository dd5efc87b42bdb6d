import { describe, expect, it } from 'vitest';
import { explainReadings } from '../../../server/mechanics/explain-readings/explain.ts';
import {
  HIGHEST_RATIO,
  MOST_NAMES,
  MOST_READINGS,
} from '../../../server/mechanics/explain-readings/limits.ts';
import type { ExplainInput } from '../../../server/mechanics/explain-readings/types.ts';
import { InputFaults } from '../../../shared/problems/faults.ts';
import { LIST, lobe, valve } from './cases.ts';

const GOOD: ExplainInput = { nominals: LIST, cardLobeLift: 0.35, readings: [valve(0.56)] };

function faultsOf(input: ExplainInput): string[] {
  try {
    explainReadings(input);
  } catch (error) {
    if (error instanceof InputFaults) return error.faults.map(({ pointer, code }) => `${pointer} ${code}`);
    throw error;
  }
  return [];
}

describe('bad input is refused with its field', () => {
  const bad: readonly [string, ExplainInput, string][] = [
    ['no names', { ...GOOD, nominals: [] }, '/nominals required'],
    ['a name twice', { ...GOOD, nominals: [1.5, 1.6, 1.5] }, '/nominals/2 not-allowed'],
    ['a ratio of zero', { ...GOOD, nominals: [0] }, '/nominals/0 out-of-range'],
    ['a mark that is none', { ...GOOD, mark: Number.NaN }, '/mark not-a-number'],
    ['a negative lobe', { ...GOOD, cardLobeLift: -0.35 }, '/cardLobeLift out-of-range'],
    ['a lift of zero', { ...GOOD, readings: [valve(0)] }, '/readings/0/value out-of-range'],
    ['a lift beyond any part', { ...GOOD, readings: [valve(101)] }, '/readings/0/value out-of-range'],
    ['a half pass', { ...GOOD, readings: [valve(0.5, { pass: 1.5 })] }, '/readings/0/pass out-of-range'],
    [
      'a set-up below zero',
      { ...GOOD, readings: [valve(0.5, { setUp: -1 })] },
      '/readings/0/setUp out-of-range',
    ],
    [
      'no travel per turn',
      { ...GOOD, readings: [valve(0.5, { perTurn: 0 })] },
      '/readings/0/perTurn out-of-range',
    ],
    [
      'lash at a lobe',
      { ...GOOD, readings: [lobe(0.35, { lashSet: true })] },
      '/readings/0/lashSet not-allowed',
    ],
    [
      'a caliper on a valve',
      { ...GOOD, readings: [valve(0.5, { method: 'caliper' })] },
      '/readings/0/method not-allowed',
    ],
    ['a certain slip', { ...GOOD, assumptions: { slip: 1 } }, '/assumptions/slip out-of-range'],
    [
      'no spread at all',
      { ...GOOD, assumptions: { ratioSpread: 0 } },
      '/assumptions/ratioSpread out-of-range',
    ],
    ['a mark beyond any arm', { ...GOOD, mark: HIGHEST_RATIO + 0.1 }, '/mark out-of-range'],
    ['a lobe of the other valve of none', { ...GOOD, otherLobeLift: 0 }, '/otherLobeLift out-of-range'],
    ['a lobe beyond any part', { ...GOOD, cardLobeLift: 101 }, '/cardLobeLift out-of-range'],
    ['a lash below none', { ...GOOD, lashSetting: -0.001 }, '/lashSetting out-of-range'],
    ['a lash of inches', { ...GOOD, lashSetting: 1.1 }, '/lashSetting out-of-range'],
    [
      'a station at no lift',
      { ...GOOD, readings: [valve(0.32, { atLobeLift: 0 })] },
      '/readings/0/atLobeLift out-of-range',
    ],
    [
      'a tool that is off by less than nothing',
      { ...GOOD, readings: [valve(0.56, { errorLimit: -0.001 })] },
      '/readings/0/errorLimit out-of-range',
    ],
    [
      'a tool that is off by inches',
      { ...GOOD, readings: [valve(0.56, { errorLimit: 1.1 })] },
      '/readings/0/errorLimit out-of-range',
    ],
    ['a chance of none', { ...GOOD, assumptions: { slip: 0 } }, '/assumptions/slip out-of-range'],
    [
      'a shift below any',
      { ...GOOD, assumptions: { unlistedFaultMean: -101 } },
      '/assumptions/unlistedFaultMean out-of-range',
    ],
    [
      'a shift over any',
      { ...GOOD, assumptions: { unlistedFaultMean: 101 } },
      '/assumptions/unlistedFaultMean out-of-range',
    ],
    [
      'a flex below none',
      { ...GOOD, assumptions: { flexMean: -0.001 } },
      '/assumptions/flexMean out-of-range',
    ],
    ['a flex beyond any', { ...GOOD, assumptions: { flexMean: 101 } }, '/assumptions/flexMean out-of-range'],
    [
      'a spread beyond any',
      { ...GOOD, assumptions: { ratioSpread: 101 } },
      '/assumptions/ratioSpread out-of-range',
    ],
    [
      'too many names',
      { ...GOOD, nominals: Array.from({ length: MOST_NAMES + 1 }, (_, i) => 1 + i / 100) },
      '/nominals too-many',
    ],
    [
      'too many readings',
      { ...GOOD, readings: Array.from({ length: 41 }, () => valve(0.56)) },
      '/readings too-many',
    ],
  ];
  it.each(bad)('%s', (_, input, fault) => expect(faultsOf(input)).toEqual([fault]));

  const good: readonly [string, ExplainInput][] = [
    [
      'as many names as may be',
      { ...GOOD, nominals: Array.from({ length: MOST_NAMES }, (_, i) => 1 + i / 100) },
    ],
    [
      'as many readings as may be',
      { ...GOOD, readings: Array.from({ length: MOST_READINGS }, () => valve(0.56)) },
    ],
    ['a lash of none', { ...GOOD, lashSetting: 0 }],
    ['a tool without fault', { ...GOOD, readings: [valve(0.56, { errorLimit: 0 })] }],
    ['a station', { ...GOOD, readings: [valve(0.32, { atLobeLift: 0.2 })] }],
    ['no flex at all', { ...GOOD, assumptions: { flexMean: 0 } }],
    ['a shift that lowers', { ...GOOD, assumptions: { unlistedFaultMean: -0.02 } }],
    ['a shift of none', { ...GOOD, assumptions: { unlistedFaultMean: 0 } }],
    ['a lobe that denies what is of a valve', { ...GOOD, readings: [lobe(0.35, { lashSet: false })] }],
    ['a lobe by caliper', { ...GOOD, readings: [lobe(0.35, { method: 'caliper' })] }],
  ];
  it.each(good)('but not %s', (_, input) => {
    expect(faultsOf(input)).toEqual([]);
  });

  it('an assumption that there is not, in whatever way it came', () => {
    const assumptions = JSON.parse('{ "noSuchThing": 1 }');
    expect(faultsOf({ ...GOOD, assumptions })).toEqual(['/assumptions/noSuchThing unknown-field']);
  });

  it('names every fault at once', () => {
    const faults = faultsOf({ ...GOOD, cardLobeLift: 0, readings: [valve(0.56), valve(-1)] });
    expect(faults).toEqual(['/cardLobeLift out-of-range', '/readings/1/value out-of-range']);
  });

  it('says what came and what is allowed', () => {
    try {
      explainReadings({ ...GOOD, readings: [valve(-1)] });
      expect.unreachable();
    } catch (error) {
      const [fault] = error instanceof InputFaults ? error.faults : [];
      expect(fault?.received).toBe(-1);
      expect(fault?.detail).toBe('A lift must be above 0, at most 100.');
    }
  });
});

describe('assumptions', () => {
  it('can be changed one by one', () => {
    const often = explainReadings({ ...GOOD, assumptions: { tiltUnsaid: 0.5 } });
    expect(often.noMistake).toBeLessThan(explainReadings(GOOD).noMistake - 0.2);
  });
});
