import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { PushrodEvidence } from '../../../server/mechanics/assessment/evidence/kept-sums.ts';
import type {
  AnswerEvidence,
  Evidence,
  TipMarkEvidence,
} from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { answering } from './answering.ts';
import { PLAIN } from './plain-build.ts';
import { tipMark } from './tip-mark.ts';

/* 1.6 in of arm and .600 in of lift: .0284 at the least, ordinary to .0484 (check values 8). Engines are invented. */
const BUILD: Evidence = {
  ...PLAIN,
  rockers: { soldAs: 1.6, pivotToTip: 1.6 * IN },
  card: { ...PLAIN.card, intake: { lobeLift: 0.375 * IN }, exhaust: { lobeLift: 0.375 * IN } },
  call: { ...PLAIN.call, goal: 'geometry' },
};
const on = (tipMarks: readonly TipMarkEvidence[], more: Partial<Evidence> = {}) =>
  assess({ ...BUILD, ...more, tipMarks });
/** The same after one answer after the other. */
function answered(
  tipMarks: readonly TipMarkEvidence[],
  said: readonly (readonly [code: string, answer: string])[],
  more: Partial<Evidence> = {},
) {
  const answers: AnswerEvidence[] = [];
  for (const [code, answer] of said) {
    const { questions } = on(tipMarks, { ...more, answers: [...answers] });
    answers.push(answering(questions, code, answer, 500 + answers.length));
  }
  return on(tipMarks, { ...more, answers });
}
const OFF = { side: 'valley', off: 0.03 * IN, pushrod: 7.8 * IN } as const;
const opposite = [
  tipMark('a', 0.035, { ...OFF, line: 1 }),
  tipMark('b', 0.035, { ...OFF, side: 'exhaust', line: 2 }),
];

describe('whether what is next of a mark turns the engine goes by what is done', () => {
  test('inked once more is turned, though the question that led there is answered by looking', () => {
    expect(on(opposite).next).toMatchObject({ action: 'marks-apart', turns: false });
    const { next } = answered(opposite, [['marks-apart', 'neither']]);
    expect(next).toMatchObject({ action: 'marks-apart', turns: true });
    expect(next?.sentence).toMatch(/two whole turns by hand/);
  });

  test('a mark that was inked is only entered', () => {
    const off = [tipMark('o', 0.04, OFF)];
    expect(on(off).next).toMatchObject({ action: 'mark-off-centre', turns: true });
    const { next } = answered(off, [['mark-off-centre', 'inked']]);
    expect(next?.sentence).toMatch(/enter the mark/);
    expect(next?.turns).toBe(false);
  });

  test('an answered question is told as one that was asked', () => {
    const { next } = answered([tipMark('n', 0.02)], [['mark-narrower-than-least', 'whole']]);
    expect(next?.reason).toMatch(/^asked “.*”, the answer was/);
  });
});

describe('sentence and reason of what is next are of one question', () => {
  test('a stem that is not said goes before over what a length was taken', () => {
    const marks = [
      tipMark('e', 0.06, {
        side: 'exhaust',
        off: 0.12 * IN,
        pushrod: 7.8 * IN,
        pushrodOver: 'ends',
        line: 1,
      }),
      tipMark('f', 0.04, { pushrod: 7.75 * IN, line: 2 }),
    ];
    const { next } = on(marks);
    expect(next?.action).toBe('mark-near-the-edge');
    expect(next?.sentence).toMatch(/across the stem’s end/);
    expect(next?.reason).toMatch(/diameter of the stem/);
    const then = answered(marks, [['mark-near-the-edge', 'stem-11-32']]).next;
    expect(then?.action).toBe('length-over-what');
    expect(then?.reason).toMatch(/taken over its ends, or by a gauge/);
  });
});

/* .020 is narrower than the least sweep of .0284. */
describe('an answer to one question of a mark leaves the others', () => {
  const both = [tipMark('s', 0.02, { side: 'sideways', off: 0.03 * IN })];

  test('left as it is sideways, the mark is still too narrow to be all of it', () => {
    const said = answered(both, [['mark-sideways', 'left']]);
    expect(said.next?.action).toBe('mark-narrower-than-least');
    expect(said.next?.sentence).toMatch(/ink the whole tip/);
  });

  test('inked whole and left sideways: arm and lift are read once more', () => {
    const said = answered(both, [
      ['mark-narrower-than-least', 'whole'],
      ['mark-sideways', 'left'],
    ]);
    expect(said.next?.sentence).toMatch(/read pivot to tip and the lift once more/);
  });

  test('inked whole, with the other open: that is asked first', () => {
    expect(answered(both, [['mark-narrower-than-least', 'whole']]).next?.action).toBe('mark-sideways');
  });
});

describe('a mark that was put right is none that was inked again', () => {
  test('the other one still counts', () => {
    const narrow = tipMark('a', 0.02, { line: 1 });
    const answers = [answering(on([narrow]).questions, 'mark-narrower-than-least', 'part', 10)];
    const judged = (b: TipMarkEvidence) => on([narrow, b], { answers }).details.marks.valves[0]?.judgedId;
    const [inked, righted] = [tipMark('b', 0.04, { line: 11 }), tipMark('b', 0.04, { line: 11, entered: 2 })];
    expect(judged(inked)).toBe('b');
    expect(judged(righted)).toBe('a');
  });

  test('nor is a neighbour that was put right one that was compared since', () => {
    // Two lengths as wide, .060, over the ordinary: narrowest there, and a neighbour is compared.
    const own = [7.75, 7.8, 7.85].map((pushrod, at) =>
      tipMark(`c${at}`, [0.068, 0.052, 0.06][at] ?? 0, { pushrod: pushrod * IN, line: at + 1 }),
    );
    const beside = (more: Partial<TipMarkEvidence>) => tipMark('n', 0.05, { cylinder: 3, ...more });
    const before = beside({ line: 4 });
    const asked = on([...own, before]).questions.filter(({ answers }) =>
      answers.some(({ label }) => label === 'A neighbour is inked'),
    );
    const answers = [answering(asked, 'mark-wide', 'inked', 10)];
    const firstOf = (neighbour: TipMarkEvidence) =>
      on([...own, neighbour], { answers }).details.marks.valves[0]?.first?.said;
    expect(firstOf(beside({ line: 11, entered: 4 }))).toMatch(/Enter the mark of the neighbour/);
    expect(firstOf(beside({ line: 11 }))).not.toMatch(/Enter the mark of the neighbour/);
  });
});

describe('one stem has one diameter', () => {
  // Their far sides are .150 and .160 from the middle.
  const near = [
    tipMark('e', 0.06, { side: 'exhaust', off: 0.12 * IN, pushrod: 7.8 * IN, line: 1 }),
    tipMark('f', 0.06, { side: 'exhaust', off: 0.13 * IN, pushrod: 7.75 * IN, line: 2 }),
  ];
  const stems = (said: ReturnType<typeof on>) =>
    said.questions.filter(({ code }) => code === 'mark-near-the-edge');

  test('it is asked once of all marks near the edge, by the furthest out', () => {
    expect(stems(on(near))).toHaveLength(1);
    expect(stems(on(near))[0]?.restsOn).toEqual(['e', 'f']);
    expect(stems(on(near))[0]?.size).toMatch(/\.160 in from the middle/);
  });

  test('answered, it is settled, and stays so with another mark there', () => {
    const answers = [answering(on(near).questions, 'mark-near-the-edge', 'stem-11-32')];
    const more = tipMark('g', 0.06, { side: 'exhaust', off: 0.125 * IN, pushrod: 7.7 * IN, line: 600 });
    for (const marks of [near, [...near, more]]) {
      const said = on(marks, { answers });
      expect(stems(said).map(({ weight, answered }) => [weight, answered?.answer])).toEqual([
        ['weak', 'stem-11-32'],
      ]);
      expect(said.next?.action).not.toBe('mark-near-the-edge');
    }
    const thin = [answering(on(near).questions, 'mark-near-the-edge', 'stem-7-mm')];
    expect(on(near, { answers: thin }).stop.map(({ code }) => code)).toEqual([
      'mark-at-the-edge',
      'mark-at-the-edge',
    ]);
  });
});

describe('a rocker on an overhead cam', () => {
  test('is not set against the heights of a stand that nothing moves', () => {
    const marks = [
      tipMark('a', 0.08, { shims: 0, line: 1 }),
      tipMark('b', 0.06, { shims: 0.03 * IN, line: 2 }),
    ];
    const workings: Evidence['workings'] = [
      {
        id: 'w',
        computation: 'stand-height',
        line: 9,
        set: { of: 'stand', netLift: 0.6 * IN, pivotToTip: 1.6 * IN, shim: -0.07 * IN },
      },
    ];
    const codes = (gear: 'cam-rocker' | 'pushrod') =>
      on(marks, {
        engine: { ...PLAIN.engine, gear, mounting: 'shaft' },
        workings,
      }).questions.map(({ code }) => code);
    expect(codes('pushrod')).toContain('stand-against-marks');
    expect(codes('cam-rocker')).not.toContain('stand-against-marks');
  });

  test('its marks on opposite sides are no question, and both count', () => {
    const said = on(opposite, { engine: { ...PLAIN.engine, gear: 'cam-rocker' } });
    expect(said.questions.map(({ code }) => code)).not.toContain('marks-apart');
    expect(said.details.marks.valves[0]?.holds).toBe(true);
  });
});

describe('why no length stays yet is told beside the sum', () => {
  const set: PushrodEvidence = { of: 'pushrod', length: 7.85 * IN, told: 'overall' };
  const workings: Evidence['workings'] = [{ id: 'w9', computation: 'pushrod-length', line: 9, set }];
  const at = (cylinder: number, pushrod: number, more: Partial<TipMarkEvidence> = {}) =>
    tipMark(`m${cylinder}`, 0.035, { cylinder, pushrod: pushrod * IN, line: cylinder, ...more });
  const sum = (said: ReturnType<typeof on>) =>
    said.headlines.find(({ id }) => id === 'headline:working:pushrod')?.sentence;

  test.each([
    [
      'unlike lengths',
      [at(1, 7.85), at(3, 7.95)],
      /the marks of 1 intake and 3 intake ask for unlike lengths/,
    ],
    [
      'a stem that is not said',
      [tipMark('e', 0.06, { side: 'exhaust', off: 0.12 * IN, pushrod: 7.8 * IN })],
      /how thick the stem of 1 intake is has to be said first/,
    ],
    ['two on opposite sides', opposite, /of the mark of 1 intake it is not known which holds/],
    ['a width without a word', [at(1, 7.85)], /the width at 1 intake has no word yet/, { rockers: {} }],
    ['another length to try', [tipMark('o', 0.035, OFF)], /is only a length to try, and goes first/],
  ] as const)('%s', (_what, marks, said, more: Partial<Evidence> = {}) => {
    const told = sum(on(marks, { workings, ...more }));
    expect(told).toMatch(said);
    expect(told).toMatch(/order none until a mark may stay\.$/);
    if (_what !== 'another length to try') expect(told).not.toMatch(/length to try/);
  });

  test('with none that counts, no length is ordered', () => {
    expect(sum(answered(opposite, [['marks-apart', 'neither']], { workings }))).toMatch(
      /it is not known which holds: order none/,
    );
  });
});

describe('lengths of like valves are set against those told alike', () => {
  const at = (cylinder: number, pushrod: number, more: Partial<TipMarkEvidence> = {}) =>
    tipMark(`m${cylinder}`, 0.035, { cylinder, pushrod: pushrod * IN, line: cylinder, ...more });

  test('one of which nobody said it does not keep two others from being asked', () => {
    const ends = { pushrodOver: 'ends' } as const;
    const said = on([at(1, 7.8), at(3, 7.85, ends), at(5, 7.95, ends)]);
    const question = said.questions.find(({ code }) => code === 'lengths-unlike');
    expect(question?.ask).toMatch(/3 intake for 7\.850 in and 5 intake for 7\.950 in/);
  });
});
