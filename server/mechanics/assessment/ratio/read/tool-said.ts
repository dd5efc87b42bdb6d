import { LIFT_TOOLS, type LiftTool } from '../../../../../shared/schemas/words.ts';
import { isDial, isLobeTool, liftWithin, lobeWithin } from '../../../kit/lift-tools.ts';
import { inches } from '../../common/said.ts';
import type { RatioResult } from './detail.ts';
import type { SetUpRead } from './set-up-read.ts';

/** Two ratios that callers ask to have told apart. */
const [ONE, OTHER] = [1.5, 1.6];
/** Two-sided 95 % of the normal. */
const NORMAL_95 = 1.959963984540054;

const GUESS = 'A guess is kept as a guess: no word rests on it until the lift is read with a tool.';

const bare = (width: number): string => (Math.ceil(width * 100 - 1e-9) / 100).toFixed(2).replace(/^0/, '');

/** How near to each other names could be told apart if lobe and valve were both read with a finer tool. */
function finerSaid(tool: LiftTool, ratio: number, lobe: number | undefined): string {
  if (lobe === undefined || lobe <= 0) return '';
  const coarse = tool === 'rule' || tool === 'guess';
  const [valve, cam] = coarse
    ? [liftWithin('caliper'), lobeWithin('depth-bar')]
    : [liftWithin('indicator'), lobeWithin('indicator')];
  const width = (2 * NORMAL_95 * Math.hypot(valve, ratio * cam)) / Math.sqrt(3) / lobe;
  const by = coarse ? 'A caliper’s depth bar' : 'A dial indicator';
  return `${by} on lobe and valve would bring that to ${bare(width)}.`;
}

/**
 * What a lift read without an indicator can tell, and what it cannot.
 *
 * Equation: names nearer to each other than the interval is wide cannot be told apart; lift between two names = their
 * difference × lobe lift; width with a finer tool = 2·1.96·√(v² + R²c²)/(√3·lobe)
 *
 * @param read the set-up with what was read in it
 * @param result [1] its ratio with the 95 % interval
 * @returns sentences; none where it was read with a dial
 *
 * Validity: as that of the interval, which carries the tool’s own limit.
 * Source: derived here from the interval.
 */
export function toolSaid({ setUp, lobe }: SetUpRead, result: RatioResult): string[] {
  const { tool = 'indicator' } = setUp;
  const wide = !isDial(tool) || isLobeTool(setUp.lobeSource);
  if (!wide) return [];
  const [low, high] = result.interval95;
  const said = bare(high - low);
  const apart = (OTHER - ONE) * (lobe.value ?? 0);
  const told =
    high - low < OTHER - ONE ? 'so that it can tell these two apart' : 'and it cannot tell these two apart';
  const finer = finerSaid(tool, result.ratio, lobe.value);
  return [
    ...(tool === 'guess' || setUp.lobeSource === 'guess' ? [GUESS] : []),
    `${LIFT_TOOLS[tool]}, within ${inches(setUp.errorLimit)}: names of a ratio nearer to each other than ${said} cannot be told apart by this. On this lobe ${ONE} and ${OTHER} are ${inches(apart)} of valve lift apart, ${told}. ${finer}`.trim(),
  ];
}
