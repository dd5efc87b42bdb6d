import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { explainReadings } from '../../../server/mechanics/explain-readings/explain.ts';
import type { ExplainInput, ExplainReading } from '../../../server/mechanics/explain-readings/types.ts';
import { LIST, valve, WORKED_CASES } from './cases.ts';

const lift = fc.double({ min: 0.001, max: 100, noNaN: true });
const ordinaryLift = fc.double({ min: 0.2, max: 0.9, noNaN: true });

const reading: fc.Arbitrary<ExplainReading> = fc.record(
  {
    of: fc.constant('valve-lift' as const),
    value: fc.oneof(ordinaryLift, lift),
    pass: fc.integer({ min: 1, max: 5 }),
    setUp: fc.integer({ min: 0, max: 2 }),
    spring: fc.constantFrom('light' as const, 'running' as const),
    lifter: fc.constantFrom('solid' as const, 'hydraulic' as const),
    atLobeLift: fc.double({ min: 0.05, max: 0.3, noNaN: true }),
    lashSet: fc.boolean(),
    aligned: fc.boolean(),
    counted: fc.boolean(),
    otherValve: fc.boolean(),
    perTurn: fc.constantFrom(0.1, 1 / 25.4),
  },
  { requiredKeys: ['of', 'value', 'pass', 'setUp'] },
);

const lobeReading: fc.Arbitrary<ExplainReading> = fc.record(
  {
    of: fc.constant('lobe-lift' as const),
    value: fc.oneof(ordinaryLift, lift),
    pass: fc.integer({ min: 1, max: 5 }),
    setUp: fc.constant(0),
    method: fc.constantFrom('lifter' as const, 'caliper' as const),
  },
  { requiredKeys: ['of', 'value', 'pass', 'setUp'] },
);

const anyInput: fc.Arbitrary<ExplainInput> = fc.record(
  {
    nominals: fc.uniqueArray(fc.double({ min: 0.5, max: 5, noNaN: true }), { minLength: 1, maxLength: 6 }),
    mark: fc.double({ min: 0.5, max: 5, noNaN: true }),
    cardLobeLift: lift,
    otherLobeLift: lift,
    lash: fc.constantFrom('zero' as const, 'set' as const),
    lashSetting: fc.double({ min: 0, max: 0.1, noNaN: true }),
    alignment: fc.constantFrom('parallel' as const, 'leaning' as const),
    readings: fc.array(fc.oneof(reading, lobeReading), { maxLength: 6 }),
    answers: fc.array(
      fc.record({ ask: fc.constantFrom('read-back' as const, 'zero-return' as const), found: fc.boolean() }),
      { maxLength: 3 },
    ),
  },
  { requiredKeys: ['nominals', 'readings'] },
);

/** Every number in a result, however deep. */
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (Array.isArray(value)) return value.flatMap(numbersIn);
  if (value !== null && typeof value === 'object') return Object.values(value).flatMap(numbersIn);
  return [];
}

function texts(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (Array.isArray(value)) return value.flatMap(texts);
  if (value !== null && typeof value === 'object') return Object.values(value).flatMap(texts);
  return [];
}

describe('whatever is entered', () => {
  it('every number is finite, every chance is one, and chances sum to 1', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const result = explainReadings(input);
        for (const number of numbersIn(result)) expect(Number.isFinite(number)).toBe(true);
        for (const text of texts(result)) expect(text).not.toMatch(/NaN|Infinity|undefined/);
        const listed = result.explanations.reduce((sum, one) => sum + one.probability, 0);
        expect(listed + result.rest).toBeCloseTo(1, 9);
        const names = result.nominals.reduce((sum, { probability }) => sum + probability, 0);
        expect(names + result.notListed).toBeCloseTo(1, 9);
        const [low, high] = result.ratio.interval95;
        expect(low).toBeLessThanOrEqual(result.ratio.median);
        expect(result.ratio.median).toBeLessThanOrEqual(high);
      }),
      { numRuns: 250, seed: 11 },
    );
  });
});

describe('the list of names', () => {
  it('may come in any order', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...WORKED_CASES.map((worked) => worked.input)),
        fc.shuffledSubarray([...LIST], { minLength: LIST.length }),
        (input, nominals) => {
          const straight = explainReadings(input);
          const shuffled = explainReadings({ ...input, nominals });
          for (const { ratio, probability } of straight.nominals) {
            const there = shuffled.nominals.find((one) => one.ratio === ratio);
            expect(there?.probability).toBeCloseTo(probability, 12);
          }
          expect(shuffled.nominals.map(({ ratio }) => ratio)).toEqual(nominals);
          expect(shuffled.ratio.median).toBeCloseTo(straight.ratio.median, 7);
          expect(shuffled.nextReading?.action).toBe(straight.nextReading?.action);
          expect(shuffled.nextReading?.bits ?? 0).toBeCloseTo(straight.nextReading?.bits ?? 0, 9);
        },
      ),
      { numRuns: 15, seed: 11 },
    );
  });

  it('changes nothing when a name far from every reading is added, but its share of the prior', () => {
    const input: ExplainInput = {
      nominals: [1.5, 1.6],
      cardLobeLift: 0.35,
      lash: 'zero',
      readings: [valve(0.561)],
    };
    const two = explainReadings(input);
    const three = explainReadings({ ...input, nominals: [1.5, 1.6, 4.5] });
    const share = (result: typeof two, name: number) =>
      result.nominals.find(({ ratio }) => ratio === name)?.probability ?? 0;
    expect(share(three, 4.5)).toBeLessThan(0.001);
    const odds = (result: typeof two) => share(result, 1.6) / share(result, 1.5);
    expect(odds(three) / odds(two)).toBeCloseTo(1, 6);
    expect(three.ratio.median).toBeCloseTo(two.ratio.median, 4);
  });

  it('takes in a mark that it lacks', () => {
    const result = explainReadings({
      nominals: [1.5, 1.7],
      mark: 1.6,
      cardLobeLift: 0.35,
      readings: [valve(0.56)],
    });
    expect(result.nominals.map(({ ratio }) => ratio)).toEqual([1.5, 1.7, 1.6]);
  });
});

describe('a reading that agrees', () => {
  it('narrows the interval when it is repeated', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.55, max: 0.565, noNaN: true }), (value) => {
        const base: ExplainInput = {
          nominals: LIST,
          mark: 1.6,
          cardLobeLift: 0.35,
          lash: 'zero',
          readings: [valve(value)],
        };
        const width = ({ ratio }: ReturnType<typeof explainReadings>) =>
          ratio.interval95[1] - ratio.interval95[0];
        const once = width(explainReadings(base));
        const again = valve(value, { pass: 2, lashSet: true, aligned: true, counted: true });
        expect(width(explainReadings({ ...base, readings: [valve(value), again] }))).toBeLessThan(once);
      }),
      { numRuns: 20, seed: 11 },
    );
  });
});
