import { z } from 'zod';
import { out, outList, outNumber, outText, outWord } from '../../../shared/schemas/outputs.ts';
import { IN } from '../kit/si.ts';
import type { explainReadings } from './explain.ts';
import { ACTIONS, CAUSES } from './types.ts';

const chance = (description: string) => outNumber(`${description}, a part of 1`);

/** What the inference answers, as JSON has it. */
export const explainOutput = z.object({
  ratio: z.object({
    median: outNumber('ratio at full lift on the light spring, median'),
    interval95: z.tuple([z.number(), z.number()]).meta({ description: 'low and high' }),
  }),
  nominals: outList(
    z.object({ ratio: outNumber('nominal'), probability: chance('how likely') }),
    'each name',
  ),
  notListed: chance('the arm’s ratio is not on the list'),
  somethingElse: chance('something that no single listed mistake explains'),
  noMistake: chance('nothing went wrong'),
  explanations: outList(
    z.object({
      nominal: outNumber('the name; left out for a ratio not listed').optional(),
      causes: outList(outWord(CAUSES, 'what went wrong'), 'none: nothing went wrong'),
      entry: z
        .object({
          of: outWord(['card', 'reading'], 'which entry it is about'),
          index: outNumber('which reading, from 0').optional(),
        })
        .optional(),
      probability: chance('how likely'),
      ratio: outNumber('the ratio if it holds'),
      needs: outText('what would have to be true'),
    }),
    'ranked',
  ),
  rest: chance('all explanations too unlikely to list'),
  remaining: outList(z.number(), 'the fewest names that together reach .9'),
  againstMark: outWord(['agrees', 'differs', 'cannot-tell'], 'against the mark').optional(),
  nextReading: z
    .object({
      action: outWord(ACTIONS, 'the next reading or question worth its time'),
      bits: outNumber('what it tells on the average, bits'),
      minutes: outNumber('how long it takes'),
      outcomes: outList(
        z.object({
          cause: outWord(['no-mistake', ...CAUSES], 'if this holds'),
          nominal: outNumber('with this name').optional(),
          expected: out('length', 'it would read').optional(),
          plusMinus: out('length', 'half-width that 95 % keep').optional(),
          chanceFound: chance('asking finds something').optional(),
        }),
        'what each outcome would mean',
      ),
    })
    .optional(),
  settled: z.boolean().meta({ description: 'the name is settled' }),
  summary: outText('the answer in words, the ratio first'),
  questions: outList(
    z.object({
      cause: outWord(['state-not-said', 'sinking', ...CAUSES], 'what is asked about'),
      text: outText('the question with its size'),
      test: outText('the test that settles it'),
      probability: chance('how likely'),
    }),
    'questions, never verdicts',
  ),
});

const lengthOf = (inches: number | undefined) => (inches === undefined ? undefined : inches * IN);

/** Lengths out of the inches that the inference calculates in. */
export function toExplainOutput(found: ReturnType<typeof explainReadings>): z.output<typeof explainOutput> {
  const { nextReading: next } = found;
  return {
    ...found,
    ratio: { median: found.ratio.median, interval95: [...found.ratio.interval95] },
    nominals: [...found.nominals],
    remaining: [...found.remaining],
    questions: found.questions.map(({ entry: _, becomes: __, ...asked }) => asked),
    explanations: found.explanations.map((each) => ({ ...each, causes: [...each.causes] })),
    nextReading:
      next === undefined
        ? undefined
        : {
            ...next,
            outcomes: next.outcomes.map((outcome) => ({
              ...outcome,
              expected: lengthOf(outcome.expected),
              plusMinus: lengthOf(outcome.plusMinus),
            })),
          },
  };
}
