import table from '../../../seeds/part-tools.json' with { type: 'json' };
import { inSpoken } from '../../../shared/quantities/authored.ts';
import { keysOf, LIFT_TOOLS, type LiftTool, LOBE_SOURCES } from '../../../shared/schemas/words.ts';
import { IN } from './si.ts';

export type LobeSource = keyof typeof LOBE_SOURCES;

/** How far off a lift at the valve may be with this tool, half-width [m]. */
export const liftWithin = (tool: LiftTool): number => table.lifts.valve[tool].within * IN;

/** The same of a lobe lift, by where it comes from. */
export const lobeWithin = (source: LobeSource): number => table.lifts.lobe[source].within * IN;

/** With the places that the table gives it. */
const limit = ({ within }: { readonly within: number }): string =>
  inSpoken(`${String(within).replace(/^0/, '')} in`);

/** `Dial indicator .0025 in, rule .016 in`: what counts where no limit is entered. */
export const liftLimitsSaid = (): string =>
  keysOf(LIFT_TOOLS)
    .map((tool) => `${LIFT_TOOLS[tool].toLowerCase()} ${limit(table.lifts.valve[tool])}`)
    .join(', ');

export const lobeLimitsSaid = (): string =>
  keysOf(LOBE_SOURCES)
    .map((source) => `${LOBE_SOURCES[source].toLowerCase()} ${limit(table.lifts.lobe[source])}`)
    .join(', ');

/** Read without a dial: nothing turns, and no plunger leans. */
export const isDial = (tool: LiftTool | undefined): boolean => tool === undefined || tool === 'indicator';

/** A lobe lift whose error is its tool’s, and neither a dial’s nor a card’s. */
export const isLobeTool = (source: LobeSource): boolean =>
  source === 'depth-bar' || source === 'feeler' || source === 'rule' || source === 'guess';
