import { formatNumber } from '../../../../shared/quantities/format.ts';
import type { Action } from '../../explain-readings/types.ts';
import { chanceText } from '../../explain-readings/words.ts';
import { nominalSaid } from '../common/said.ts';
import type { ExplanationResult } from './explanation.ts';

/** A wide interval carries no third place. */
const WIDE = 0.0995;

/** `1.655`: three places as the trade writes a ratio, two where the interval is too wide to carry them. */
export function ratioWithin(ratio: number, halfWidth: number): string {
  return formatNumber(Number(ratio.toPrecision(12)), halfWidth >= WIDE ? 2 : 3);
}

/** `1.655, between 1.602 and 1.666` */
export function intervalSaid({ ratio: { median, interval95 } }: ExplanationResult): string {
  const [low, high] = interval95;
  const half = (high - low) / 2;
  return `${ratioWithin(median, half)}, between ${ratioWithin(low, half)} and ${ratioWithin(high, half)}`;
}

/** Each next reading as the sentence that asks for it. */
export const ASK: Readonly<Record<Action, string>> = {
  'read-back': 'Read the entries back: which valve is it, and is it lobe lift or valve lift?',
  'one-more-pass': 'Take one more pass, small hand first, and say which way the hand ran.',
  'lash-to-zero': 'Take the lash up to zero and read again.',
  'align-plunger': 'Set the plunger parallel to the stem, seen from front and side, and read again.',
  'valve-lift-at-.200': 'Turn to .200 in of lobe lift and read the valve there.',
  'lobe-at-lifter': 'Read the lobe lift at the lifter body.',
  'light-spring-solid-lifter':
    'Fit a light checking spring and a solid lifter, set the dial up again, and read.',
  'rocker-on-another-valve': 'Move this rocker to another valve and read it there.',
};

/** Said in place of a reading that would take turning the engine under a stop. */
export const NOT_NOW = 'No reading is taken while the stop stands.';

/** What would tell, where the readings cannot. */
export function wouldTell(result: ExplanationResult, stopped: boolean): string {
  const next = result.nextReading;
  if (stopped) return NOT_NOW;
  return next === undefined
    ? 'More readings won’t tell; the part number can.'
    : `What would tell: ${ASK[next.action].charAt(0).toLowerCase()}${ASK[next.action].slice(1)}`;
}

/** An arm is ordinary within this of its name: beyond it a name is far off, and not offered. */
export const ORDINARY = 0.045;
const LEAST_CHANCE = 0.05;

/** Names that the arm may have, likeliest first, each with a chance worth saying; far-off ones are not offered. */
export function namesLeft({ nominals, remaining, ratio }: ExplanationResult) {
  const [low, high] = ratio.interval95;
  return nominals
    .filter(({ ratio: name, probability }) => remaining.includes(name) && probability >= LEAST_CHANCE)
    .filter(({ ratio: name }) => name * (1 - ORDINARY) <= high && name * (1 + ORDINARY) >= low)
    .toSorted((a, b) => b.probability - a.probability || a.ratio - b.ratio);
}

const percent = (share: number): number => Math.round(Math.abs(share) * 100);

/** `3 % over`; `level with` within half a per cent. */
export function awaySaid(ratio: number, name: number): string {
  const share = ratio / name - 1;
  return percent(share) === 0 ? 'level with' : `${percent(share)} % ${share > 0 ? 'over' : 'under'}`;
}

function nameSaid(median: number, { ratio, probability }: { ratio: number; probability: number }): string {
  const share = median / ratio - 1;
  const running = percent(share) <= 1 ? '' : ` running ${awaySaid(median, ratio)}`;
  return `a ${nominalSaid(ratio)}${running}, ${chanceText(probability)}`;
}

/** `a 1.65, about 75 %; or a 1.6 running 3 % over, about 20 %` */
export function namesSaid(result: ExplanationResult): string {
  const names = namesLeft(result).map((name) => nameSaid(result.ratio.median, name));
  return names.length === 0 ? 'no name of the list fits well' : names.join('; or ');
}
