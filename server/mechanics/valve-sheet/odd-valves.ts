import { defined } from '../../../shared/defined.ts';
import { sideOfValve } from '../../../shared/schemas/words.ts';
import { allowance } from '../kit/allowances.ts';
import { EQUAL } from '../kit/nearest.ts';
import { lowOrHigh } from '../kit/say-inches.ts';
import { lobesApart, lobesDown } from './lobes-down.ts';
import { haveMiddle, medianKnown, offSiblings, standOut } from './siblings.ts';
import type { OddCause, OddValve, SheetValve, SideJudged } from './types.ts';

/**
 * Whether the lobe or the rocker is the odd one.
 *
 * Equation: rest = valve off − r·lobe off; lobe when |lobe off| > repeat and |rest| ≤ repeat·(1 + r); rocker or
 * position when |lobe off| ≤ repeat and |rest| > repeat·(1 + r); both when both are past; else it can't be told
 *
 * Source: rule as trade practice has it (lobe low: cam or lifter; lobe alike: rocker or position), the passes of each
 * reading agreeing within .002 in, common practice, no published source; the sum derived here.
 */
function causeOf(valveOff: number, lobeOff: number | undefined, ratio: number): OddCause {
  if (lobeOff === undefined) return 'measure-lobe';
  const repeat = allowance('repeat') + EQUAL;
  const lobeDiffers = Math.abs(lobeOff) > repeat;
  const restDiffers = Math.abs(valveOff - ratio * lobeOff) > repeat * (1 + ratio);
  if (lobeDiffers) return restDiffers ? 'both' : 'lobe';
  return restDiffers ? 'rocker-or-position' : 'cannot-tell';
}

function wordsOf(cause: OddCause, valveOff: number | undefined, lobeOff: number | undefined): string {
  const valve = valveOff === undefined ? '' : `Valve lift ${lowOrHigh(valveOff)}`;
  const lobe = lobeOff === undefined ? '' : `lobe ${lowOrHigh(lobeOff)}`;
  const said: Readonly<Record<OddCause, string>> = {
    lobe: `${valve === '' ? 'The' : `${valve}, and the`} ${lobe} accounts for it: cam or lifter, not the rocker.`,
    'rocker-or-position': `${valve} on a lobe like the others’: the rocker or its position.`,
    both: `${valve}; the ${lobe} is part of it, but not all: lobe, and rocker or position.`,
    'measure-lobe': `${valve}: read its lobe first; no part has to move for that.`,
    'cannot-tell': `${valve}: within what repeats give. Read lobe and valve again, three passes.`,
  };
  return said[cause];
}

function oddOf(
  valve: SheetValve,
  off: { readonly valve: number | undefined; readonly lobe: number | undefined; readonly outlier: boolean },
  ratio: number,
): OddValve | undefined {
  const limit = allowance('odd-beyond') + EQUAL;
  const valveOdd = off.valve !== undefined && Math.abs(off.valve) > limit;
  const lobeOdd = off.lobe !== undefined && Math.abs(off.lobe) * ratio > limit;
  if (!valveOdd && !(lobeOdd && off.valve === undefined)) return undefined;
  const cause = off.valve === undefined ? 'lobe' : causeOf(off.valve, off.lobe, ratio);
  return {
    cylinder: valve.cylinder,
    valve: valve.valve,
    ...defined({ valveOff: off.valve, lobeOff: off.lobe }),
    outlier: off.outlier,
    cause,
    words: wordsOf(cause, off.valve, off.lobe),
  };
}

const ratioOf = ({ lobeLift, valveLift }: SheetValve): number | undefined =>
  lobeLift === undefined || valveLift === undefined ? undefined : valveLift / lobeLift;

/** By how much a lobe is under its card, where that is the wear limit or more. */
function underCard(lobe: number | undefined, card: number | undefined): number | undefined {
  if (lobe === undefined || card === undefined) return undefined;
  return lobe - card <= -allowance('lobe-down') + EQUAL ? lobe - card : undefined;
}

/**
 * How far lifts lie apart from which nobody can say which is off: two that differ, or more of which no half goes together;
 * nothing where they have a middle.
 */
function liftsApart(lifts: readonly (number | undefined)[]): number | undefined {
  const known = lifts.filter((lift) => lift !== undefined);
  const limit = allowance('odd-beyond');
  if (known.length < 2 || haveMiddle(known, limit)) return undefined;
  const apart = Math.max(...known) - Math.min(...known);
  return apart > limit + EQUAL ? apart : undefined;
}

/** A lobe that is off by what would make its valve odd, under a valve that is not: one of the two may be misread. */
function unlike(
  { cylinder, valve }: SheetValve,
  off: { readonly valve: number | undefined; readonly lobe: number | undefined },
  ratio: number,
): SideJudged['lobesUnlike'] {
  const limit = allowance('odd-beyond') + EQUAL;
  const { lobe } = off;
  if (lobe === undefined || off.valve === undefined) return [];
  // Within what passes repeat it is like the others, whatever ratio the rows come to.
  if (Math.abs(lobe) <= allowance('repeat') + EQUAL) return [];
  return Math.abs(lobe) * ratio > limit && Math.abs(off.valve) <= limit
    ? [{ cylinder, valve, off: lobe }]
    : [];
}

/** Where no valve has both lifts, a lobe counts at the valve by about this much. */
const USUAL_RATIO = 1.6;

/**
 * Sets the valves of one side against each other: intakes with intakes, exhausts with exhausts, all on one spring.
 *
 * Equation: odd when |valve lift − median of all that were read| > .008 in, where half of them lie that near to it; outlier by median and MAD, score past 3.5
 *
 * @param side [1] whose valves
 * @param valves [m] what was read of each; those of the other side are left alone
 * @param cardLobe [m] the lobe of the card: where too few lobes were read to compare, one that is worn against it counts
 *
 * Validity: three or more valves of the side; lobes ground alike.
 * Source: common practice, no published source; outliers: B. Iglewicz, D. Hoaglin, 1993.
 */
export function judgeSide(
  side: 'intake' | 'exhaust',
  valves: readonly SheetValve[],
  cardLobe?: number,
): SideJudged {
  const own = valves.filter((valve) => sideOfValve(valve.valve) === side);
  const lobes = own.map((valve) => valve.lobeLift);
  const lifts = own.map((valve) => valve.valveLift);
  const ratio = medianKnown(own.map(ratioOf));
  const [liftOff, out] = [offSiblings(lifts), standOut(lifts)];
  const lobeOff = offSiblings(lobes).map(
    (off, index) => off ?? (liftOff[index] === undefined ? undefined : underCard(lobes[index], cardLobe)),
  );
  const apart = liftsApart(lifts);
  const halved = lobesApart(own);
  const odd = own.flatMap((valve, index) => {
    // With no middle none of them is off from it.
    if (apart !== undefined && valve.valveLift !== undefined) return [];
    const found = oddOf(
      valve,
      { valve: liftOff[index], lobe: lobeOff[index], outlier: out[index] ?? false },
      ratio ?? USUAL_RATIO,
    );
    return found === undefined ? [] : [found];
  });
  const lobesUnlike = own.flatMap((valve, index) =>
    apart === undefined && halved === undefined
      ? unlike(valve, { valve: liftOff[index], lobe: lobeOff[index] }, ratio ?? USUAL_RATIO)
      : [],
  );
  const [lobeLift, valveLift] = [medianKnown(lobes), medianKnown(lifts)];
  return {
    side,
    medians: {
      ...defined({ lobeLift, valveLift, ratio }),
    },
    odd,
    ...defined({ apart }),
    lobesUnlike,
    ...defined({ lobesApart: halved }),
    lobesDown: lobesDown(own),
  };
}
