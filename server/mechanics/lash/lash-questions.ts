import { defined } from '../../../shared/defined.ts';
import { inSpoken } from '../../../shared/quantities/authored.ts';
import { EQUAL } from '../kit/nearest.ts';
import { feeler, feelersBetween } from '../kit/say-inches.ts';
import { ADJUSTER_WORDS, type AdjusterKind } from './adjuster-words.ts';
import type { LashGrowth, LashQuestion } from './types.ts';

/** From this many valves on, all of them growing is not one valve's own fault. */
export const MANY = 3;

const NOSE =
  'Lash is read on the base circle, where a worn nose never shows: measure that lobe’s lift against the others.';

/** A question of the part that sets the gap is the same one, whatever that part is called. */
const DID_IT_MOVE = `did the ${ADJUSTER_WORDS.stud.part} move`;

function askedOf(
  nut: LashGrowth['nut'],
  kind: AdjusterKind,
): { readonly ask: string; readonly test: string; readonly knownBy?: string } {
  const { part, wears, line, letGo, grew } = ADJUSTER_WORDS[kind];
  if (grew !== undefined) return grew;
  switch (nut) {
    case 'moved':
      return {
        ask: 'Did the lock let go?',
        test: `${letGo} Set it, lock it, and read it again: locking alone shifts about .001 in.`,
      };
    case 'held':
      return {
        ask: 'Is something wearing on this valve?',
        test: `the lock held and the gap grew. Look at ${wears}. ${NOSE}`,
      };
    case 'not-looked':
      return {
        ask: `Did the ${part} move?`,
        knownBy: DID_IT_MOVE,
        test: `before it is touched, draw a line over ${line}. Moved: the lock. Held and the gap grew: wear on this valve. ${NOSE}`,
      };
  }
}

function everywhere(grown: readonly LashGrowth[]): LashQuestion {
  const least = Math.min(...grown.map(({ low = 0 }) => low));
  return {
    code: 'lash-grew-everywhere',
    ask: 'Were all of them set and read in the same way, at the same heat?',
    size: `All ${grown.length} valves grew, by ${feeler(least)} at the least.`,
    test: 'all at once is not one part: look at the oil, and set one again step by step, on the base circle, at the heat it was read at.',
  };
}

function ofOne(growth: LashGrowth, limit: number, kind: AdjusterKind): LashQuestion[] {
  const { cylinder, valve, low, high, heatDiffers, nut } = growth;
  const at = { cylinder, valve };
  if (heatDiffers && growth.heatsSaid !== true)
    return [
      {
        ...at,
        code: 'lash-heat-unsaid',
        ask: 'Was the one of which the log has no heat read at the same heat as the other?',
        size: 'The log has the heat of one alone, so these two are not set against each other.',
        test: 'ask whoever read it whether the engine was cold or hot, and put that into the log.',
      },
    ];
  if (heatDiffers)
    return [
      {
        ...at,
        code: 'lash-heat-differs',
        ask: 'Was the one really read hot and the other cold, as the log has them?',
        size: 'The gap is another one when the engine is hot, so these two are not set against each other.',
        test: 'read it again at the heat it was set at.',
      },
    ];
  if (low !== undefined && low > limit + EQUAL)
    return [
      {
        ...at,
        code: 'lash-grew',
        ...defined({ knownBy: askedOf(nut, kind).knownBy }),
        ask: askedOf(nut, kind).ask,
        size: `It grew by ${feelersBetween(low, high)}, where ${feeler(limit)} is ordinary.`,
        test: inSpoken(askedOf(nut, kind).test),
      },
    ];
  return hasClosed(growth, limit) ? ofClosed(growth, limit, kind) : [];
}

/** It closed by more than is ordinary. */
export const hasClosed = ({ high }: LashGrowth, limit: number): boolean =>
  high !== undefined && high < -limit - EQUAL;

/** `It closed by .009 in, where .004 in is ordinary.` */
export const closedSaid = ({ high = 0 }: LashGrowth, limit: number): string =>
  `It closed by ${feeler(-high)}, where ${feeler(limit)} is ordinary.`;

/** What the log has is not asked: of both heats it has, and of the lock, only what nobody looked at. */
function ofClosed(growth: LashGrowth, limit: number, kind: AdjusterKind): LashQuestion[] {
  const { cylinder, valve, heatsSaid, nut } = growth;
  const { part, line } = ADJUSTER_WORDS[kind];
  const base = { cylinder, valve, size: closedSaid(growth, limit) };
  if (heatsSaid !== true)
    return [
      {
        ...base,
        code: 'lash-closed',
        ask: 'Was it set and read at the same heat?',
        test: 'read it again at the heat it was set at. If it has closed there too, the valve may be sinking into its seat: a qualified shop looks.',
      },
    ];
  // Where no lock can let go the gap closes by the seat alone.
  if (nut !== 'not-looked' || ADJUSTER_WORDS[kind].lets === 'nothing') return [];
  return [
    {
      ...base,
      code: 'lash-closed-nut',
      ask: `Did the ${part} move?`,
      knownBy: DID_IT_MOVE,
      test: `before it is touched, look at the line over ${line}. Moved: the lock. Held and the gap closed: the valve may be sinking into its seat, and a qualified shop looks.`,
    },
  ];
}

/** What the growths of a lash log raise: of each valve its own question, or one where all of them grew alike. */
export function lashQuestions(
  growths: readonly LashGrowth[],
  limit: number,
  kind: AdjusterKind,
): LashQuestion[] {
  const compared = growths.filter(({ low }) => low !== undefined);
  const grown = compared.filter(({ low = 0 }) => low > limit + EQUAL);
  if (grown.length >= MANY && grown.length === compared.length) {
    const others = growths.filter((growth) => growth.heatDiffers);
    return [everywhere(grown), ...others.flatMap((growth) => ofOne(growth, limit, kind))];
  }
  return growths.flatMap((growth) => ofOne(growth, limit, kind));
}

/** Valves whose gap grew again after it had been set again: those are not set once more. */
export const grewAgain = (growths: readonly LashGrowth[], limit: number): LashGrowth[] =>
  growths.filter(({ again, low }) => again && low !== undefined && low > limit + EQUAL);
