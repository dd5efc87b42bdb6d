import { describe, expect, test } from 'vitest';
import { changePart } from '../../../../server/mechanics/assessment/change/change.ts';
import type { ValveRatio } from '../../../../server/mechanics/assessment/change/input.ts';
import type { AnswerEvidence, Evidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { IN, LBF, LBF_PER_IN } from '../../../../server/mechanics/kit/si.ts';
import { assessAsTold } from '../../../tools/told/assess-as-told.ts';
import { PLAIN } from '../plain-build.ts';

const assess = assessAsTold('change-studs-and-plans');

const planned = (rockers: Evidence['rockers'], more: Partial<Evidence> = {}): Evidence => ({
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'choose-ratio' },
  rockers,
  ...more,
});

/** 3/8 studs are commonly kept below 300 to 350 lb open: common practice, no published source. */
describe('studs', () => {
  const spring = (seat: number, rate: number, answers: readonly AnswerEvidence[] = []): Evidence =>
    planned(
      { soldAs: 1.5, planned: 1.6 },
      {
        engine: { ...PLAIN.engine, studSize: '3/8' },
        springs: { ...PLAIN.springs, seatLoad: seat * LBF, rate: rate * LBF_PER_IN },
        answers,
      },
    );
  /** The question as it is put, answered: under its id, which says of what load it is. */
  const answeredOf = (evidence: Evidence, found: boolean, line = 9): AnswerEvidence => {
    const open = assess(evidence).questions.filter(({ code, answered }) => code === 'stud-load' && !answered);
    const [question] = open;
    if (question === undefined || open.length > 1)
      throw new Error(`${open.length} questions about the studs`);
    return {
      id: `said-${line}`,
      line,
      questionId: question.id,
      code: 'stud-load',
      question: 'stud-load',
      answer: found ? 'found' : 'not-found',
      found,
    };
  };
  const answered = (evidence: Evidence, found: boolean, line = 9): Evidence => ({
    ...evidence,
    answers: [...evidence.answers, answeredOf(evidence, found, line)],
  });

  test('170 + 480 × .579 = 448 lb: in the answer, and what their maker allows comes first', () => {
    const { headlines, next, details } = assess(spring(170, 480));
    expect(headlines.find(({ id }) => id === 'headline:change:studs')?.sentence).toMatch(
      /^With the planned 1\.6 the spring may open at up to \d+ lb: 3\/8 studs are commonly kept below about 300 to 350 lb open/,
    );
    expect(next?.action).toBe('stud-load');
    // Told once.
    expect(details.change.flatMap(({ cautions }) => cautions).filter((each) => /3\/8/.test(each))).toEqual(
      [],
    );
  });

  test('their maker allows it: a caution; allows less: the planned arms are not fitted', () => {
    const allowed = assess(answered(spring(170, 480), false));
    expect(allowed.headlines.map(({ id }) => id)).not.toContain('headline:change:studs');
    expect(allowed.details.change[0]?.cautions.join(' ')).toMatch(/3\/8 studs/);
    const less = assess(answered(spring(170, 480), true));
    expect(less.notToRun.map(({ sentence }) => sentence)).toContain(
      'Don’t fit the planned 1.6: the studs’ maker allows less than the springs open at.',
    );
    expect(less.next?.action).toBe('do-not-fit');
  });

  test('100 + 300 × .579 = 274 lb and up to 300 by the spring’s tolerance: a caution alone', () => {
    const { headlines, details } = assess(spring(100, 300));
    expect(headlines.map(({ id }) => id)).not.toContain('headline:change:studs');
    expect(details.change[0]?.cautions.join(' ')).toMatch(/3\/8 studs/);
  });

  const openOf = (evidence: Evidence) =>
    assess(evidence).questions.filter(
      ({ code, answered: given }) => code === 'stud-load' && given === undefined,
    );
  const barredBy = (evidence: Evidence) => assess(evidence).notToRun.map(({ sentence }) => sentence);

  test('what is allowed holds for softer springs, and for stiffer ones it is asked again', () => {
    const { answers } = answered(spring(170, 480), false);
    expect(openOf(spring(170, 480, answers))).toEqual([]);
    expect(openOf(spring(150, 480, answers))).toEqual([]);
    expect(openOf(spring(250, 480, answers)).map(({ size }) => size)).toEqual([
      expect.stringMatching(/ Of 450 lb it was answered: the studs’ maker allows that load\.$/),
    ]);
    expect(assess(spring(250, 480, answers)).next?.action).toBe('stud-load');
  });

  test('what is not allowed holds for stiffer springs, and for softer ones it is asked again', () => {
    const { answers } = answered(spring(170, 480), true);
    expect(barredBy(spring(250, 480, answers))).toContain(
      'Don’t fit the planned 1.6: the studs’ maker allows less than the springs open at.',
    );
    expect(openOf(spring(150, 480, answers))).toHaveLength(1);
    expect(barredBy(spring(150, 480, answers))).not.toContain(
      'Don’t fit the planned 1.6: the studs’ maker allows less than the springs open at.',
    );
  });

  test('of two plans the lesser is asked for by itself once the greater is too much, and barred by its own answer', () => {
    const evidence = spring(170, 480);
    const two = { ...evidence, rockers: { ...evidence.rockers, alsoPlanned: [1.7] } };
    const once = answered(two, true);
    const overFor = (ratio: string) =>
      `Don’t fit the planned ${ratio}: the studs’ maker allows less than the springs open at.`;
    expect(barredBy(once)).toContain(overFor('1.7'));
    expect(barredBy(once)).not.toContain(overFor('1.6'));
    expect(openOf(once)).toHaveLength(1);
    const twice = answered(once, true, 10);
    expect(barredBy(twice)).toEqual(expect.arrayContaining([overFor('1.7'), overFor('1.6')]));
    // Both stay with their answers, and what is on now is asked by itself.
    expect(openOf(twice)).toHaveLength(1);
    expect(assess(twice).questions.filter(({ code }) => code === 'stud-load')).toHaveLength(3);
    expect(barredBy(answered(once, false, 10))).not.toContain(overFor('1.6'));
    // Whichever of the two was entered first.
    const turned = { ...twice, answers: [...twice.answers].reverse() };
    expect(assess(turned)).toEqual(assess(twice));
    expect(new Set(assess(twice).notToRun.map(({ id }) => id)).size).toBe(assess(twice).notToRun.length);
  });

  test('with several plans the one that loads them most is named', () => {
    const evidence = spring(170, 480);
    const two = { ...evidence, rockers: { ...evidence.rockers, alsoPlanned: [1.7] } };
    expect(
      assess(two)
        .headlines.map(({ sentence }) => sentence)
        .join('\n'),
    ).toMatch(
      /With the planned 1\.7 the spring may open.* With the planned 1\.6 at up to \d+ lb and with what is on now/,
    );
  });
});

describe('plans', () => {
  test('one that is what is there already changes nothing, and is said to', () => {
    const { headlines } = changePart(planned({ soldAs: 1.5, planned: 1.5 }), []);
    expect(headlines.map(({ sentence }) => sentence)).toContain(
      'With the planned 1.5 nothing changes: it is the 1.5 the card assumes. If another ratio is meant, or other arms are on, say which.',
    );
    const other = changePart(planned({ soldAs: 1.5, planned: 1.6 }), []);
    expect(other.headlines.filter(({ sentence }) => /nothing changes/.test(sentence))).toEqual([]);
  });

  test('nobody said what is on: the card’s ratio is held no finer than arms of it come out, −2 to +4.5 %', () => {
    const [detail] = changePart(planned({ planned: 1.6 }), []).detail;
    expect(detail?.before?.from).toBe('card');
    expect(detail?.before?.low).toBeCloseTo(1.47, 12);
    expect(detail?.before?.high).toBeCloseTo(1.5675, 12);
    expect(assess(planned({ planned: 1.6 })).missing.map(({ sentence }) => sentence)).toContain(
      'The ratio the rockers that are on now are sold as.',
    );
  });

  test('after the new arms went on nobody is asked which are to be fitted', () => {
    const haveWith = (rockers: Evidence['rockers']) =>
      assess({ ...planned(rockers), call: { ...PLAIN.call, goal: 'clearances-after-a-change' } }).needs.find(
        ({ id }) => id.endsWith('planned'),
      )?.have;
    expect(haveWith({ soldAs: 1.6 })).toBe(true);
    expect(haveWith({ soldAs: 1.5 })).toBe(false);
    expect(haveWith({ soldAs: 1.5, plannedExhaust: 1.6 })).toBe(true);
  });

  test('once an arm of the plan was read the others are not asked for the first one', () => {
    const read: ValveRatio = {
      cylinder: 1,
      valve: 'intake',
      setUpId: 's1',
      armId: 'new',
      value: 1.6,
      low: 1.589,
      high: 1.611,
      spring: 'light',
      basis: 'measured',
      lashIn: 'none',
      lobeLift: 0.35 * IN,
      lacks: [],
      restsOn: ['p1'],
    };
    const limits = { 'coil-bind': { value: 0.19 * IN, source: 'the part maker' } };
    const arms = [{ id: 'new', name: 'new', ratioStamp: '1.6', otherNumber: '', boxLabel: '' }];
    const evidence = planned({ soldAs: 1.5, planned: 1.6 }, { limits, arms });
    const lacksOf = (ratios: readonly ValveRatio[]) =>
      changePart(evidence, ratios).detail.flatMap(({ about, gaps }) =>
        about.of === 'side' && about.valve === 'intake'
          ? gaps
              .filter(({ name }) => name === 'coil-bind')
              .flatMap(({ lacks }) => lacks.map(({ said }) => said))
          : [],
      );
    expect(lacksOf([])).toEqual(['the first arm read on a light spring, or the gap measured on the engine']);
    expect(lacksOf([read])).toEqual([
      'the arms of these valves read on a light spring too, or the gap measured on the engine',
    ]);
  });
});

test('a gap of the same name on other valves is named with its place, not a second time alone', () => {
  // Intakes .540 and exhausts .501 of lift by 1.5: bind at 1.650 − 1.120 = .530 touches on one side and is short on the other.
  const evidence = planned(
    { soldAs: 1.5, planned: 1.6 },
    {
      card: {
        ...PLAIN.card,
        intake: { lobeLift: 0.361 * IN, lash: 0.016 * IN },
        exhaust: { lobeLift: 0.334 * IN, lash: 0.018 * IN },
      },
      springs: { installedHeight: 1.65 * IN, solidHeight: 1.12 * IN, retainerToSeal: 0.5 * IN },
    },
  );
  const [worst] = changePart(evidence, []).headlines;
  expect(worst?.sentence).toMatch(/Also short: room to coil bind on the exhaust valves\./);
});
