import { DEFAULT_ASSUMPTIONS } from '../../../explain-readings/assumptions.ts';
import { needsSentence } from '../../../explain-readings/needs.ts';
import type { Cause } from '../../../explain-readings/types.ts';
import { intervalIsTight } from '../../../explain-readings/verdicts.ts';
import type { ExplanationResult } from './explanation.ts';
import type { SetUpKnown } from './known.ts';
import { restingOn } from './lacking.ts';
import { isRuledOut } from './word.ts';

type Explanations = ExplanationResult['explanations'];

const OF_COUNT: readonly Cause[] = ['turn-too-many', 'turn-too-few', 'hand-read-backwards'];

/**
 * Mistakes that another set-up of this arm may have had, and that the one a word rests on was read without: lash out,
 * plunger parallel, small hand read.
 */
function putRight(known: readonly SetUpKnown[]): readonly Cause[] {
  const resting = restingOn({ known });
  if (resting === undefined || resting.lacks.length > 0) return [];
  const others = known.filter((each) => each !== resting && each.read.valve.used.length > 0);
  const { lash, alignment } = resting.read.setUp;
  const isCounted = ({ read, counted }: SetUpKnown) => read.valve.used.every(({ id }) => counted.has(id));
  return [
    ...(lash === 'zero' && others.some(({ read }) => read.setUp.lash !== 'zero')
      ? ['lash-left-in' as const]
      : []),
    ...(alignment === 'parallel' && others.some(({ read }) => read.setUp.alignment !== 'parallel')
      ? ['plunger-tilted' as const]
      : []),
    ...(isCounted(resting) && !others.every(isCounted) ? OF_COUNT : []),
  ];
}

/** Explanations of the readings that stand, those that have become one told once. */
function asOne(explanations: Explanations): Explanations {
  const keyOf = ({ nominal, causes, entry }: Explanations[number]) =>
    JSON.stringify([nominal, causes, causes.length === 0 ? undefined : entry]);
  const all = new Map<string, Explanations[number]>();
  for (const each of explanations) {
    const there = all.get(keyOf(each));
    all.set(
      keyOf(each),
      there === undefined ? each : { ...there, probability: there.probability + each.probability },
    );
  }
  return [...all.values()].sort((a, b) => b.probability - a.probability);
}

function differsNow(result: ExplanationResult, mark: number | undefined, noMistake: number): boolean {
  return (
    mark !== undefined &&
    result.againstMark === 'cannot-tell' &&
    noMistake >= DEFAULT_ASSUMPTIONS.noMistakeSettled &&
    isRuledOut({ result }, { ratio: mark })
  );
}

/**
 * What was weighed, told of the readings that stand. A mistake of readings that were taken again without it is none of
 * theirs: it stays in the weights, and no explanation, doubt or next reading is made of it any more.
 *
 * @param mark what the arm is held to be, as the inference was told
 */
export function asReadAgain(
  result: ExplanationResult,
  known: readonly SetUpKnown[],
  mark: number | undefined,
): ExplanationResult {
  const past = new Set(putRight(known));
  const isPast = ({ nominal, causes }: Explanations[number]) =>
    nominal !== undefined && causes.length > 0 && causes.every((cause) => past.has(cause));
  const now = result.explanations.filter(isPast);
  if (now.length === 0) return result;
  const noMistake = Math.min(
    1,
    result.noMistake + now.reduce((sum, { probability }) => sum + probability, 0),
  );
  const explanations = asOne(
    result.explanations.map((each) =>
      isPast(each)
        ? { ...each, causes: [], entry: undefined, needs: needsSentence(each.nominal, each.ratio, []) }
        : each,
    ),
  );
  const { nameSettled, intervalSettled, noMistakeSettled } = DEFAULT_ASSUMPTIONS;
  const settled =
    noMistake >= noMistakeSettled &&
    result.nominals.some(({ probability }) => probability >= nameSettled) &&
    intervalIsTight(result.ratio, intervalSettled);
  return {
    ...result,
    explanations,
    noMistake,
    ...(differsNow(result, mark, noMistake) ? { againstMark: 'differs' as const } : {}),
    settled: result.settled || settled,
    nextReading: settled ? undefined : result.nextReading,
  };
}
