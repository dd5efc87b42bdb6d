import { allowance } from '../kit/allowances.ts';
import { EQUAL } from '../kit/nearest.ts';
import type { LashGrowth, LashLine } from './types.ts';

const less = (a: number | undefined, b: number | undefined): number | undefined =>
  a === undefined || b === undefined ? undefined : a - b;

/** What a found gap is set against: the last setting before it; where it was never set, the first it was found at. */
function baseOf(earlier: readonly LashLine[]): LashLine | undefined {
  return earlier.findLast(({ moment }) => moment === 'set') ?? earlier[0];
}

/** A gap: one figure, or as far as gauges leave it open. */
interface Gap {
  readonly value?: number | undefined;
  readonly low?: number | undefined;
  readonly high?: number | undefined;
}

/** The least and the most of it; an end that no gauge gave is left out. */
export const endsOf = ({ value, low = value, high = value }: Gap) => ({ low, high });

/** The least and the most by which a gap changed: an end that is open bounds nothing. */
export function changeBetween(found: Gap, base: Gap): Pick<LashGrowth, 'low' | 'high'> {
  const [now, then] = [endsOf(found), endsOf(base)];
  return { low: less(now.low, then.high), high: less(now.high, then.low) };
}

const overBy = (found: LashLine, base: LashLine) => changeBetween(found.gap, base.gap);

/** Read at one heat, and somebody said at which. */
export const isOneHeat = (one: Pick<LashLine, 'engine'>, other: Pick<LashLine, 'engine'>): boolean =>
  one.engine === other.engine && one.engine !== 'not-said';

/** The change is within so much either way, whatever its gauges leave open. */
export const isWithin = ({ low, high }: Pick<LashGrowth, 'low' | 'high'>, limit: number): boolean =>
  low !== undefined && high !== undefined && low >= -limit - EQUAL && high <= limit + EQUAL;

/** What its lock did, as far as anybody has looked since it was set: not looking once more undoes nothing. */
const nutOf = (since: readonly LashLine[]): LashLine['nut'] =>
  since.findLast(({ nut }) => nut !== 'not-looked')?.nut ?? 'not-looked';

/** By how much a gap found before the last setting had itself grown since the setting before; the most, where over the limit. */
function grewBefore(earlier: readonly LashLine[], limit: number): number | undefined {
  const lastSet = earlier.findLastIndex(({ moment }) => moment === 'set');
  const grown = earlier.slice(0, Math.max(0, lastSet)).flatMap((line, index) => {
    const base = line.moment === 'found' ? baseOf(earlier.slice(0, index)) : undefined;
    const low = base === undefined || base.engine !== line.engine ? undefined : overBy(line, base).low;
    return low !== undefined && low > limit + EQUAL ? [low] : [];
  });
  return grown.length === 0 ? undefined : Math.max(...grown);
}

/**
 * What became of each valve's gap: the newest one found, less the last setting before it.
 *
 * Equation: growth = gap found − gap set; between gauges the least and the most of it
 *
 * @param lines [m] the log, oldest first
 * @param limit [m] growth that counts, for whether it grew before
 * @returns one growth for each valve whose newest line is a gap found after an earlier line
 *
 * Validity: both read on the base circle, in the same state of heat.
 * Source: common practice, no published source.
 */
export function lashGrowths(lines: readonly LashLine[], limit: number): LashGrowth[] {
  const valves = [...new Set(lines.map(({ cylinder, valve }) => `${cylinder} ${valve}`))];
  return valves.flatMap((name): LashGrowth[] => {
    const own = lines.filter(({ cylinder, valve }) => `${cylinder} ${valve}` === name);
    const at = own.findLastIndex(({ moment }) => moment === 'found');
    const found = own[at];
    const base = baseOf(own.slice(0, Math.max(0, at)));
    if (found === undefined || base === undefined) return [];
    const heatDiffers = found.engine !== base.engine;
    const before = grewBefore(own.slice(0, at), limit);
    return [
      {
        cylinder: found.cylinder,
        valve: found.valve,
        ...(heatDiffers ? {} : overBy(found, base)),
        nut: nutOf(own.slice(own.indexOf(base) + 1, at + 1)),
        heatDiffers,
        ...(found.engine === 'not-said' || base.engine === 'not-said' ? {} : { heatsSaid: true as const }),
        again: before !== undefined,
        ...(before === undefined ? {} : { before }),
      },
    ];
  });
}

/** What may be told of a growth: a gap that changed by no more than the steps of the feelers may have grown or not. */
export const GROWTHS_TOLD = ['not-compared', 'held', 'cannot-tell', 'grew', 'closed'] as const;
export type GrowthTold = (typeof GROWTHS_TOLD)[number];

/**
 * Whether a gap grew, closed or held, as far as feelers tell: each figure is the last gauge that went in.
 *
 * Source: the step of the feelers is `lash-as-set` of the table of allowances.
 */
export function growthTold({ low, high, heatDiffers }: LashGrowth): GrowthTold {
  const step = allowance('lash-as-set') + EQUAL;
  if (heatDiffers || (low === undefined && high === undefined)) return 'not-compared';
  if (low !== undefined && low > step) return 'grew';
  if (high !== undefined && high < -step) return 'closed';
  const same = low !== undefined && high !== undefined && Math.max(Math.abs(low), Math.abs(high)) < step / 2;
  return same ? 'held' : 'cannot-tell';
}
