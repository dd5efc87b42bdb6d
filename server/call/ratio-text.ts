import { type IntervalFigures, ratioFigures } from '../../shared/quantities/format.ts';
import { RATIO_NAMES } from '../mechanics/assessment/common/said.ts';
import type { Spring } from '../mechanics/assessment/evidence.ts';
import type { RatioResult } from '../mechanics/assessment/ratio/read/detail.ts';

/** The two ratios are two quantities with two names. */
export const ratioName = (spring: Spring): string => RATIO_NAMES[spring];

/** `1.757`, `.006`, and both in one: digits no finer than the uncertainty. */
export function ratioFigure(
  result: Pick<RatioResult, 'ratio' | 'coverageFactor' | 'standardUncertainty'>,
): IntervalFigures & { readonly text: string } {
  const figures = ratioFigures(result.ratio, result.coverageFactor * result.standardUncertainty);
  return { ...figures, text: `${figures.value} ± ${figures.spread}` };
}
