import { describe, expect, test } from 'vitest';
import { computation } from '../../../server/mechanics/computations/explain-readings.ts';
import { explainReadings } from '../../../server/mechanics/explain-readings/explain.ts';
import { explainInput, toExplainInput } from '../../../server/mechanics/explain-readings/json-input.ts';
import type { ExplainInput } from '../../../server/mechanics/explain-readings/types.ts';
import { expectSame } from '../helpers/near.ts';
import { inches, mm } from '../helpers/quantities.ts';
import { partOf, runner } from '../helpers/runner.ts';
import { describeSaid } from '../helpers/said.ts';
import { LIST, valve } from './cases.ts';

const { run, number } = runner(computation);
const taken = (body: unknown): ExplainInput => toExplainInput(explainInput.parse(body));

describe('what is sent is what is weighed, in inches (25.4 mm by definition)', () => {
  test('everything that can be said of a reading', () => {
    const said = {
      spring: 'running',
      lifter: 'hydraulic',
      lashSet: true,
      aligned: false,
      counted: true,
      otherValve: false,
      method: 'caliper',
    };
    const body = {
      nominals: [1.5, 1.6],
      mark: 1.6,
      cardLobeLift: mm(8.89),
      otherLobeLift: inches(0.33),
      lash: 'set',
      lashSetting: mm(0.508),
      alignment: 'leaning',
      readings: [
        {
          of: 'lobe-lift',
          value: mm(8.636),
          pass: 3,
          setUp: 2,
          atLobeLift: mm(5.08),
          perTurn: mm(1),
          errorLimit: mm(0.0254),
          ...said,
        },
      ],
      answers: [{ ask: 'zero-return', found: true }],
      assumptions: { lobeMean: mm(7.62), readingSpread: mm(0.0254) },
    };
    expectSame(taken(body), {
      nominals: [1.5, 1.6],
      mark: 1.6,
      cardLobeLift: 0.35,
      otherLobeLift: 0.33,
      lash: 'set',
      lashSetting: 0.02,
      alignment: 'leaning',
      readings: [
        {
          of: 'lobe-lift',
          value: 0.34,
          pass: 3,
          setUp: 2,
          atLobeLift: 0.2,
          perTurn: 1 / 25.4,
          errorLimit: 0.001,
          ...said,
        },
      ],
      answers: [{ ask: 'zero-return', found: true }],
      assumptions: { lobeMean: 0.3, readingSpread: 0.001 },
    });
  });

  test('what was not sent is left out, and each kind of pass is counted by itself', () => {
    const of = (kind: string) => ({ of: kind, value: inches(0.5) });
    expect(
      taken({
        nominals: [1.6],
        readings: [
          of('valve-lift'),
          of('lobe-lift'),
          of('valve-lift'),
          { ...of('lobe-lift'), pass: 5, setUp: 1 },
        ],
      }),
    ).toEqual({
      nominals: [1.6],
      readings: [
        { of: 'valve-lift', value: 0.5, pass: 1, setUp: 0 },
        { of: 'lobe-lift', value: 0.5, pass: 1, setUp: 0 },
        { of: 'valve-lift', value: 0.5, pass: 2, setUp: 0 },
        { of: 'lobe-lift', value: 0.5, pass: 5, setUp: 1 },
      ],
    });
  });

  test('a chance that is changed is no length', () => {
    const changed = { nominals: [1.6], readings: [{ of: 'valve-lift', value: inches(0.5) }] };
    const assumptions = { markTrue: 0.5, ratioChangePerInch: 0.02 };
    expect(taken({ ...changed, assumptions }).assumptions).toEqual(assumptions);
    expect(explainInput.safeParse({ ...changed, assumptions: { noSuchThing: 1 } }).success).toBe(false);
  });
});

/** A worked case of the design note: .362 and .300 on the card, .480 at the valve. */
const reading = { of: 'valve-lift', value: inches(0.48), spring: 'light', lifter: 'solid' };
const body = {
  nominals: [...LIST],
  cardLobeLift: inches(0.362),
  otherLobeLift: inches(0.3),
  lash: 'zero',
  readings: [reading],
};

describe('the answer as JSON', () => {
  const inner = () =>
    explainReadings({
      nominals: LIST,
      cardLobeLift: 0.362,
      otherLobeLift: 0.3,
      lash: 'zero',
      readings: [valve(0.48)],
    });
  const list = (value: unknown): readonly unknown[] => {
    if (!Array.isArray(value)) throw new Error('no list');
    return value;
  };

  test('has what the inference found', () => {
    const { result } = run(body);
    const found = inner();
    expectSame(partOf(result, 'ratio'), {
      median: found.ratio.median,
      interval95: [...found.ratio.interval95],
    });
    expectSame(partOf(result, 'nominals'), [...found.nominals]);
    expectSame(partOf(result, 'remaining'), [...found.remaining]);
    expectSame(partOf(result, 'explanations'), [...found.explanations]);
    expect(found.explanations.some(({ causes }) => causes.length > 0)).toBe(true);
  });

  test('the next reading in the units asked for: the same length either way', () => {
    const outcomes = inner().nextReading?.outcomes ?? [];
    expect(outcomes.length).toBeGreaterThan(0);
    outcomes.forEach(({ expected = Number.NaN, plusMinus = Number.NaN }, at) => {
      const path = `nextReading.outcomes.${at}`;
      expect(number(body, `${path}.expected`)).toBeCloseTo(expected, 6);
      expect(number(body, `${path}.plusMinus`)).toBeCloseTo(plusMinus, 6);
      expect(number(body, `${path}.expected`, 'metric')).toBeCloseTo(25.4 * expected, 4);
    });
    expect(partOf(run(body).result, 'nextReading.action')).toBe(inner().nextReading?.action);
  });

  test('a question has its words and its chance, and no entry of the inference', () => {
    const asked = list(partOf(run(body).result, 'questions'));
    expect(asked).toHaveLength(inner().questions.length);
    expect(asked.length).toBeGreaterThan(0);
    for (const [at, { cause, text, test: settles, probability }] of inner().questions.entries()) {
      expectSame(asked[at], { cause, text, test: settles, probability });
    }
  });

  test('settled, there is no next reading', () => {
    const settled = {
      ...body,
      cardLobeLift: inches(0.348),
      readings: [{ ...reading, value: inches(0.557) }],
      mark: 1.6,
    };
    expect(partOf(run(settled).result, 'settled')).toBe(true);
    expect(run(settled).result).not.toHaveProperty('nextReading');
  });
});

const notSaid = (name: string) => ({ ...body, readings: [reading, { ...reading, [name]: undefined }] });
const { cardLobeLift: _, ...noCard } = body;
const JUDGED = 'judged defaults';
describeSaid(computation, {
  assumes: [
    ['all said', body, [JUDGED]],
    ['a spring not said', notSaid('spring'), [JUDGED, 'not said']],
    ['a lifter not said', notSaid('lifter'), [JUDGED, 'not said']],
    ['no card', noCard, [JUDGED, 'no card']],
  ],
  warns: [['always', body, ['not a verdict']]],
});
