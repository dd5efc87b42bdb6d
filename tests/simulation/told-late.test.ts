import { describe, expect, test } from 'vitest';
import type { Assessment } from '../../server/mechanics/assessment/assessment.ts';
import { parting, withoutLines } from '../mechanics/assessment/laws/order.ts';
import { chanceFrom } from '../mechanics/explain-readings/random.ts';
import { READING_SETS } from '../mechanics/explain-readings/score.ts';
import { drawnCall } from './drawn.ts';
import { RecordedCall } from './recorded-call.ts';
import type { Telling } from './states.ts';
import { tellTheRest } from './tell.ts';

const CALLS = 36;
const SEED = 11;
const SETS = ['1', '5', 'L'] as const;

/** One simulated call, told so; the same seed has the same engine, mistakes and readings. */
function toldSo(seed: number, telling: Telling): { readonly before: Assessment; readonly after: Assessment } {
  const chance = chanceFrom(seed);
  const call = drawnCall(chance);
  const recorded = new RecordedCall(chance, call, { telling, tellsSetting: true });
  const set = SETS[seed % SETS.length] ?? '1';
  for (const ask of READING_SETS[set](call)) recorded.take(ask);
  const before = recorded.build.assess();
  tellTheRest(recorded);
  return { before, after: recorded.build.assess() };
}

const seeds = Array.from({ length: CALLS }, (_, index) => SEED * 1000 + index);

/** Without the questions that have been answered: told at once, none of them was asked. */
function open(assessment: Assessment): Assessment {
  const isAnswered = new Set(
    assessment.questions.filter(({ answered }) => answered !== undefined).map(({ id }) => id),
  );
  return {
    ...assessment,
    questions: assessment.questions.filter(({ id }) => !isAnswered.has(id)),
    details: {
      ...assessment.details,
      setUps: assessment.details.setUps.map((setUp) => ({
        ...setUp,
        questionIds: setUp.questionIds.filter((id) => !isAnswered.has(id)),
      })),
    },
  };
}

/** Where the two part, call by call; told late it was another assessment until it was told. */
function partings(telling: Telling): string[] {
  return seeds.flatMap((seed) => {
    const { before, after } = toldSo(seed, telling);
    const atOnce = toldSo(seed, 'at-once').after;
    expect([seed, parting(withoutLines(before), withoutLines(after), '')]).not.toEqual([seed, undefined]);
    const found = parting(withoutLines(open(after)), withoutLines(open(atOnce)), '');
    return found === undefined ? [] : [`call ${seed}: ${found}`];
  });
}

describe(`${CALLS} simulated calls, told in other ways: the same as told at once`, () => {
  test('spring, lifter, lash, plunger, arm, mark and card after the readings, by statements', () => {
    expect(partings('late')).toEqual([]);
  });

  test('all of it wrong at first, the rows of the card too, and put right', () => {
    expect(partings('wrong-first')).toEqual([]);
  });

  test('spring, lifter, lash and plunger as answers to the questions that they raise', () => {
    expect(partings('by-answers')).toEqual([]);
  });
});
