import { describe, expect, test } from 'vitest';
import { changePart } from '../../../../server/mechanics/assessment/change/change.ts';
import type { ValveRatio } from '../../../../server/mechanics/assessment/change/input.ts';
import type { AnswerEvidence, Evidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../../server/mechanics/kit/si.ts';
import { PLAIN } from '../plain-build.ts';

/*
 * The cup moves by b·(1/r₁ − 1/r₂) (trade practice 2.12): on a 1.480 arm from 1.6 to 1.7 .054, from 1.5 to 1.7 .116, from 1.5
 * to 1.6 .062, by hand.
 */
const build = (rockers: Evidence['rockers'], gap: number, more: Partial<Evidence> = {}): Evidence => ({
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'choose-ratio' },
  ...more,
  rockers: { pivotToTip: 1.48 * IN, ...rockers },
  taken: { intake: { pushrodToHead: gap * IN }, exhaust: {} },
});

const said = (answer: string): readonly AnswerEvidence[] => [
  {
    id: 'said',
    line: 9,
    questionId: 'question:pushrod-read-with:intake:1.5:with-which-arms-pushrod-to-head-was-read',
    code: 'pushrod-read-with',
    question: 'With which arms?',
    answer,
  },
];

function of(evidence: Evidence) {
  const part = changePart(evidence, []);
  const detail = part.detail.find(({ about }) => about.of === 'side' && about.valve === 'intake');
  const gap = detail?.gaps.find(({ name }) => name === 'pushrod-to-head');
  const bound = (name: 'value' | 'low' | 'high') => (gap?.after?.[name] ?? Number.NaN) / IN;
  return { part, detail, gap, bound, codes: part.questions.map(({ code }) => code) };
}

describe('the card has 1.5, the arms that are on are sold as 1.6, and 1.7 is planned', () => {
  const rockers = { soldAs: 1.6, planned: 1.7 };

  test('until it is said which were on, the worse of the two is in the interval, and it is asked', () => {
    const { gap, bound, codes } = of(build(rockers, 0.09));
    // .090 − .054 = .036 with those that are on, .090 − .116 = −.026 with the card’s.
    expect(bound('value')).toBeCloseTo(0.036, 9);
    expect(bound('low')).toBeLessThan(-0.026);
    expect([gap?.word, gap?.lacks.map(({ said }) => said)]).toEqual([
      'close',
      ['which arms it was read with'],
    ]);
    expect(codes).toContain('pushrod-read-with');
  });

  test.each([
    ['on-now', 0.036],
    ['others', -0.026],
  ])('said: %s', (answer, expected) => {
    const { gap, bound } = of(build(rockers, 0.09, { answers: said(answer) }));
    expect(bound('value')).toBeCloseTo(expected, 9);
    expect(gap?.lacks.map(({ said }) => said)).not.toContain('which arms it was read with');
  });

  test('what was read is measured, not calculated', () => {
    expect(of(build(rockers, 0.09)).gap?.before?.basis).toBe('measured');
    expect(of(build(rockers, 0.09, { answers: said('others') })).gap?.before?.basis).toBe('calculated');
  });
});

describe('answered, and the ratio of the card put right to 1.3 since', () => {
  const rockers = { soldAs: 1.6, planned: 1.7 };
  const right = (answer: string) =>
    of(build(rockers, 0.09, { answers: said(answer), card: { ...PLAIN.card, assumedRatio: 1.3 } }));
  const asked = ({ part }: ReturnType<typeof of>) =>
    part.questions.filter(({ code }) => code === 'pushrod-read-with');

  test('“others” was said of arms of 1.5: it is asked of those of 1.3', () => {
    const told = right('others');
    expect(told.gap?.lacks.map(({ said }) => said)).toContain('which arms it was read with');
    expect(told.bound('value')).toBeCloseTo(0.036, 9);
    expect(asked(told).map(({ answered }) => answered)).toEqual([undefined]);
    expect(asked(told)[0]?.size).toMatch(/ It was answered while the others were 1\.5\.$/);
  });

  test('“on now” holds whatever the others are', () => {
    const told = right('on-now');
    expect(told.bound('value')).toBeCloseTo(0.036, 9);
    expect(told.gap?.lacks.map(({ said }) => said)).not.toContain('which arms it was read with');
    expect(asked(told).map(({ answered }) => answered?.entryId)).toEqual(['said']);
  });
});

test('asked of a side, the arms of each of its valves are named, in whatever order they were read', () => {
  const readOn = (cylinder: number, value: number): ValveRatio => ({
    cylinder,
    valve: 'intake',
    setUpId: `s${cylinder}`,
    value,
    low: value - 0.01,
    high: value + 0.01,
    spring: 'light',
    basis: 'measured',
    lashIn: 'none',
    lobeLift: 0.35 * IN,
    lacks: [],
    restsOn: [`p${cylinder}`],
  });
  const ratios = [readOn(1, 1.58), readOn(2, 1.62)];
  const asks = [ratios, [...ratios].reverse()].map((given) =>
    changePart(build({ soldAs: 1.6 }, 0.09), given)
      .questions.filter(({ code }) => code === 'pushrod-read-with')
      .map(({ ask }) => ask),
  );
  const all =
    'With which arms was pushrod to head of the intake valves read: those that are on now, the 1.6 they are sold as, the measured 1.580 and the measured 1.620, or ones of the 1.5 the card assumes?';
  expect(asks).toEqual([[all], [all]]);
});

test('going down to the card’s ratio it is never clear on the good side alone: .030 + .116 or .030 as it is', () => {
  const { gap, bound } = of(build({ soldAs: 1.7, planned: 1.5 }, 0.03));
  expect(bound('value')).toBeCloseTo(0.146, 9);
  expect(bound('low')).toBeLessThan(0.03);
  expect(gap?.word).toBe('close');
});

test('arms of the card’s ratio: there is nothing to ask', () => {
  expect(of(build({ soldAs: 1.5, planned: 1.6 }, 0.09)).codes).not.toContain('pushrod-read-with');
});

test('nothing is planned: a gap read with the arms that are on is as it was read', () => {
  const { gap, bound } = of(build({ soldAs: 1.6 }, 0.09, { answers: said('on-now') }));
  expect([bound('value'), bound('low'), bound('high')].map((each) => Number(each.toFixed(4)))).toEqual([
    0.09, 0.085, 0.095,
  ]);
  expect(gap?.after?.basis).toBe('measured');
  // Read before the 1.6 went on: .090 − .062 = .028.
  expect(of(build({ soldAs: 1.6 }, 0.09, { answers: said('others') })).bound('value')).toBeCloseTo(0.028, 9);
});

test('without pivot to tip the other case can’t be worked out, and there is no word', () => {
  const bare = build({ soldAs: 1.6 }, 0.09);
  const { pivotToTip: _, ...rockers } = bare.rockers;
  const { gap } = of({ ...bare, rockers });
  expect([gap?.word, gap?.lacks.map(({ said }) => said)]).toEqual([
    undefined,
    ['which arms it was read with'],
  ]);
});

test('the cup’s move has both ratios in it: .062, 1.47 to 1.5675 before and 1.568 to 1.672 after', () => {
  // Ends: 1.48·(1/1.47 − 1/1.6) = .0818, 1.48·(1/1.5675 − 1/1.6) = .0192; 1.48·(1/1.5 − 1/1.568) = .0428, and 1.672 .1015.
  // Under √(.0425² + .0189² + small²) = .0465, over √(.0201² + .0398² + small²) = .0446, by hand.
  const { detail } = of(build({ soldAs: 1.5, planned: 1.6 }, 0.075));
  const cup = detail?.figures.find(({ name }) => name === 'cup-move')?.after;
  expect((cup?.low ?? 0) / IN).toBeCloseTo(0.0617 - 0.0465, 3);
  expect((cup?.high ?? 0) / IN).toBeCloseTo(0.0617 + 0.0446, 3);
  expect(detail?.checks[0]?.sentence).toMatch(/cup moves \.062 in \(\.015 to \.106\) toward the stud/);
});
