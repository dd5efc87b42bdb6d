import { normalDensity } from '../explain-readings/normal.ts';
import type { FeatureModel, SizeModel } from './model.ts';
import { linesOf } from './spread-of-readings.ts';

/** Whether readings of one place speak of one size. */
export function standTogether(model: SizeModel, readings: readonly number[]): boolean {
  return Math.max(...readings) - Math.min(...readings) <= model.apart + 1e-9;
}

function density(model: SizeModel, nominal: number | undefined, reading: number, n: number): number {
  return linesOf(model, nominal, n).reduce(
    (sum, line) => sum + line.weight * normalDensity(reading - line.mean, line.spread),
    0,
  );
}

/**
 * How well the readings of one size fit a part made for `nominal`.
 *
 * Equation: readings that stand together: p(mean | size), the error of the place being common to them all;
 * readings that do not: (1/n) sum of p(reading_i | size), since either may be the true one and their mean is
 * the size of nothing. Factors that are the same for every part are left out.
 *
 * @param model [in] the model of this kind of reading
 * @param nominal [in] size the part is made for; undefined when it is not known
 * @param readings [in] one or more readings, each above 0
 * @returns the likelihood [1/in], 0 or more
 * Validity: a relative figure; only ratios between parts mean something.
 * Source: derived here.
 */
export function sizeLikelihood(
  model: SizeModel,
  nominal: number | undefined,
  readings: readonly number[],
): number {
  if (standTogether(model, readings)) {
    const mean = readings.reduce((sum, reading) => sum + reading, 0) / readings.length;
    return density(model, nominal, mean, readings.length);
  }
  return readings.reduce((sum, reading) => sum + density(model, nominal, reading, 1), 0) / readings.length;
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
