import { formatRatioInterval } from '../../shared/quantities/format.ts';
import type { SetUpRatio } from '../assessment/ratio/ratio.ts';

type Result = NonNullable<SetUpRatio['result']>;

const NAMES: Readonly<Record<string, string>> = {
  light: 'Light-spring ratio',
  running: 'Running-spring ratio',
};

/** The two ratios are two quantities with two names. */
export const ratioName = (spring: string): string => NAMES[spring] ?? 'Ratio, spring not said';

/** `1.757`, `.006`, and both in one: digits no finer than the uncertainty. */
export function ratioFigure(result: Result): { value: string; spread: string; text: string } {
  const text = formatRatioInterval(result.ratio, result.coverageFactor * result.standardUncertainty);
  const [value = text, spread = ''] = text.split(' ± ');
  return { value, spread, text };
}

/** `1.75`: a nominal as the trade writes it. */
export const nominalText = (nominal: number): string =>
  Number.isInteger(nominal * 100) || nominal.toFixed(2) === String(nominal)
    ? nominal.toFixed(2)
    : String(nominal);
