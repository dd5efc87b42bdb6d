import type { SizeKind } from './kinds.ts';
import type { FeatureModel, SizeModel } from './model.ts';
import { sizeCurve } from './size-curve.ts';
import { excessOf } from './tools.ts';
import type { ReadSize } from './types.ts';

const EDGE = 1e-9;

/** Whether readings of one place speak of one size; coarse tools may be further apart. */
export const standTogether = (model: SizeModel, kind: SizeKind, readings: readonly ReadSize[]): boolean =>
  readings.every((one, index) =>
    readings
      .slice(index + 1)
      .every(
        (other) =>
          Math.abs(one.value - other.value) <=
          model.apart + excessOf(kind, one) + excessOf(kind, other) + EDGE,
      ),
  );

/**
 * How well the readings of one size fit a part made for `nominal`.
 *
 * Equation: readings that stand together: `sizeCurve` at the size; readings that do not: (1/n) sum of it for each
 * alone, since either may be the true one and their mean is the size of nothing. Factors that are the same for every
 * part are left out.
 *
 * @param model [in] the model of this kind of reading
 * @param kind what is read
 * @param readings [in] one or more, each above 0, with their tools
 * @returns a function of the size a part is made for, undefined when it is not known: the likelihood, 0 or more
 * Validity: a relative figure; only ratios between parts mean something.
 * Source: derived here.
 */
export function sizeLikelihood(
  model: SizeModel,
  kind: SizeKind,
  readings: readonly ReadSize[],
): (nominal: number | undefined) => number {
  if (standTogether(model, kind, readings)) return sizeCurve(model, kind, readings);
  const each = readings.map((read) => sizeCurve(model, kind, [read]));
  return (nominal) => each.reduce((sum, curve) => sum + curve(nominal), 0) / readings.length;
}

/**
 * Chance that `said` is said of a part that has `word`.
 *
 * Equation: 1 - misread if they are the same word, misread / (words - 1) otherwise; for a part that is not
 * known, the same summed over what it may have.
 *
 * @param model [1] chance of misreading and the words with their shares
 * @param word what the catalogue says; undefined when it does not
 * @param said what the person sees
 * @returns [1] 0 to 1
 * Validity: every wrong word is equally likely.
 * Source: derived here; the shares are judgement, no published source.
 */
export function featureChance(model: FeatureModel, word: string | undefined, said: string): number {
  if (word === undefined) {
    return model.unknown.reduce((sum, each) => sum + each.share * featureChance(model, each.word, said), 0);
  }
  return said === word ? 1 - model.misread : model.misread / (model.unknown.length - 1);
}
