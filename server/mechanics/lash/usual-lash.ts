import table from '../../../seeds/setting.json' with { type: 'json' };
import { isHydraulicLifter } from '../../../shared/lifters.ts';
import { EQUAL } from '../kit/nearest.ts';
import { saidLength } from '../kit/said.ts';
import { IN } from '../kit/si.ts';

const { lash, lashWindow } = table;

/** A set or found gap that is not what the card or the usual band has; lengths in metres. */
interface SetLash {
  readonly low: number;
  readonly high: number;
  readonly engine: 'not-said' | 'cold' | 'hot';
  readonly lifter: 'solid-flat' | 'solid-roller' | 'hydraulic-flat' | 'hydraulic-roller' | undefined;
  readonly card: number | undefined;
  /** The heat that the card’s is for. */
  readonly cardAt?: 'cold' | 'hot' | undefined;
  /** What the metals make of the card’s figure at that heat: as it is printed, and how much more any gap is at its heat. */
  readonly byMetals?: { readonly printed: number | undefined; readonly toCard: number };
}

interface UnusualLash {
  readonly testAtBench?: string;
  readonly code: 'lash-unusual' | 'lash-on-hydraulic';
  readonly ask: string;
  readonly size: string;
  readonly test: string;
}

const gapSaid = ({ low, high }: Pick<SetLash, 'low' | 'high'>): string =>
  high - low <= EQUAL ? saidLength(low) : `${saidLength(low)} to ${saidLength(high)}`;

/** The most lash that such a lifter usually has; of one that nobody named, of any. */
export const mostLash = (lifter: SetLash['lifter']): number =>
  (lifter === 'solid-roller'
    ? lash['solid-roller'].to
    : Math.max(lash['solid-flat'].to, lash['solid-roller'].to)) * IN;

/** Cold, another metal's growth may be in it: the widest that is printed for one. */
const windowFor = (engine: SetLash['engine']): number =>
  (lashWindow.hot + (engine === 'hot' ? 0 : lashWindow.heat)) * IN;

/** The card’s figure; by the metals, with what the gap becomes at the heat of the card. */
function againstCard({ low, high, engine, byMetals }: SetLash, card: number): string {
  if (byMetals?.printed === undefined) return `the card has ${saidLength(card)}`;
  const [at, other] = [engine, engine === 'hot' ? 'cold' : 'hot'];
  const becomes = gapSaid({ low: low + byMetals.toCard, high: high + byMetals.toCard });
  return `by the metals ${saidLength(byMetals.printed)} ${other} is about ${saidLength(card)} ${at}, so this becomes about ${becomes} ${other}`;
}

/**
 * Whether a lash that a valve was set to is what is asked for: the card's first, else the usual band of its lifter.
 *
 * Equation: outside where low > most + window or high < least − window
 *
 * @param lash [m] the gap set, the heat it was set at, the lifter, and the card's lash where it has one
 * @returns what is asked of it; nothing where it fits, or nothing is known to set it against
 *
 * Validity: on the base circle; one card for all valves of a side.
 * Source: bands and window by common practice and trade press, in the settings table with their sources.
 */
export function unusualLash(set: SetLash): UnusualLash | undefined {
  const { low, high, engine, lifter, card, cardAt } = set;
  if (isHydraulicLifter(lifter)) {
    if (low <= EQUAL) return undefined;
    return {
      code: 'lash-on-hydraulic',
      ask: 'Are these solid lifters after all, or had the plunger bled down?',
      size: `A hydraulic lifter has preload and no gap; ${gapSaid(set)} was set.`,
      test: 'look into a lifter for its clip and plunger; then say what is in it, and the preload in turns from zero.',
    };
  }
  if (card !== undefined && cardAt !== undefined && engine !== 'not-said' && engine !== cardAt)
    return {
      code: 'lash-unusual',
      ask: `Was it meant to be set ${engine}, with the card’s lash for a ${cardAt} engine?`,
      size: `Set to ${gapSaid(set)}, ${engine}; the card has ${saidLength(card)}, ${cardAt}: the metals move the gap between the two.`,
      test: `Ask the cam’s maker for its ${engine} figure, or work it out by the metals. Then have the gap read again ${cardAt}.`,
      testAtBench: `Ask for the ${engine} figure of the cam’s maker. Then read the gap again ${cardAt}.`,
    };
  const band =
    lifter === undefined ? undefined : lash[lifter === 'solid-flat' ? 'solid-flat' : 'solid-roller'];
  const [from, to] =
    card === undefined ? (band === undefined ? [] : [band.from * IN, band.to * IN]) : [card, card];
  if (from === undefined || to === undefined) return undefined;
  const window =
    card === undefined
      ? windowFor(engine) - lashWindow.hot * IN
      : windowFor(set.byMetals === undefined ? engine : 'hot');
  if (low <= to + window + EQUAL && high >= from - window - EQUAL) return undefined;
  const against =
    card === undefined
      ? `${saidLength(from)} to ${saidLength(to)} is usual for this lifter, hot (${band?.source ?? ''})`
      : againstCard(set, card);
  return {
    code: 'lash-unusual',
    ask: 'Is this the lash that the cam’s maker asks for, at this heat?',
    size: `Set to ${gapSaid(set)}${engine === 'not-said' ? ', hot or cold not said' : `, ${engine}`}; ${against}.`,
    test: 'Ask for the card, whether its lash is hot or cold, and of which valve. Then have the gap read again.',
    testAtBench: 'Look at the card: is its lash hot or cold, and of which valve? Then read the gap again.',
  };
}
