import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence, TipMarkEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from '../../mechanics/assessment/plain-build.ts';

/*
 * What a builder hears first of a tip mark: its width, its place, what that says, and what is done next. Net lift
 * .360 × 1.6 − .016 = .560 on 1.45: least .560²/(8 × 1.45) = .0270 and a little, ordinary to .047 (trade practice 2.10 and
 * section 3). Toward the valley is too short, toward the exhaust side too long on a stud (trade press).
 */
let line = 0;
function mark(width: number, at: number | 'sideways', pushrod?: number): TipMarkEvidence {
  line += 1;
  return {
    id: `mark-${line}`,
    line,
    standing: true,
    cylinder: 1,
    valve: 'intake',
    width: width * IN,
    side: typeof at === 'string' ? at : at === 0 ? 'centred' : at > 0 ? 'exhaust' : 'valley',
    ...(typeof at === 'number' && at !== 0 ? { off: Math.abs(at) * IN } : {}),
    ...(pushrod === undefined ? {} : { pushrod: pushrod * IN }),
    readAs: `${width} in wide`,
  };
}
const said = (tipMarks: readonly TipMarkEvidence[], mounting: Evidence['engine']['mounting'] = 'stud') =>
  assess({
    ...PLAIN,
    call: { ...PLAIN.call, goal: 'geometry' },
    engine: { ...PLAIN.engine, ...(mounting === undefined ? {} : { mounting }) },
    card: { assumedRatio: 1.6, intake: { lobeLift: 0.36 * IN, lash: 0.016 * IN }, exhaust: {} },
    rockers: { soldAs: 1.6, pivotToTip: 1.45 * IN },
    tipMarks,
  });

const WIDE = mark(0.085, 0.04, 7.85);
const NARROWER = mark(0.07, 0.02, 7.8);
const SHORT = mark(0.08, -0.01, 7.75);

describe.each([
  ['wide, toward the exhaust side', [WIDE], /too long/, /shorten the pushrod by \.050 in, to 7\.800 in/],
  ['narrow, toward the valley', [mark(0.04, -0.03, 7.8)], /too short/, /lengthen the pushrod by \.050 in/],
  [
    'wide in the middle',
    [mark(0.09, 0, 7.8)],
    /In the middle and still wide/,
    /\.050 longer and \.050 shorter/,
  ],
  ['sideways', [mark(0.05, 'sideways')], /plate or the stud/, /loosen the plate/],
  ['less than a roller can', [mark(0.015, 0)], /can’t sweep less than \.027 in/, /ink it again all over/],
  ['three lengths, none narrow', [WIDE, NARROWER, SHORT], /least near 7\.800 in/, /Read arm and lift again/],
] as const)('a mark %s', (_, marks, finding, next) => {
  test.each([1, 2])('says what it says, and what comes next', (order) => {
    const told = said(order === 1 ? marks : marks.toReversed());
    const [first] = told.headlines;
    expect(first?.sentence).toMatch(finding);
    for (const sentence of first?.sentence.split(/(?<=\.) (?=[A-Z])/) ?? [])
      expect(sentence.split(' ').length, sentence).toBeLessThan(25);
    expect(told.next?.sentence).toMatch(next);
    expect(told.missing.map(({ sentence }) => sentence)).toContain(
      'The next mark of 1 intake, after what was found.',
    );
  });
});

describe('a mark that is right', () => {
  test('names the length, and nothing is left to ink', () => {
    const told = said([mark(0.075, 0.035, 7.85), mark(0.044, 0, 7.8)]);
    expect(told.headlines[0]?.sentence).toMatch(/\.044 in wide, in the middle\..*7\.800 in is the length\./);
    expect(told.missing).toEqual([]);
    expect(told.next?.sentence).toMatch(/^Say what was found/);
  });

  test('on a shaft it is the height that may stay', () => {
    expect(said([mark(0.044, 0.03)], 'shaft').headlines[0]?.sentence).toMatch(/The height may stay\.$/);
  });
});

test('three marks say one thing: nothing speaks of longer, shorter or of its own place beside it', () => {
  const { headlines, questions, next } = said([WIDE, NARROWER, SHORT]);
  const told = [
    headlines[0]?.sentence,
    next?.sentence,
    ...questions.flatMap(({ ask, size, test: todo }) => [ask, size, todo]),
  ];
  expect(told.join(' ')).not.toMatch(/longer|shorter|horten|engthen|too short|too long/);
});
