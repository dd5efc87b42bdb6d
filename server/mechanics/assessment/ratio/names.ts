import { chancesText } from '../../explain-readings/words.ts';
import { nominalSaid } from '../common/said.ts';
import { ORDINARY } from './bands.ts';
import type { ExplanationResult } from './explanation.ts';
import { awaySaid, percentAway } from './ratio-said.ts';
import type { RatioRead } from './reading.ts';

const LEAST_CHANCE = 0.05;
/** Where the names that are near carry less than this, it is said what the rest of the chance is for. */
const MOST_OF_IT = 0.8;

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

/** Where the reading is told beside it, how far off the name it is. */
function nameSaid(name: number, read: RatioRead | undefined): string {
  const running =
    read === undefined || percentAway(read.value, name) <= 1 ? '' : ` running ${awaySaid(read.value, name)}`;
  return `a ${nominalSaid(name)}${running}`;
}

/** `a 1.65, about 75 %; or a 1.6 running 3 % over, about 20 %` */
export function namesSaid(result: ExplanationResult, read?: RatioRead): string {
  const names = namesLeft(result, read);
  if (names.length === 0) return 'no name of the list fits well';
  const chances = names.map(({ probability }) => probability);
  const texts = chancesText(chances);
  const said = names.map(({ ratio }, index) => `${nameSaid(ratio, read)}, ${texts[index]}`).join('; or ');
  const told = chances.reduce((sum, chance) => sum + chance, 0);
  return read === undefined || told >= MOST_OF_IT
    ? said
    : `${said}; anything else would need a mistake in the reading`;
}
