import { formatQuantity } from '../../../shared/quantities/format.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import { isMeasured, PART_TOOLS, type PartTool } from '../../../shared/schemas/part-words.ts';
import { IN } from '../kit/si.ts';
import { pitchShare, toolMeant, toolWithin } from './tools.ts';

/** How a size was read; lengths in metres. */
interface ReadHow {
  readonly kind: string;
  readonly size: number;
  readonly tool?: PartTool;
  /** The half-width that was typed. */
  readonly typedWithin?: number;
  /** Threads that the length goes over. */
  readonly count?: number;
}

/**
 * How far off a reading of a loose part may be, half-width: as typed, else as its tool may be. Of a pitch that is
 * given as a pitch it is a share of the pitch; one that was counted over a length is off by what the length is.
 *
 * @param read [m] what was read, and how
 * @returns [m] of the length as it was read, above 0
 * Source: the table of tools, common practice, no published source.
 */
export function halfWidthOf({ kind, size, tool, typedWithin, count }: ReadHow): number {
  if (typedWithin !== undefined) return typedWithin;
  if (kind === 'stud-pitch' && count === undefined) return pitchShare(tool) * size;
  return toolWithin(kind, tool) * IN;
}

const FINEST = 4;
const halfWidthSaid = (si: number): string =>
  formatQuantity({ value: Number(fromSi(si, 'in').value.toFixed(FINEST)), unit: 'in' });

/** `by caliper, ± .002 in`; a guess is called one, and a tool that nobody said is not made up. */
export function howRead(read: ReadHow): string {
  if (!isMeasured(read.kind)) return '';
  const within = `± ${halfWidthSaid(halfWidthOf(read))}`;
  if (read.tool === 'guess') return `a guess, ${within}`;
  if (read.tool !== undefined && read.tool !== 'not-said')
    return `by ${PART_TOOLS[read.tool].toLowerCase().replace(' or tape', '')}, ${within}`;
  if (read.typedWithin !== undefined) return `tool not said, ${within}`;
  return `tool not said, ${within} as by ${PART_TOOLS[toolMeant(read.tool)].toLowerCase()}`;
}
