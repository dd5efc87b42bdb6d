import { describe, expect, test } from 'vitest';
import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import { changePart } from '../../../../server/mechanics/assessment/change/change.ts';
import type { ValveRatio } from '../../../../server/mechanics/assessment/common/valve-ratio.ts';
import type { Evidence, GapName, SheetEvidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { withScans } from '../../../../server/mechanics/assessment/scans/as-gap.ts';
import { IN } from '../../../../server/mechanics/kit/si.ts';
import type { ValveName } from '../../../../shared/schemas/words.ts';
import { scanOf } from '../piston-scan.ts';
import { read } from '../plain-build.ts';
import { arm, CHANGE, gapOf, readOf } from './change-of-arms.ts';

/*
 * The pushrod's cup moves by pivot to tip × (1/r₁ − 1/r₂): 1.480 × (1/1.5 − 1/1.6) = .0617 in (derived; trade practice gives
 * .062). Piston to valve less the lobe's lift there × the change: .120 × .1 = .012 (common practice, no published source).
 */
const NEW_ON = { seats: [{ cylinder: 1, valve: 'intake', armId: 'new' }] } as const;

function told(evidence: Evidence, ratios: readonly ValveRatio[] = [], key = '1-intake') {
  const { detail, questions } = changePart(evidence, ratios);
  const here = detail.find((each) => each.key === key);
  const gap = (name: GapName) => here?.gaps.find((each) => each.name === name);
  return {
    before: here?.before?.value,
    inches: (name: GapName) => (gap(name)?.after?.value ?? Number.NaN) / IN,
    word: (name: GapName) => gap(name)?.word,
    lacks: (name: GapName) => gap(name)?.lacks.map(({ said }) => said),
    question: questions.find(({ code }) => code === 'gap-ratio-then'),
  };
}

describe('what a gap leaves with the new arm is worked out from the ratio of its own arm', () => {
  const gaps = (more: Partial<SheetEvidence>, valve: ValveName = 'intake') => [
    gapOf('pushrod', 'pushrod-to-head', 0.06, more, valve),
    gapOf('piston', 'piston-to-valve', 0.09, more, valve),
  ];
  const expectOfOldArm = ({ before, inches, word }: ReturnType<typeof told>) => {
    expect(inches('pushrod-to-head')).toBeCloseTo(-0.002, 3);
    expect(word('pushrod-to-head')).not.toBe('clear');
    expect(inches('piston-to-valve')).toBeCloseTo(0.078, 3);
    expect(before).toBe(1.5);
  };

  test('stamped 1.5, and the new one on and read: whatever the card assumes, in either order', () => {
    for (const assumedRatio of [1.6, 1.55, 1.5, undefined])
      for (const sheet of [gaps({ armId: 'old' }), gaps({ armId: 'old' }).reverse()]) {
        const { assumedRatio: _, ...card } = CHANGE.card;
        const evidence = {
          ...CHANGE,
          ...NEW_ON,
          sheet,
          card: assumedRatio === undefined ? card : { ...card, assumedRatio },
        };
        expectOfOldArm(told(evidence, [readOf('new', 1.6)]));
        expectOfOldArm(told(evidence));
      }
  });

  test('on an exhaust, and with another valve beside it whose old arm is still on', () => {
    const seats = [
      { cylinder: 1, valve: 'exhaust', armId: 'new' },
      { cylinder: 2, valve: 'intake', armId: 'still' },
    ] as const;
    const other = { ...read(2, 'intake', 'pushrod-to-head', 0.09, { armId: 'still' }), id: 'two' };
    const evidence = {
      ...CHANGE,
      seats,
      arms: [...CHANGE.arms, arm('still', '1.5')],
      sheet: [...gaps({ armId: 'old' }, 'exhaust'), other],
    };
    expectOfOldArm(told(evidence, [readOf('new', 1.6, 'exhaust')], '1-exhaust'));
    expect(told(evidence, [], '2-intake').inches('pushrod-to-head')).toBeCloseTo(0.028, 3);
  });

  test('of an arm that nobody named, sold as 1.5: the stamp of the one that came later says nothing of it', () => {
    const before = { ...CHANGE, ...NEW_ON, sheet: gaps({ arms: 'before' }) };
    expectOfOldArm(told(before, [readOf('new', 1.6)]));
    const comesOff = { ...CHANGE, ...NEW_ON, sheet: gaps({ comesOff: true }) };
    expectOfOldArm(told(comesOff, [readOf('new', 1.6)]));
  });

  test('measured, it goes by that: 1.480 × (1/1.52 − 1/1.6) = .049', () => {
    const evidence = { ...CHANGE, ...NEW_ON, sheet: gaps({ armId: 'old' }) };
    const { inches } = told(evidence, [readOf('old', 1.52), readOf('new', 1.6)]);
    expect(inches('pushrod-to-head')).toBeCloseTo(0.011, 3);
    expect(inches('piston-to-valve')).toBeCloseTo(0.09 - 0.12 * 0.08, 3);
  });

  test('a scan with it goes the same way', () => {
    const scans = [scanOf('scan', 0.1, { armId: 'old' })];
    const evidence = withScans({ ...CHANGE, ...NEW_ON, scans });
    expect(told(evidence, [readOf('new', 1.6)]).inches('piston-to-valve')).toBeCloseTo(0.088, 3);
  });

  test('with nothing planned any more, the arm that is on sold as 1.6', () => {
    const evidence = {
      ...CHANGE,
      ...NEW_ON,
      rockers: { soldAs: 1.6, pivotToTip: 1.48 * IN },
      sheet: gaps({ armId: 'old' }),
    };
    expectOfOldArm(told(evidence, [readOf('new', 1.6)]));
  });
});

describe('arms before of which nobody said the ratio', () => {
  // Sold as 1.6, the card assumes 1.6, nothing planned: that the old ones were 1.6 as well nobody said.
  const build = (answer?: string): Evidence => ({
    ...CHANGE,
    arms: [],
    rockers: { soldAs: 1.6, pivotToTip: 1.48 * IN },
    sheet: [gapOf('pushrod', 'pushrod-to-head', 0.04, { arms: 'before' })],
    answers:
      answer === undefined
        ? []
        : [
            {
              id: 'said',
              line: 90,
              questionId: 'question:gap-ratio-then:intake:gapratiothen',
              code: 'gap-ratio-then',
              question: 'gap-ratio-then',
              answer,
            },
          ],
  });

  test('it is asked, and until then nothing is cleared by the card', () => {
    const { question, word, lacks } = told(build());
    expect(question?.ask).toBe(
      'Which ratio had the arms that were on before, when the gap of 1 intake was read?',
    );
    expect(word('pushrod-to-head')).toBeUndefined();
    expect(lacks('pushrod-to-head')?.[0]).toMatch(/^which ratio the arms had/);
  });

  test('answered, it is worked out from that: .040 − .062 = −.022 of room', () => {
    const { inches, question, lacks } = told(build('1.5'));
    expect(inches('pushrod-to-head')).toBeCloseTo(-0.022, 3);
    expect(question?.answered?.answer).toBe('1.5');
    expect(lacks('pushrod-to-head')?.join()).not.toMatch(/which ratio/);
    expect(told(build('1.6')).inches('pushrod-to-head')).toBeCloseTo(0.04, 3);
  });

  test('spoken in millimetres it is the same question, answered by the same answer', () => {
    const asked = (units: 'inch' | 'metric', answer?: string) => {
      const one = build(answer);
      const { questions, details } = assess({ ...one, call: { ...one.call, units } });
      const gap = details.change.flatMap(({ gaps }) => gaps).find(({ name }) => name === 'pushrod-to-head');
      // Each in figures of its own unit: thousandths of an inch, hundredths of a millimetre.
      return {
        id: questions.find(({ code }) => code === 'gap-ratio-then')?.id,
        gap: gap?.after?.value ?? Number.NaN,
      };
    };
    for (const answer of [undefined, '1.5']) {
      const [metric, inch] = [asked('metric', answer), asked('inch', answer)];
      expect(metric.id).toBe(inch.id);
      expect(Math.abs(metric.gap - inch.gap)).toBeLessThan(2e-5);
    }
    expect(asked('metric', '1.5').gap).not.toBeCloseTo(asked('metric').gap, 4);
  });

  test('the answer stays, whatever the card says later, and may be no name of the trade', () => {
    const carded = (assumedRatio: number): Evidence => ({
      ...build('1.43'),
      card: { ...CHANGE.card, assumedRatio },
    });
    // 1.480 × (1/1.43 − 1/1.6) = .110.
    for (const card of [1.43, 1.5]) {
      const { inches, question } = told(carded(card));
      expect(inches('pushrod-to-head')).toBeCloseTo(0.04 - 0.11, 3);
      expect(question?.answered?.answer).toBe('1.43');
    }
    for (const words of ['another: 1.43', 'another: one point four three'])
      expect(told(build(words)).inches('pushrod-to-head')).toBeCloseTo(0.04 - 0.11, 3);
  });

  test('the arms of either side were a set of their own', () => {
    const both = (answers: Evidence['answers']): Evidence => ({
      ...build(),
      sheet: [
        gapOf('pushrod', 'pushrod-to-head', 0.04, { arms: 'before' }),
        gapOf('other', 'pushrod-to-head', 0.04, { arms: 'before' }, 'exhaust'),
      ],
      answers,
    });
    const asked = changePart(both([]), []).questions.filter(({ code }) => code === 'gap-ratio-then');
    expect(asked.map(({ about, restsOn }) => [about, restsOn])).toEqual([
      [{ of: 'side', valve: 'intake' }, ['pushrod']],
      [{ of: 'side', valve: 'exhaust' }, ['other']],
    ]);
    const answers = asked.map(({ id, code, ask }, at) => ({
      ...{ id: `a${at}`, line: 90 + at, questionId: id, code, question: ask },
      answer: ['1.6', '1.5'][at] ?? '',
    }));
    expect(told(both(answers)).inches('pushrod-to-head')).toBeCloseTo(0.04, 3);
    expect(told(both(answers), [], '1-exhaust').inches('pushrod-to-head')).toBeCloseTo(-0.022, 3);
  });

  test('where nobody knows, the gap is measured', () => {
    const { word, lacks } = told(build('not-known'));
    expect([word('pushrod-to-head'), lacks('pushrod-to-head')?.[0]]).toEqual([
      undefined,
      'the gap measured on the engine',
    ]);
  });

  test('not asked of a gap that no ratio moves, nor where they are sold as another than is planned', () => {
    const cover = { ...build(), sheet: [{ ...read(1, 'intake', 'cover', 0.08, { arms: 'before' }) }] };
    expect(told(cover).question).toBeUndefined();
    const planned = { ...build(), rockers: { soldAs: 1.5, planned: 1.6, pivotToTip: 1.48 * IN } };
    expect(told(planned).question).toBeUndefined();
    expect(told(planned).inches('pushrod-to-head')).toBeCloseTo(-0.022, 3);
    // While a ratio is only being chosen, the arms before are those that are on.
    const chosen = { ...build(), call: { ...build().call, goal: 'choose-ratio' } } as const;
    expect(told(chosen).question).toBeUndefined();
  });
});
