import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { SetEvidence } from '../../../server/mechanics/assessment/evidence/kept-sums.ts';
import type {
  AnswerEvidence,
  Evidence,
  TipMarkEvidence,
} from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from './plain-build.ts';
import { tipMark } from './tip-mark.ts';

/* 1.6 in of arm and .600 in of lift: .0284 at the least, ordinary to .0484 (check values 8). Engines are invented. */
const BUILD: Evidence = {
  ...PLAIN,
  rockers: { soldAs: 1.6, pivotToTip: 1.6 * IN },
  card: {
    ...PLAIN.card,
    intake: { lobeLift: 0.375 * IN },
    exhaust: { lobeLift: 0.375 * IN },
  },
  call: { ...PLAIN.call, goal: 'geometry' },
};
const on = (tipMarks: readonly TipMarkEvidence[], more: Partial<Evidence> = {}) =>
  assess({ ...BUILD, ...more, tipMarks });
const answerTo = ({ questions }: ReturnType<typeof on>, code: string, answer: string): AnswerEvidence[] => {
  const question = questions.find((each) => each.code === code);
  return [{ id: 'a', line: 50, code, questionId: question?.id ?? '', question: question?.ask ?? '', answer }];
};
const headlines = (said: ReturnType<typeof on>) => said.headlines.map(({ sentence }) => sentence).join('\n');

describe('the height of a stand by its measures, and by its marks', () => {
  const stand = (shim: number): Evidence['workings'] => [
    {
      id: 'w',
      computation: 'stand-height',
      line: 9,
      set: { of: 'stand', netLift: 0.6 * IN, pivotToTip: 1.6 * IN, shim: shim * IN } satisfies SetEvidence,
    },
  ];
  const engine = { ...PLAIN.engine, mounting: 'shaft' as const };
  // Narrower with shims: the marks ask for more of them.
  const raising = [
    tipMark('a', 0.08, { shims: 0, line: 1 }),
    tipMark('b', 0.06, { shims: 0.03 * IN, line: 2 }),
  ];
  const lowering = [
    tipMark('a', 0.06, { shims: 0, line: 1 }),
    tipMark('b', 0.08, { shims: 0.03 * IN, line: 2 }),
  ];

  test.each([
    ['too high, and the marks ask to raise it', raising, -0.07, 'raised'],
    ['too low, and the marks ask to lower it', lowering, 0.07, 'lowered'],
  ] as const)('%s: asked first, and neither is told', (_what, marks, shim, way) => {
    const said = on(marks, { engine, workings: stand(shim) });
    expect(said.questions[0]).toMatchObject({ code: 'stand-against-marks', weight: 'strong' });
    expect(said.questions[0]?.ask).toContain(`ask for it to be ${way}`);
    expect(said.next?.action).toBe('stand-against-marks');
    expect(headlines(said)).not.toMatch(/Next (?:raise|lower)|too (?:high|low) for the least sweep/);
  });

  test('each answer leads on by what is left', () => {
    const open = on(raising, { engine, workings: stand(-0.07) });
    const answered = (answer: string) =>
      on(raising, { engine, workings: stand(-0.07), answers: answerTo(open, 'stand-against-marks', answer) });
    expect(headlines(answered('height'))).toMatch(/Next raise the stands/);
    expect(headlines(answered('height'))).not.toMatch(/too high for the least sweep/);
    expect(headlines(answered('mark'))).toMatch(/too high for the least sweep/);
    expect(headlines(answered('mark'))).not.toMatch(/Next raise/);
    expect(headlines(answered('neither'))).not.toMatch(/Next raise|too high for the least sweep/);
  });

  test('that agree, or differ by less than anybody shims, are not asked', () => {
    for (const shim of [0.03, -0.004, 0])
      expect(on(raising, { engine, workings: stand(shim) }).questions.map(({ code }) => code)).not.toContain(
        'stand-against-marks',
      );
  });
});

describe('lengths that marks of like valves let stay', () => {
  const at = (cylinder: number, pushrod: number, more: Partial<TipMarkEvidence> = {}) =>
    tipMark(`m${cylinder}`, 0.035, { cylinder, pushrod: pushrod * IN, line: cylinder, ...more });
  const codes = (marks: readonly TipMarkEvidence[]) => on(marks).questions.map(({ code }) => code);

  test('.060 apart on one side: asked before two are ordered, whichever came first', () => {
    const two = [at(1, 7.72), at(2, 7.66)];
    const said = on(two);
    expect(said.questions[0]?.ask).toBe(
      'By its mark 2 intake for 7.660 in and 1 intake for 7.720 in: like valves mostly take one length. What differs?',
    );
    expect(said.next?.action).toBe('lengths-unlike');
    expect(headlines(said)).not.toMatch(/is the length/);
    expect(on(two.toReversed()).questions).toEqual(said.questions);
    const answered = (answer: string) =>
      headlines(on(two, { answers: answerTo(said, 'lengths-unlike', answer) }));
    expect(answered('heights')).toMatch(/7\.720 in is the length[\s\S]*7\.660 in is the length/);
    expect(answered('length')).not.toMatch(/is the length/);
    expect(answered('neither')).toMatch(/straightedge/);
  });

  test('within half a step of stock, of the two sides, or a gauge beside the ends: not asked', () => {
    expect(codes([at(1, 7.72), at(2, 7.7)])).not.toContain('lengths-unlike');
    expect(codes([at(1, 7.72), at(1, 7.66, { id: 'x', valve: 'exhaust' })])).not.toContain('lengths-unlike');
    expect(
      codes([at(1, 7.72, { pushrodOver: 'ends' }), at(2, 7.703, { pushrodOver: 'gauge' })]),
    ).not.toContain('lengths-unlike');
  });
});

describe('what stands beside a mark', () => {
  test('the checker’s length is told apart from the one that is ordered', () => {
    const working = (lashOff?: true): Evidence['workings'] => [
      {
        id: 'sum',
        computation: 'pushrod-length',
        line: 9,
        set: {
          of: 'pushrod',
          length: 7.75 * IN,
          told: 'as-read',
          ...(lashOff === undefined ? {} : { lashOff }),
        },
      },
    ];
    const own = [tipMark('m', 0.035, { pushrod: 7.72 * IN })];
    expect(headlines(on(own, { workings: working(true) }))).toMatch(/7\.720 in is the checker’s length/);
    expect(headlines(on(own))).toMatch(/7\.720 in is the length/);
  });

  test('under a stop no other mark is asked for', () => {
    const stopped = on([
      tipMark('e', 0.1, { side: 'valley', off: 0.13 * IN, stem: (11 / 32) * IN, pushrod: 7.6 * IN }),
    ]);
    expect(stopped.stop).not.toEqual([]);
    expect(stopped.judgements.flatMap(({ lacks }) => lacks).join()).not.toMatch(/second mark|narrower mark/);
  });

  test('a mark that can reach over an edge asks for the stem before anybody turns it', () => {
    const said = on([tipMark('e', 0.1, { side: 'valley', off: 0.13 * IN, pushrod: 7.6 * IN })]);
    expect(said.next?.action).toBe('mark-near-the-edge');
    expect(said.next?.turns).toBe(false);
    expect(headlines(said)).not.toMatch(/Next try|try 7\.650/);
  });
});
