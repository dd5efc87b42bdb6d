import { planOf } from '../../../../shared/schemas/goals.ts';
import type { Headline } from '../assessment.ts';
import { lashSaid } from '../common/gap-said.ts';
import { lastKept } from '../common/kept.ts';
import { type LashDone, lashDone } from '../common/lash-done.ts';
import { listed, placeOf, withFigure } from '../common/said.ts';
import { hasShims } from '../common/shimmed.ts';
import type { Evidence } from '../evidence.ts';
import { turnMade } from '../workings/turn-made.ts';
import type { LashDetail, LashValveDetail } from './detail.ts';
import { nutHasMoved } from './nut-moved.ts';

/** More than so many are read off the log. */
const FEW = 4;

const LEADS: Readonly<Record<LashDone, string>> = {
  held: 'Set, and read again since',
  'as-asked': 'Found as the card asks, with no turn needed',
  ordinary: 'Changed since it was set by no more than is ordinary, with nothing to set',
};

const named = (valves: readonly LashValveDetail[]): string =>
  valves.length > FEW
    ? `${valves.length} valves`
    : listed(valves.map((valve) => withFigure(valve, lashSaid(valve.newest))));

/** Valves that a turn on record tells of are told with it. */
export function ofSum(evidence: Evidence): string[] {
  const sum = lastKept(evidence, 'turns');
  if (sum === undefined) return [];
  const { made, waiting } = turnMade(sum, evidence);
  return [...made, ...waiting].map(placeOf);
}

/**
 * The lash of the valves on which nothing is left to be turned: the answer of a call about adjusters.
 *
 * @param quiet valves of which nothing else is told
 */
export function asItIs(
  quiet: readonly LashValveDetail[],
  evidence: Evidence,
  limit: LashDetail['limit'],
): Headline[] {
  const { asks, logFirst } = planOf(evidence.call.goal);
  if (hasShims(evidence) || logFirst === true || !asks.includes('adjuster')) return [];
  const told = ofSum(evidence);
  // A lock that let go leaves something to do, however its gap was found.
  const left = quiet.filter((valve) => !told.includes(placeOf(valve)) && !nutHasMoved(valve, { limit }));
  return (['held', 'as-asked', 'ordinary'] as const).flatMap((how): Headline[] => {
    const own = left.filter((valve) => lashDone(evidence, valve) === how);
    if (own.length === 0) return [];
    return [
      {
        id: `headline:lash-as-it-is:${how}`,
        about: { of: 'build' },
        step: 'adjuster',
        sentence: `${LEADS[how]}: ${named(own)}.`,
      },
    ];
  });
}
