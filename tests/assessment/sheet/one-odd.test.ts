import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { read } from '../../mechanics/assessment/plain-build.ts';
import { armed, on, SIDES } from './eight.ts';

/*
 * One valve of sixteen. Odd beyond .008 of the siblings, repeats within .002, a lobe worn from .010 on: common practice,
 * no published source. Lash left in: the lift is short by the lash within .003, trade practice, row 10.
 */

const FIVE = on((cylinder, side) => (cylinder === 5 && side === 'exhaust' ? -0.03 : 0));
const LASHED = on((cylinder, side) => (cylinder === 5 && side === 'exhaust' ? -0.016 : 0));

const said = (evidence: Evidence): string =>
  assess(evidence)
    .headlines.filter(({ step }) => step === 'sheet')
    .map(({ sentence }) => sentence)
    .join('\n');
/** What the figures raise: how the lash was is asked of every sheet that does not say it. */
const codesOf = ({ questions }: ReturnType<typeof assess>): string[] =>
  questions.map(({ code }) => code).filter((code) => code !== 'lash-not-said');
const codes = (evidence: Evidence): string[] => codesOf(assess(evidence));

describe('low by just the card’s lash', () => {
  test('the lash of that valve is asked before its rocker, and no swap is advised', () => {
    expect(codes(LASHED)).toEqual(['lash-left-in']);
    expect(said(LASHED)).toMatch(/5 exhaust is the odd one.*as much as its lash, if that was left in/);
    expect(assess(LASHED).next).toMatchObject({ action: 'lash-left-in' });
    expect(assess(LASHED).details.sheet.sides.flatMap(({ odd }) => odd.map(({ swap }) => swap))).toEqual([
      undefined,
    ]);
  });

  test('answered that it was out, it is the rocker or its position; left in, the reading is taken again', () => {
    const [question] = assess(LASHED).questions;
    const answer = (found: boolean): Evidence => ({
      ...LASHED,
      answers: [
        { id: 'a', line: 900, questionId: question?.id ?? '', code: '', question: '', answer: '', found },
      ],
    });
    expect(said(answer(false))).toMatch(/the rocker or its position/);
    expect(said(answer(true))).toMatch(/5 exhaust is not set against the others yet.*enter it again/);
  });

  test('not by another figure than the lash, nor where its own lobe makes it', () => {
    expect(codes(FIVE)).not.toContain('lash-left-in');
    const worn = {
      ...LASHED,
      sheet: LASHED.sheet.map((each) =>
        each.cylinder === 5 && each.valve === 'exhaust' && each.kind === 'lobe-lift'
          ? { ...each, reading: { value: (SIDES.exhaust - 0.009) * IN } }
          : each,
      ),
    };
    expect(codes(worn)).not.toContain('lash-left-in');
  });
});

describe('a lobe of the sheet well under its card', () => {
  // .361 − .012 = .349; 1.6 × .012 = .019 at the valve.
  const low = on((cylinder, side) => (cylinder === 6 && side === 'intake' ? -0.019 : 0));
  const withLobes = (...lobes: readonly (readonly [number, number])[]): Evidence => ({
    ...low,
    sheet: [
      ...low.sheet.filter(({ kind }) => kind === 'valve-lift'),
      ...lobes.map(([cylinder, lobe]) => read(cylinder, 'intake', 'lobe-lift', lobe)),
    ],
  });

  test('its siblings’ lobes not read: it is said, it is not run, and the lobes beside it are next', () => {
    const assessed = assess(withLobes([6, 0.349]));
    expect(assessed.headlines[0]?.sentence).toMatch(
      /^6 intake: the lobe reads \.349 in, \.012 in under the \.361 in on the card: which lobe, which card, or wear\?/,
    );
    expect(assessed.notToRun.map(({ sentence }) => sentence)).toEqual([
      'Do not run it: the lobe of 6 intake reads .349 in, .012 in under the card.',
    ]);
    expect(assessed.next).toMatchObject({ action: 'lobe-siblings', step: 'sheet' });
    expect(said(withLobes([6, 0.349]))).toMatch(/the lobe \.012 in low accounts for it/);
  });

  test('one sibling read as the card has it: worn, or read short', () => {
    expect(said(withLobes([6, 0.349], [5, 0.361]))).toMatch(/worn, or read short/);
    expect(assess(withLobes([6, 0.349], [5, 0.361])).notToRun).toHaveLength(1);
  });

  test('two siblings read: the stop says it, and it is not said twice', () => {
    const assessed = assess(withLobes([6, 0.349], [5, 0.361], [7, 0.3605]));
    expect(assessed.stop.map(({ code }) => code)).toEqual(['lobe-worn']);
    expect(assessed.notToRun).toEqual([]);
    expect(codesOf(assessed)).toEqual(['lobe-worn']);
  });

  test('the card is another cam’s, as was answered: no lobe is held against it', () => {
    const evidence = withLobes([6, 0.349]);
    const question = assess(evidence).questions.find(({ code }) => code === 'lobe-under-card');
    const answers = [
      { id: 'a', line: 900, questionId: question?.id ?? '', code: '', question: '', answer: 'other-card' },
    ];
    expect(assess({ ...evidence, answers }).notToRun).toEqual([]);
  });

  test('a caliper on a loose cam reads low: not set against the card', () => {
    const evidence = withLobes([6, 0.349]);
    const sheet = evidence.sheet.map((each) =>
      each.kind === 'lobe-lift' ? { ...each, tool: 'caliper' as const } : each,
    );
    expect(assess({ ...evidence, sheet }).notToRun).toEqual([]);
  });
});

describe('arms that were moved and not read yet', () => {
  test('what was odd stays told with what is read next', () => {
    const moved = armed(FIVE, { '5e': '3e', '3e': '5e' });
    expect(said(moved)).toMatch(/5 exhaust read \.030 in low with 5e\. Still to be read/);
    expect(said(moved)).not.toMatch(/No valve stands out|No exhaust stands out/);
    expect(assess(moved).next?.sentence).toMatch(/^Read 3 exhaust with 5e and 5 exhaust with 3e/);
  });

  test('two banks changed over: the odd one’s places first, and ordinary arms tell nothing', () => {
    const over = Object.fromEntries(
      [1, 3, 5, 7].flatMap((one) => [
        [`${one}e`, `${one + 1}e`],
        [`${one + 1}e`, `${one}e`],
      ]),
    );
    const moved = armed(FIVE, over);
    expect(assess(moved).next?.sentence).toMatch(/^Read 5 exhaust with 6e and 6 exhaust with 5e/);
    expect(said(moved).match(/^Swap of/gm)).toHaveLength(1);
    const ordinary = assess(moved).judgements.filter(({ sentence }) => /nothing to tell/.test(sentence));
    expect(ordinary.map(({ lacks }) => lacks)).toEqual([[], [], []]);
  });

  test('another arm was put on: what it read before stays told till it is read again', () => {
    const armedFive = armed(FIVE);
    const replaced: Evidence = {
      ...armedFive,
      arms: [
        ...armedFive.arms,
        ...armedFive.arms.slice(0, 1).map((arm) => ({ ...arm, id: 'new', name: 'new' })),
      ],
      seats: armedFive.seats.map((seat) => (seat.armId === '5e' ? { ...seat, armId: 'new' } : seat)),
    };
    expect(said(replaced)).toMatch(/5 exhaust read \.030 in low with 5e, which is not on it now/);
    expect(said(replaced)).not.toMatch(/No valve stands out|No exhaust stands out/);
    expect(assess(replaced).next?.sentence).toMatch(/^Read 5 exhaust as it sits now/);
  });
});

describe('two readings of two valves, each like the other', () => {
  test('misread, or were their arms changed over?', () => {
    const low = SIDES.exhaust * 1.6 - 0.03;
    const twice = {
      ...FIVE,
      sheet: [
        ...FIVE.sheet,
        read(5, 'exhaust', 'valve-lift', SIDES.exhaust * 1.6),
        read(7, 'exhaust', 'valve-lift', low),
      ],
    };
    const asked = assess(twice).questions.filter(({ code }) => code === 'read-otherwise');
    expect(asked.map(({ ask }) => /did its arm and that of (.*) change places/.exec(ask)?.[1])).toEqual([
      '7 exhaust',
      '5 exhaust',
    ]);
    expect(asked[0]?.answers.map(({ code }) => code)).toEqual(['found', 'not-found', 'changed-over']);
  });

  test('one valve alone was misread', () => {
    const once = { ...FIVE, sheet: [...FIVE.sheet, read(5, 'exhaust', 'valve-lift', SIDES.exhaust * 1.6)] };
    expect(assess(once).questions[0]?.ask).toMatch(/Which of them was misread\?$/);
  });
});
