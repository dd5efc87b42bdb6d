import type { Case } from './case.ts';
import { isSinking } from './questions.ts';
import type { ExplainResult } from './types.ts';
import { awayText, chanceText, nameText, orList, ratioText } from './words.ts';

type Judged = Pick<
  ExplainResult,
  'ratio' | 'remaining' | 'nominals' | 'notListed' | 'somethingElse' | 'settled' | 'nextReading'
>;

function namesPart(result: Judged): string {
  const { median } = result.ratio;
  if (result.notListed > 0.5) return 'a ratio that is not listed';
  const byNearness = [...result.remaining].sort((a, b) => Math.abs(a - median) - Math.abs(b - median));
  const said = byNearness.map((name) => `a ${nameText(name)}${awayText(median, name)}`);
  const [only] = result.remaining;
  if (result.remaining.length === 1 && only !== undefined) {
    const chance = result.nominals.find(({ ratio }) => ratio === only)?.probability ?? 0;
    return `${said[0] ?? ''}, ${chanceText(chance)}`;
  }
  return `${orList(said)}; the part number can tell`;
}

/** Said last, where the name is open and no reading would settle it. */
const NO_MORE_TELLS = "More readings won't tell.";

/** Ratio first, name second, in one line; then what else has to be said. */
export function summarise(given: Case, result: Judged): string {
  const [low, high] = result.ratio.interval95;
  const sentences = [
    `${ratioText(result.ratio.median)}, between ${ratioText(low)} and ${ratioText(high)}: ${namesPart(result)}.`,
  ];
  if (isSinking(given)) sentences.push('The lifter is sinking.');
  if (result.somethingElse >= given.assumed.somethingElseAsks) sentences.push('None fits well.');
  if (!result.settled && result.nextReading === undefined) sentences.push(NO_MORE_TELLS);
  return sentences.join(' ');
}
