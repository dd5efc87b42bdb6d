import { describe, expect, test } from 'vitest';
import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import type { Evidence, SheetEvidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../../server/mechanics/kit/si.ts';
import { CHANGE, gapOf, lashAnswered } from './change-of-arms.ts';

/*
 * A gap that was read with its lash in is less by that lash once it is taken up (common practice, no published source). .110
 * − .120 × .1 = .098 with the planned 1.6; its lash .016, piston to valve of an exhaust .100 (common practice).
 */
const build = (sheet: readonly SheetEvidence[], answers: Evidence['answers'] = []): Evidence => ({
  ...CHANGE,
  arms: [],
  sheet,
  answers,
});

function gapsOf(evidence: Evidence, valve = 'exhaust') {
  const { details, questions, judgements } = assess(evidence);
  const here = details.change.find(({ key }) => key === `1-${valve}`);
  const gap = here?.gaps.find(({ name }) => name === 'piston-to-valve');
  return {
    low: (gap?.after?.low ?? Number.NaN) / IN,
    lacks: gap?.lacks.map(({ said }) => said),
    word: gap?.word,
    asked: questions.filter(({ code }) => code === 'gap-lash-not-said').length,
    now: judgements.find(({ id }) => id === `gap:piston-to-valve:1-${valve}`)?.sentence,
  };
}

describe('the lash of a reading goes with it into what is planned', () => {
  const piston = (more: Partial<SheetEvidence> = {}, inches = 0.11) => [
    gapOf('piston', 'piston-to-valve', inches, more, 'exhaust'),
  ];

  test('not said: its whole size is off the low end, close as it is without it, and it is asked', () => {
    for (const arms of ['these', 'before'] as const) {
      const { low, lacks, word, asked } = gapsOf(build(piston({ arms })));
      const zero = gapsOf(build(piston({ arms }), [lashAnswered('piston', 'exhaust', 'zero')]));
      expect([word, zero.word]).toEqual(['close', 'close']);
      expect(zero.low - low).toBeCloseTo(0.016, 4);
      expect(lacks?.[0]).toMatch(/^whether the lash was in it/);
      expect(asked).toBe(1);
      expect(zero.lacks?.join()).not.toMatch(/lash/);
    }
  });

  test('answered that it was in it: a reading at zero lash tells it, here and with what is on', () => {
    const set = gapsOf(build(piston(), [lashAnswered('piston', 'exhaust', 'set')]));
    expect(set.low).toBeCloseTo(gapsOf(build(piston())).low, 6);
    expect(set.lacks).toEqual(['a reading at zero lash: with lash in it reads that much larger']);
    expect(set.now).toMatch(/It needs a reading at zero lash/);
    expect(set.now).not.toMatch(/closer reading/);
  });

  test('between two gauges of clay as in one figure', () => {
    const clay = { reading: { low: 0.1 * IN, high: 0.13 * IN }, tool: 'clay', arms: 'before' } as const;
    const [said, zero] = [[], [lashAnswered('piston', 'exhaust', 'zero')]].map((answers) =>
      gapsOf(build(piston(clay), answers)),
    );
    expect((zero?.low ?? 0) - (said?.low ?? 0)).toBeCloseTo(0.016, 4);
    expect(said?.asked).toBe(1);
  });

  test('clear all the same, or short without it, nothing is asked', () => {
    expect(gapsOf(build(piston({ arms: 'before' }, 0.3))).asked).toBe(0);
    expect(gapsOf(build(piston({ arms: 'before' }, 0.05))).asked).toBe(0);
  });

  test('an intake by the same rule', () => {
    const intake = [gapOf('piston', 'piston-to-valve', 0.11, {}, 'intake')];
    const zero = build(intake, [lashAnswered('piston', 'intake', 'zero')]);
    expect(gapsOf(zero, 'intake').low - gapsOf(build(intake), 'intake').low).toBeCloseTo(0.016, 4);
  });

  test('of two readings that may be one gap what is worked out is of the one that was read at zero lash', () => {
    const first = gapOf('first', 'piston-to-valve', 0.085, {}, 'intake');
    const two = [first, gapOf('second', 'piston-to-valve', 0.086, {}, 'intake')];
    const zero = [lashAnswered('first', 'intake', 'zero')];
    const alone = gapsOf(build([first], zero), 'intake');
    for (const sheet of [two, two.toReversed()])
      expect(gapsOf(build(sheet, zero), 'intake')).toMatchObject({ low: alone.low, word: alone.word });
    expect(alone.low).toBeGreaterThan(gapsOf(build(two), 'intake').low);
  });
});

describe('readings that were entered together', () => {
  const entered = (cylinder: number, line = 7): SheetEvidence => ({
    ...gapOf(`gap-${cylinder}-${line}`, 'piston-to-valve', 0.09, { line }),
    cylinder,
  });
  const asked = (evidence: Evidence) =>
    assess(evidence).questions.filter(({ code }) => code === 'gap-lash-not-said');
  const answeredAll = (answer: string): Evidence => {
    const evidence = build([entered(1), entered(2), entered(3)]);
    const [question] = asked(evidence);
    if (question === undefined) throw new Error('the lash is not asked');
    const answers = [
      {
        id: 'all',
        line: 90,
        questionId: question.id,
        code: question.code,
        question: question.ask,
        answer,
      },
    ];
    return { ...evidence, answers };
  };

  test('are asked about once, and one that was entered later by itself', () => {
    expect(asked(build([entered(1), entered(2), entered(3)])).map(({ ask }) => ask)).toEqual([
      'Was the lash taken up when piston to valve of 1, 2 and 3 intake was read?',
    ]);
    expect(asked(build([entered(1), entered(2), entered(3, 8)]))).toHaveLength(2);
  });

  test('one answer is of all of them, unless they were not alike', () => {
    expect(asked(answeredAll('zero')).every(({ answered }) => answered !== undefined)).toBe(true);
    expect(asked(answeredAll('not-alike'))).toHaveLength(3);
  });

  test('of two readings of one valve the question says which it is of', () => {
    const asks = asked(
      build([entered(1), { ...entered(1, 8), reading: { value: 0.092 * IN }, readAs: '.092 in' }]),
    );
    expect(new Set(asks.map(({ ask }) => ask)).size).toBe(2);
  });
});
