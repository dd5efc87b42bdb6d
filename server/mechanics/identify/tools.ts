import table from '../../../seeds/part-tools.json' with { type: 'json' };
import { isPartTool, type PartTool } from '../../../shared/schemas/part-words.ts';
import type { SizeKind } from './kinds.ts';
import type { ErrorLine, SizeModel } from './model.ts';
import type { ReadSize } from './types.ts';

type Use = 'outside' | 'inside' | 'centres';

const USES: Readonly<Record<string, Use>> = {
  'hole-across-trunnion': 'inside',
  'pivot-to-tip': 'centres',
  'pivot-to-cup': 'centres',
};

const ASSUMED: PartTool = isPartTool(table.notSaid) ? table.notSaid : 'caliper';

/** The tool that a reading counts as taken with: one that was not said as the table has it. */
export const toolMeant = (tool: PartTool | undefined): Exclude<PartTool, 'not-said'> => {
  const meant = tool === undefined || tool === 'not-said' ? ASSUMED : tool;
  return meant === 'not-said' ? 'caliper' : meant;
};

/** How far off a reading of this kind may be with this tool, half-width [in]. */
export const toolWithin = (kind: string, tool: PartTool | undefined): number =>
  table.tools[toolMeant(tool)][USES[kind] ?? 'outside'];

/** The same for a pitch that is given as a pitch, as a share of it. */
export const pitchShare = (tool: PartTool | undefined): number => table.tools[toolMeant(tool)].pitchShare;

export const withinOf = (kind: SizeKind, { tool, within }: ReadSize): number =>
  within ?? toolWithin(kind, tool);

/** How much further off than a caliper a reading may be [in]; 0 for one that is as good or better. */
export const excessOf = (kind: SizeKind, read: ReadSize): number =>
  Math.max(0, withinOf(kind, read) - toolWithin(kind, 'caliper'));

/** A part differs from its drawing too: a finer tool leaves no less than this share of the caliper's spread. */
const OF_THE_PART = 0.5;

/**
 * The ways in which a reading by some tool goes wrong, from those of a caliper.
 *
 * Equation: spread² = max(s² − u_c², (s/2)²) + u², u = within/√3 and u_c that of a caliper, s the caliper's spread;
 * bias less what inside jaws give, where the tool has none. A reading by caliper keeps s and its bias.
 *
 * @param model [in] errors of a caliper for this kind
 * @param kind what is read
 * @param read [in] tool and how far off it may be, half-width
 * @returns the error lines [in]
 * Validity: anywhere within the half-width alike, and the tool's error independent of the part's.
 * Source: JCGM 100:2008, 4.3.7 and 5.1.2; the share that is the part's own is judgement, no published source.
 */
export function errorsBy(model: SizeModel, kind: SizeKind, read: ReadSize): readonly ErrorLine[] {
  const own = withinOf(kind, read) / Math.sqrt(3);
  const caliper = toolWithin(kind, 'caliper') / Math.sqrt(3);
  const jaws = toolMeant(read.tool) === 'caliper' ? 0 : (model.jawBias ?? 0);
  if (own === caliper && jaws === 0) return model.errors;
  return model.errors.map(({ share, bias, spread }) => ({
    share,
    bias: bias - jaws,
    spread: Math.sqrt(Math.max(spread ** 2 - caliper ** 2, (OF_THE_PART * spread) ** 2) + own ** 2),
  }));
}
