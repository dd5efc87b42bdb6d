import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence, TipMarkEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { answering } from './answering.ts';
import { PLAIN } from './plain-build.ts';
import { tipMark } from './tip-mark.ts';

/*
 * 1.6 in of arm and .600 in of lift: .0284 at the least, ordinary to .0484 (check values 8). A stem of 11/32 is .3438 and
 * ends .172 from the middle. What ink and a caliper are read to, and in which order a mark is looked at: common practice,
 * no published source.
 */
const BUILD: Evidence = {
  ...PLAIN,
  rockers: { soldAs: 1.6, pivotToTip: 1.6 * IN },
  card: { ...PLAIN.card, intake: { lobeLift: 0.375 * IN }, exhaust: { lobeLift: 0.375 * IN } },
  call: { ...PLAIN.call, goal: 'geometry' },
};
const on = (tipMarks: readonly TipMarkEvidence[], more: Partial<Evidence> = {}) =>
  assess({ ...BUILD, ...more, tipMarks });
const codesOf = ({ questions }: ReturnType<typeof assess>) => questions.map(({ code }) => code);
/** The same once the question of this code was answered so. */
function answered(tipMarks: readonly TipMarkEvidence[], code: string, answer: string) {
  const { questions } = on(tipMarks);
  return on(tipMarks, { answers: [answering(questions, code, answer, 500)] });
}
const STEM = (11 / 32) * IN;

describe('a figure that no mark has on its stem is asked, beside what it raises', () => {
  test.each([
    ['off', { side: 'valley', off: 0.3 * IN, stem: STEM }, 0.06, '.300 in from the middle', '.030 in'],
    [
      'off, millimetres typed as inches',
      { side: 'valley', off: 0.5 * IN, stem: STEM },
      0.06,
      '.500',
      '0.50 mm',
    ],
    ['width', { stem: STEM }, 0.4, '.400 in wide', '.040 in'],
    ['off, on a stem that nobody told', { side: 'exhaust', off: 0.3 * IN }, 0.05, '.300', '.030 in'],
  ] as const)('%s', (_what, more, width, is, meant) => {
    const question = on([tipMark('m', width, more)]).questions.find(({ code }) => code === 'mark-cannot-be');
    expect(question?.weight).toBe('strong');
    expect(question?.ask).toContain(is);
    expect(question?.ask).toContain(meant);
  });

  test('entered wrong leads to entering it again; read again it stands, and the stop with it', () => {
    const marks = [tipMark('m', 0.06, { side: 'valley', off: 0.3 * IN, stem: STEM })];
    expect(on(marks).stop.map(({ code }) => code)).toContain('mark-at-the-edge');
    expect(answered(marks, 'mark-cannot-be', 'not-found').stop.map(({ code }) => code)).toContain(
      'mark-at-the-edge',
    );
    expect(codesOf(on([tipMark('m', 0.06, { side: 'valley', off: 0.03 * IN, stem: STEM })]))).not.toContain(
      'mark-cannot-be',
    );
  });
});

describe('a mark as near to the edge as ink is read', () => {
  // .110 off and .080 wide end at .150, of .15625 on a stem of 5/16.
  const near = [
    tipMark('n', 0.08, { side: 'exhaust', off: 0.11 * IN, pushrod: 7.8 * IN, stem: (5 / 16) * IN }),
  ];

  test('is looked at before any length is told, and stops nobody', () => {
    const all = on(near);
    expect(codesOf(all)).toContain('mark-close-to-edge');
    expect(all.stop).toEqual([]);
    expect(all.next).toMatchObject({ action: 'mark-close-to-edge', turns: false });
    expect(all.headlines.map(({ sentence }) => sentence).join(' ')).not.toMatch(/try/i);
  });

  test('found off it stops; found on it goes on', () => {
    expect(answered(near, 'mark-close-to-edge', 'found').stop.map(({ code }) => code)).toEqual([
      'mark-at-the-edge',
    ]);
    const stays = answered(near, 'mark-close-to-edge', 'not-found');
    expect(stays.stop).toEqual([]);
    expect(stays.next?.action).not.toBe('mark-close-to-edge');
  });

  test('further in by more than that nothing is asked of it', () => {
    expect(codesOf(on([tipMark('n', 0.05, { side: 'exhaust', off: 0.11 * IN, stem: STEM })]))).not.toContain(
      'mark-close-to-edge',
    );
  });
});

test('what stands sideways is lined up before another valve is tried for its width', () => {
  const wide = tipMark('w', 0.05, { cylinder: 5, pushrod: 7.8 * IN });
  const sideways = tipMark('s', 0.05, {
    cylinder: 6,
    side: 'sideways',
    off: (3 / 64) * IN,
    pushrod: 7.85 * IN,
  });
  for (const marks of [
    [wide, sideways],
    [sideways, wide],
  ])
    expect(on(marks).next).toMatchObject({ action: 'mark-sideways', about: { cylinder: 6 } });
});

test('within what lift and arm are known to a mark is ordinary, and nobody says that nothing sweeps so little', () => {
  const marks = [tipMark('s', 0.0282, { side: 'sideways' })];
  expect(
    on(marks)
      .judgements.map(({ sentence }) => sentence)
      .join(' '),
  ).toMatch(/Ordinary/);
  expect(codesOf(on(marks))).not.toContain('mark-narrower-than-least');
  const { next } = answered(marks, 'mark-sideways', 'out-of-line');
  expect(next?.sentence).toMatch(/line it up, ink again/i);
  expect(codesOf(on([tipMark('s', 0.02)]))).toContain('mark-narrower-than-least');
});
