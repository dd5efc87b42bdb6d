import { DEFAULT_ASSUMPTIONS } from '../../explain-readings/assumptions.ts';
import { chancesText } from '../../explain-readings/words.ts';
import { nominalSaid } from '../common/said.ts';
import { ORDINARY } from './bands.ts';
import type { ExplanationResult } from './explanation.ts';
import { awaySaid, percentAway } from './ratio-said.ts';
import { asRead, type RatioRead } from './reading.ts';

const LEAST_CHANCE = 0.05;

/** An arm is ordinary within this of its name: one further from the ratio is far off, and not offered. */
const isNear = (ratio: number, name: number): boolean => Math.abs(ratio - name) <= ORDINARY * name;

/** Names that the arm may have, likeliest first, each with a chance worth saying; far-off ones are not offered. */
export function namesLeft({ nominals, remaining, ratio }: ExplanationResult, read?: RatioRead) {
  const value = read?.value ?? ratio.median;
  return nominals
    .filter(({ ratio: name, probability }) => remaining.includes(name) && probability >= LEAST_CHANCE)
    .filter(({ ratio: name }) => isNear(value, name))
    .toSorted((a, b) => b.probability - a.probability || a.ratio - b.ratio);
}

/** `a 1.65, about 75 %; or a 1.6, about 20 %` */
export function namesSaid(result: ExplanationResult): string {
  const names = namesLeft(result);
  if (names.length === 0) return 'no name of the list fits well';
  const texts = chancesText(names.map(({ probability }) => probability));
  return names.map(({ ratio }, index) => `a ${nominalSaid(ratio)}, ${texts[index]}`).join('; or ');
}

/** How far off the name it is, where that is more than a per cent. */
const running = ({ value }: RatioRead, name: number): string =>
  percentAway(value, name) <= 1 ? '' : ` running ${awaySaid(value, name)}`;

/** What measuring the arm itself leaves for its ratio. */
export interface ArmsInHand {
  readonly low: number;
  readonly high: number;
  /** `about 1.50, 1.47 to 1.53` */
  readonly said: string;
}

/**
 * The ratio without a mark, with the name that it has: never from one pass, nor below the chance from which a name is
 * told, nor against the lengths of the arm itself. The others are in the table.
 */
export function nameTold(result: ExplanationResult, read: RatioRead, inHand: ArmsInHand | undefined): string {
  const [first] = namesLeft(result, read);
  const start = asRead(read);
  if (first === undefined) return `${start}: no name of the list fits well.`;
  if (read.once !== undefined) return `${start}. No name is given from so little.`;
  const { ratio, probability } = first;
  if (probability < DEFAULT_ASSUMPTIONS.nameTold)
    return `${start}. No name is likely enough to be given yet.`;
  if (inHand !== undefined && (ratio < inHand.low || ratio > inHand.high))
    return `${start}. No name is given: the lengths of the arm itself make it ${inHand.said}, which is no ${nominalSaid(ratio)}. Measure both lengths once more.`;
  return `${start}: a ${nominalSaid(ratio)}${running(read, ratio)}, ${chancesText([probability])[0]}.`;
}
