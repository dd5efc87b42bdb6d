import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import table from '../../../seeds/question-tolerances.json' with { type: 'json' };
import { questionsFor } from '../../../server/mechanics/questions/questions.ts';
import { defaultTolerances, MINUTES } from '../../../server/mechanics/questions/tolerances.ts';
import type { QuestionInput } from '../../../server/mechanics/questions/types.ts';
import { InputFaults } from '../../../shared/problems/faults.ts';
import { fromCard, lobe, pass, plain, valve } from './plain.ts';

const lift = fc.oneof(
  fc.double({ min: 0.2, max: 0.9, noNaN: true }),
  fc.double({ min: 0.001, max: 40, noNaN: true }),
);
const readings = fc.array(
  fc.record(
    { lift, zeroReturn: fc.double({ min: -0.01, max: 0.01, noNaN: true }) },
    { requiredKeys: ['lift'] },
  ),
  { maxLength: 4 },
);
const named = (name: string) => readings.map((list) => list.map((each, i) => ({ ...each, id: name + i })));
const lash = fc.constantFrom('not-said' as const, 'zero' as const, 'set' as const);
const ratio = fc.double({ min: 1, max: 2.2, noNaN: true });

const anyInput: fc.Arbitrary<QuestionInput> = fc.record(
  {
    valvePasses: named('valve'),
    lobePasses: named('lobe'),
    statedValveLift: lift,
    statedLobeLift: lift,
    spring: fc.constantFrom('not-said' as const, 'light' as const, 'running' as const),
    lifter: fc.constantFrom('not-said' as const, 'solid' as const, 'locked' as const, 'hydraulic' as const),
    lash,
    lashSetting: fc.double({ min: 0, max: 0.05, noNaN: true }),
    restsOn: fc.constantFrom('not-said' as const, 'retainer-flat' as const, 'valve-tip' as const),
    alignment: fc.constantFrom('not-said' as const, 'parallel' as const, 'leaning' as const),
    perTurn: fc.constantFrom(0.05, 0.1, 0.2, 1 / 25.4),
    graduation: fc.constant(0.001),
    travel: fc.constantFrom(0.5, 1),
    pushedIn: fc.double({ min: 0, max: 1, noNaN: true }),
    lobeSource: fc.constantFrom('card' as const, 'indicator' as const, 'caliper' as const),
    cardLobeLift: lift,
    otherCardLobeLift: lift,
    cardValveLift: lift,
    cardLash: fc.double({ min: 0, max: 0.03, noNaN: true }),
    cardRatio: ratio,
    nominalRatio: ratio,
    lightRatio: ratio,
    runningRatio: ratio,
    lightLash: lash,
    runningLash: lash,
    otherPeaks: fc.array(lift, { maxLength: 6 }),
  },
  {
    requiredKeys: [
      'valvePasses',
      'lobePasses',
      'spring',
      'lifter',
      'lash',
      'restsOn',
      'alignment',
      'perTurn',
      'graduation',
      'lobeSource',
    ],
  },
);

describe('the questions of any readings', () => {
  it('come strong first, the soonest settled first, none twice, with their test and no verdict', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const before = structuredClone(input);
        const questions = questionsFor(input);
        expect(input).toEqual(before);
        const ids = [...input.valvePasses, ...input.lobePasses].map((each) => each.id);
        expect(new Set(questions.map((each) => each.code + each.ask)).size).toBe(questions.length);
        const places = questions.map(
          (each) => (each.weight === 'strong' ? 0 : 1000) + (MINUTES.get(each.code) ?? Number.NaN),
        );
        expect(places).toEqual([...places].sort((a, b) => a - b));
        for (const { ask, size, test, restsOn } of questions) {
          expect(ask).toMatch(/\?/);
          expect(ask.length).toBeLessThanOrEqual(110);
          expect(size).toMatch(/\.$/);
          expect(test).toMatch(/\.$/);
          expect(`${ask} ${size} ${test}`).not.toMatch(/!|safe|NaN|undefined|Infinity|\b0\.\d|wrong\.| {2}/i);
          expect(restsOn.every((id) => ids.includes(id))).toBe(true);
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('are none where nothing is wrong', () => {
    expect(questionsFor(plain)).toEqual([]);
    expect(questionsFor(fromCard)).toEqual([]);
  });

  it('ask for what was not said, after what the figures say', () => {
    const given: QuestionInput = {
      ...plain,
      spring: 'not-said',
      lifter: 'not-said',
      lash: 'not-said',
      valvePasses: valve(0.46),
    };
    expect(questionsFor(given).map((question) => question.code)).toEqual([
      'turn-miscounted',
      'spring-not-said',
      'lifter-not-said',
      'lash-not-said',
    ]);
  });

  it('ask nothing unsaid before a valve was read', () => {
    expect(questionsFor({ ...plain, valvePasses: [], spring: 'not-said', lash: 'not-said' })).toEqual([]);
  });

  it('put the quicker of two strong ones first', () => {
    const given: QuestionInput = { ...plain, valvePasses: [pass(0.46, 'a', 0.004)], statedValveLift: 0.56 };
    expect(questionsFor(given).map((question) => question.code)).toEqual([
      'stated-not-read',
      'zero-not-returned',
      'turn-miscounted',
    ]);
  });
});

describe('the tolerances', () => {
  it('are all in the table, with title and source', () => {
    const values = Object.entries(table.tolerances).map(([name, { value }]) => [name, value]);
    expect(Object.entries(defaultTolerances).sort()).toEqual(values.sort());
    for (const { title, source } of Object.values(table.tolerances)) {
      expect(title).not.toBe('');
      expect(source).toBe('common practice, no published source');
    }
  });

  it('may be changed', () => {
    const given = { ...plain, valvePasses: [pass(0.56, 'a', 0.004)] };
    expect(questionsFor(given)).toHaveLength(1);
    expect(
      questionsFor(given, { ...defaultTolerances, zeroReturn: 0.005, zeroReturnDoubtful: 0.005 }),
    ).toEqual([]);
  });
});

describe('numbers that cannot be asked about', () => {
  it.each([
    ['/valvePasses/0/lift', { ...plain, valvePasses: valve(Number.NaN) }, 'not-a-number'],
    ['/lobePasses/1/lift', { ...plain, lobePasses: lobe(0.35, 0) }, 'out-of-range'],
    [
      '/valvePasses/0/zeroReturn',
      { ...plain, valvePasses: [pass(0.5, 'a', Number.POSITIVE_INFINITY)] },
      'not-a-number',
    ],
    ['/perTurn', { ...plain, perTurn: 0 }, 'out-of-range'],
    ['/cardLash', { ...plain, cardLash: -0.01 }, 'out-of-range'],
    ['/otherPeaks/1', { ...plain, otherPeaks: [0.5, -1] }, 'out-of-range'],
  ])('are named: %s', (pointer, given, code) => {
    const faults = (() => {
      try {
        questionsFor(given);
      } catch (error) {
        if (error instanceof InputFaults) return error.faults;
      }
      return [];
    })();
    expect(faults).toMatchObject([{ pointer, code }]);
    expect(faults[0]?.detail).toMatch(/^must be a number (above 0|at least 0|finite), not /);
  });

  it('name a tolerance too', () => {
    expect(() => questionsFor(plain, { ...defaultTolerances, turnFits: -1 })).toThrow('/tolerances/turnFits');
  });
});
