import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { answersTo, isNoiseQuestion, NOISE_QUESTIONS } from '../../../shared/schemas/noise.ts';
import { PLAIN } from '../assessment/plain-build.ts';

/*
 * What each answer of a call about noise speaks for and against, from what the trade says of failures and not from the
 * program: one by one, as one row each. Where nobody has published it the row says common practice.
 */

const COMMON = 'common practice, no source';
const MEMORY = 'from memory';
/** A circle-track column on rocker adjusters: nuts that are pinched are thrown away after a few adjustments. */
const NUTS = 'circle-track column on rocker adjusters';
/** One valve that keeps loosening: a failing lifter, pushrod or rocker; a worn nose does not show in the lash. */
const ONE_VALVE = 'race shop’s note on lash';
const BENT = 'parts store’s pushrod guide: bent pushrods come of coils that touch, or a valve on its piston';
const PINS = 'forum case: pins that crept out of their tips';
const NEEDLES = 'shop’s page on pivot bearings';
/** One bad: part or position. All bad: set-up or oil. */
const COMPARED = 'common practice, no source: compare bad with neighbours';

/** A nut that comes loose: its lock, a domed stud top, few threads on it. */
const LOCK = ['nut-lock', 'stud-top', 'stud-thread'];
/** A gap that grows under a nut that held: something between the cam and the stem wears. */
const WEARS = ['pushrod', 'tip', 'roller', 'trunnion', 'lifter', 'lobe'];
const PART_OR_POSITION = [...LOCK, 'stud', ...WEARS];
const OIL_OR_SET_UP = ['oil', 'setting'];

type Row = readonly [
  answer: string,
  speaksFor: readonly string[],
  against: readonly string[],
  source: string,
];

const TABLE: Readonly<Record<string, readonly Row[]>> = {
  'noise-signs': [
    ['none', [], [], COMMON],
    // What sheds metal runs on something: rollers, needles, the lifter’s face, the lobe.
    ['metal', ['roller', 'trunnion', 'lifter', 'lobe'], [], COMMON],
    ['broken', ['stud', 'pushrod', 'roller', 'trunnion'], [], COMMON],
    ['tight', ['roller', 'trunnion'], [], COMMON],
    ['contact', ['pushrod', 'spring', 'touching'], [], BENT],
  ],
  'noise-which': [
    ['one', PART_OR_POSITION, OIL_OR_SET_UP, COMPARED],
    ['several', [], [], COMPARED],
    ['all', OIL_OR_SET_UP, PART_OR_POSITION, COMPARED],
  ],
  'noise-oil': [
    ['usual', [], ['oil'], COMMON],
    // What oil fails first: the bearing at the pivot, and a lifter that is held up by it.
    ['low', ['oil', 'trunnion', 'lifter'], [], NEEDLES],
  ],
  'noise-heat': [
    // A lifter that bleeds down over night fills again as it runs.
    ['cold', ['lifter'], [], MEMORY],
    ['hot', OIL_OR_SET_UP, [], MEMORY],
    ['both', [], [], MEMORY],
  ],
  'noise-hours': [
    ['first-running', ['setting', 'nut-lock'], ['tip', 'roller', 'lobe'], MEMORY],
    ['slowly', WEARS, ['setting'], MEMORY],
    ['suddenly', ['stud', 'pushrod', 'trunnion'], [], MEMORY],
  ],
  'noise-speed': [
    ['from-idle', [], ['spring'], MEMORY],
    ['high-only', ['spring'], [], MEMORY],
  ],
  'noise-nut': [
    ['moved', LOCK, WEARS, COMMON],
    ['held', [...WEARS, 'stud'], LOCK, COMMON],
    ['off', LOCK, WEARS, COMMON],
  ],
  'noise-history': [
    ['not-again', [], [], COMMON],
    // It was set again, and so the setting was not it.
    ['came-back', [], ['setting'], ONE_VALVE],
    ['grew-again', [], ['setting', 'oil', 'spring'], ONE_VALVE],
  ],
  'noise-set-screw': [
    ['tight', [], ['nut-lock'], COMMON],
    ['loose', ['nut-lock'], [], COMMON],
  ],
  'noise-nut-used': [
    ['new', [], [], NUTS],
    ['again', ['nut-lock', 'stud-thread'], [], NUTS],
  ],
  'noise-stud': [
    ['firm', [], ['stud'], COMMON],
    ['moves', ['stud'], [], 'magazine case: studs that broke again after swaps'],
  ],
  'noise-stud-top': [
    ['flat', [], ['stud-top'], COMMON],
    ['domed', ['stud-top'], [], COMMON],
  ],
  'noise-thread': [
    ['sound', [], ['stud-thread'], COMMON],
    ['worn', ['stud-thread'], [], COMMON],
  ],
  'noise-pushrod': [
    // Straight, it was not bent by anything that touched.
    ['smooth', [], ['pushrod', 'touching'], BENT],
    ['worn', ['pushrod'], [], ONE_VALVE],
    ['bent', ['touching'], [], BENT],
  ],
  'noise-tip': [
    ['smooth', [], ['tip'], COMMON],
    ['worn', ['tip'], [], COMMON],
  ],
  'noise-roller': [
    ['free', [], ['roller'], COMMON],
    ['worn', ['roller'], [], COMMON],
    ['pin-moved', ['roller'], [], PINS],
  ],
  'noise-trunnion': [
    ['smooth', [], ['trunnion'], NEEDLES],
    ['worn', ['trunnion'], [], NEEDLES],
    ['missing', ['trunnion'], [], NEEDLES],
  ],
};

/** Seen with the eye, it goes before whatever is only counted. */
const SEEN: readonly string[] = [
  'noise-set-screw loose',
  'noise-stud moves',
  'noise-stud-top domed',
  'noise-thread worn',
  'noise-pushrod worn',
  'noise-pushrod bent',
  'noise-tip worn',
  'noise-roller worn',
  'noise-roller pin-moved',
  'noise-trunnion worn',
  'noise-trunnion missing',
];

const answered = (question: string, answer: string): Evidence => ({
  ...PLAIN,
  engine: { cylinders: 8, lifter: 'solid-flat', mounting: 'stud' },
  call: { ...PLAIN.call, goal: 'noise-or-failure' },
  answers: [
    { id: 'a', line: 1, code: question, questionId: `question:${question}:build`, question: '', answer },
  ],
});

function countedIn(question: string, answer: string) {
  const { candidates } = assess(answered(question, answer)).details.noise;
  const named = (which: 'for' | 'against') =>
    candidates
      .filter((each) => each[which].length > 0)
      .map(({ cause }) => cause)
      .toSorted();
  return {
    speaksFor: named('for'),
    against: named('against'),
    seen: candidates.filter(({ seen }) => seen).map(({ cause }) => cause),
  };
}

const rows = Object.entries(TABLE).flatMap(([question, all]) =>
  all.map((row) => [question, ...row] as const),
);

describe('each answer counts for and against what the trade says', () => {
  test('every question has a row for each of its answers, and none that it has not', () => {
    const questions = Object.keys(NOISE_QUESTIONS).filter(isNoiseQuestion);
    expect(Object.keys(TABLE).toSorted()).toEqual(questions.toSorted());
    for (const question of questions)
      expect(TABLE[question]?.map(([answer]) => answer).toSorted(), question).toEqual(
        Object.keys(answersTo(question))
          .filter((answer) => answer !== 'not-known')
          .toSorted(),
      );
  });

  test.each(rows)('%s: %s', (question, answer, speaksFor, against, source) => {
    expect(source).not.toBe('');
    const counted = countedIn(question, answer);
    expect(counted.speaksFor).toEqual([...speaksFor].toSorted());
    expect(counted.against).toEqual([...against].toSorted());
    expect(counted.seen).toEqual(SEEN.includes(`${question} ${answer}`) ? speaksFor : []);
  });

  test.each(Object.keys(TABLE))('%s: that nobody knows speaks for nothing', (question) => {
    expect(countedIn(question, 'not-known')).toEqual({ speaksFor: [], against: [], seen: [] });
  });
});
