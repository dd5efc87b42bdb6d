import { DEFAULT_ASSUMPTIONS } from '../../../explain-readings/assumptions.ts';
import { chancesText } from '../../../explain-readings/words.ts';
import { nominalSaid } from '../../common/said.ts';
import { ORDINARY } from '../compared/bands.ts';
import type { ExplanationResult } from '../compared/explanation.ts';
import { asRead, type RatioRead } from '../compared/reading.ts';
import { awaySaid, percentAway } from './ratio-said.ts';

const LEAST_CHANCE = 0.05;

/** An arm is ordinary within this of its name: one further from the ratio is far off, and not offered. */
const isNear = (ratio: number, name: number): boolean => Math.abs(ratio - name) <= ORDINARY * name;

/** Names that the arm may have, likeliest first, each with a chance worth saying; far-off ones are not offered. */
export function namesLeft(
  { nominals, remaining, ratio }: ExplanationResult,
  read?: Pick<RatioRead, 'value'>,
) {
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

/** Below this no name is told at all: the ratio stands alone, and the names stay in their table. */
const LEAST_TOLD = 0.25;
/** Beside one that is no likelier than all others together, the next is told from this on. */
const LEAST_BESIDE = 0.15;

const isAgainst = (name: number, inHand: ArmsInHand | undefined): boolean =>
  inHand !== undefined && (name < inHand.low || name > inHand.high);

/** The names that are told without a mark: one, or the first two where neither is likelier than all others together. */
export function toldOf(result: ExplanationResult, read: Pick<RatioRead, 'value'>) {
  const [first, second] = namesLeft(result, read);
  if (first === undefined || first.probability < LEAST_TOLD) return [];
  if (first.probability >= DEFAULT_ASSUMPTIONS.nameTold) return [first];
  return second === undefined || second.probability < LEAST_BESIDE ? [] : [first, second];
}

/** Whether any name is given: never from one pass, nor against the lengths of the arm itself. */
export const givesName = (
  result: ExplanationResult,
  read: RatioRead,
  inHand: ArmsInHand | undefined,
): boolean => {
  const told = toldOf(result, read);
  return read.once === undefined && told.length > 0 && !told.some(({ ratio }) => isAgainst(ratio, inHand));
};

/**
 * The ratio without a mark, with the name that it has: never from one pass, nor below the chance from which a name is
 * told, nor against the lengths of the arm itself. Where neighbours of a long list are all near, the first two are told.
 */
export function nameTold(result: ExplanationResult, read: RatioRead, inHand: ArmsInHand | undefined): string {
  const start = asRead(read);
  if (namesLeft(result, read).length === 0) return `${start}: no name of the list fits well.`;
  if (read.once !== undefined) return `${start}. No name is given from so little.`;
  const told = toldOf(result, read);
  const [first] = told;
  if (first === undefined) return `${start}. No name is likely enough to be given yet.`;
  const against = told.find(({ ratio }) => isAgainst(ratio, inHand));
  if (inHand !== undefined && against !== undefined)
    return `${start}. No name is given: the lengths of the arm itself make it ${inHand.said}, which is no ${nominalSaid(against.ratio)}. Measure both lengths once more.`;
  const chances = chancesText(told.map(({ probability }) => probability));
  const names = told.map(
    ({ ratio }, index) => `a ${nominalSaid(ratio)}${running(read, ratio)}, ${chances[index] ?? ''}`,
  );
  return names.length === 1
    ? `${start}: ${names[0]}.`
    : `${start}: ${names.join(', or ')}. The part number tells which.`;
}
