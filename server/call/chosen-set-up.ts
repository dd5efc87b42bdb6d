import type { SetUpRatio } from '../assessment/ratio/ratio.ts';
import type { CallContext } from './context.ts';

/** The set-up a ratio is taken from: the one asked for, else the newest light-spring one with a ratio, else any with one. */
export function chosenFor(
  { ratios }: Pick<CallContext, 'ratios'>,
  asked: string | undefined,
): SetUpRatio | undefined {
  const withRatio = ratios.filter((found) => found.result !== undefined);
  return (
    ratios.find((found) => found.setUp.id === asked) ??
    withRatio.findLast((found) => found.setUp.method.spring === 'light') ??
    withRatio.at(-1) ??
    ratios.at(-1)
  );
}

/** One set-up for the intakes and one for the exhausts, as far as there are any. */
export const chosenBySide = ({ ratios }: Pick<CallContext, 'ratios'>): SetUpRatio[] =>
  ['intake', 'exhaust'].flatMap((side) => {
    const chosen = chosenFor({ ratios: ratios.filter(({ setUp }) => setUp.valve === side) }, undefined);
    return chosen === undefined ? [] : [chosen];
  });
