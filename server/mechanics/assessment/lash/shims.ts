import { defined } from '../../../../shared/defined.ts';
import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import { InputFaults } from '../../../../shared/problems/faults.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { computation as lashShim } from '../../computations/lash-shim.ts';
import { allowance, toolAllowance } from '../../kit/allowances.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { chooseShims, type ShimChosen } from '../../lash/choose-shims.ts';
import { endsOf } from '../../lash/growth.ts';
import type { AssessedQuantity, Headline, NotToRun } from '../assessment.ts';
import { foundTwice, WHICH_HOLDS } from '../common/found-twice.ts';
import { type Lack, toAnswer, toRead, toSay } from '../common/lack.ts';
import { isLashDoubted, LASH_UNLIKELY } from '../common/lash-doubt.ts';
import { lashLogOf } from '../common/lash-log-of.ts';
import { newestLash } from '../common/newest-lash.ts';
import type { NotSet } from '../common/not-set.ts';
import { byPlace, keyOf, placeOf, valveSubject } from '../common/said.ts';
import { hasShims } from '../common/shimmed.ts';
import { SIDES_SWAPPED, sidesSwapped } from '../common/sides-swapped.ts';
import type { Bounds, Evidence, LashEvidence, ValvePlace } from '../evidence.ts';
import type { ShimRow, ShimsDetail } from './detail.ts';
import { heldOpen, isShut, shimHeadlines, shimSentence } from './shim-said.ts';
import { fittedIn, stockLeft } from './stock-left.ts';

/** Something is looked at before its shim is worked out. */
export const LOOKED_FIRST = 'looked-first';

type Known = Omit<ShimRow, 'choice' | 'toHave' | 'beside' | 'sentence'>;

function lacksOf(
  newest: LashEvidence,
  evidence: Evidence,
  known: Pick<Known, 'fitted' | 'found' | 'wanted'>,
  notSet: readonly NotSet[],
): Lack[] {
  const { engine } = newest;
  const { card } = evidence;
  const { fitted, found, wanted } = known;
  const twice = foundTwice(evidence, newest)?.question;
  const sides = sidesSwapped(evidence);
  return [
    ...notSet
      .filter((each) => placeOf(each) === placeOf(newest))
      .map(({ first, settles }) => toSay(LOOKED_FIRST, first, settles)),
    ...(sides?.holds === true
      ? [toSay('which-gap', 'the lashes of the two sides, which stand for one another', SIDES_SWAPPED)]
      : []),
    ...(twice?.weight === 'strong' ? [toAnswer(twice, WHICH_HOLDS, 'which-gap')] : []),
    ...(isLashDoubted(evidence, newest)
      ? [toSay('read-wrong', 'whether its lash was read and entered right', LASH_UNLIKELY)]
      : []),
    ...(fitted === undefined ? [toRead('shim-fitted', 'the shim that is in, measured itself')] : []),
    ...(isCloseEnough(found)
      ? []
      : [toRead('gap-as-felt', 'the gap as one figure, or between closer feelers')]),
    // How far a valve is held open whose gap cannot be felt is not known.
    ...(isShut({ found }) ? [toRead('gap-measured', 'a gap that can be measured')] : []),
    ...(wanted === undefined ? [toSay('card-figure', 'the lash that is wanted, from the card')] : []),
    ...(engine === 'not-said' ? [toSay('heat-of-gap', 'whether the gap was read cold or hot')] : []),
    ...(card.lashAt === undefined
      ? [toSay('heat-of-card', 'whether the card’s lash is for a cold or a hot engine')]
      : []),
    ...(engine !== 'not-said' && card.lashAt !== undefined && engine !== card.lashAt
      ? [toRead('gap-at-heat', `the gap with the engine ${card.lashAt}, as the card’s lash is for`)]
      : []),
  ];
}

/** The gap to work with: its figure, or the middle of two feelers. */
function middleOf(found: Bounds): number | undefined {
  const { low, high } = endsOf(found);
  return low === undefined || high === undefined ? undefined : (low + high) / 2;
}

/** Half of what the gauges leave open. */
function halfOf(found: Bounds): number {
  const { low = 0, high = 0 } = endsOf(found);
  return (high - low) / 2;
}

/** A shim that is right for its middle leaves a lash that may stay, whatever its gauges leave open. */
const isCloseEnough = (found: Bounds): boolean =>
  middleOf(found) !== undefined && halfOf(found) <= allowance('lash-as-set') + EQUAL;

function shimOf({ fitted, found, wanted }: Pick<Known, 'fitted' | 'found' | 'wanted'>) {
  const middle = middleOf(found);
  if (fitted === undefined || middle === undefined || wanted === undefined) return {};
  try {
    const { shim } = lashShim.compute({ shimFitted: fitted, lashFound: middle, lashWanted: wanted });
    return { shim };
  } catch (error) {
    if (!(error instanceof InputFaults)) throw error;
    return {
      refused: toRead(
        'shim-of-none',
        'figures that go together: this lash would want a shim of no thickness',
      ),
    };
  }
}

function knownOf(evidence: Evidence, place: ValvePlace, notSet: readonly NotSet[]): Known[] {
  const lines = lashLogOf(evidence, place);
  const newest = foundTwice(evidence, place)?.holds ?? newestLash(evidence, place);
  if (newest === undefined) return [];
  const wanted = evidence.card[sideOfValve(place.valve)].lash;
  const figures = { found: newest.gap, ...defined({ fitted: fittedIn(lines), wanted }) };
  const { shim, refused } = shimOf(figures);
  const lacks = [...lacksOf(newest, evidence, figures, notSet), ...(refused === undefined ? [] : [refused])];
  return [
    {
      cylinder: place.cylinder,
      valve: place.valve,
      ...figures,
      lacks,
      entryId: newest.id,
      // While something is lacking no thickness is told on any face.
      ...defined({ shim: lacks.length > 0 ? undefined : shim }),
    },
  ];
}

/** The shim that each valve wants, as far off as the feeler is. */
const quantity = (
  { cylinder, valve, shim, found, lacks, entryId }: ShimRow,
  { engine: { gear } }: Evidence,
): AssessedQuantity[] => {
  if (shim === undefined || lacks.length > 0) return [];
  const off = toolAllowance('feeler') + halfOf(found);
  const about = valveSubject({ cylinder, valve });
  return [
    {
      id: `shim:${keyOf(about)}`,
      name: 'Lash shim wanted',
      about,
      dimension: 'length',
      value: shim,
      low: shim - off,
      high: shim + off,
      basis: 'calculated',
      conditions: [gear === 'bucket' ? 'bucket with a shim' : 'shim over the stem'],
      lacks: [],
      restsOn: [entryId],
    },
  ];
};

/** As near to what is wanted as is left, whatever its feelers leave open. */
function isRight({ found, wanted, lacks }: Known, within: number): boolean {
  const middle = middleOf(found);
  if (middle === undefined || wanted === undefined || lacks.length > 0) return false;
  return Math.abs(middle - wanted) + halfOf(found) <= within + EQUAL;
}

/** What goes in; where that leaves the lash out of what is allowed, what is to be had first. */
function choiceOf(
  { shim, wanted, found }: Known,
  chosen: ShimChosen | undefined,
  places: readonly ValvePlace[],
  within: number,
): Pick<ShimRow, 'choice' | 'toHave'> {
  if (shim === undefined || wanted === undefined) return {};
  if (chosen === undefined) return { toHave: shim };
  const { from, lash } = chosen;
  const giver = typeof from === 'number' ? places[from] : undefined;
  const half = halfOf(found);
  // As good as what is wanted to whatever its feelers tell, it is no reason to order another.
  const isAsGood = Math.abs(chosen.shim - shim) <= half + EQUAL;
  const misses = !isAsGood && Math.abs(lash - wanted) + half > within + EQUAL;
  return {
    choice: {
      shim: chosen.shim,
      lash,
      ...(half > EQUAL ? { between: { low: lash - half, high: lash + half } } : {}),
      from: typeof from === 'number' ? 'valve' : from,
      ...(giver === undefined ? {} : { fromValve: { cylinder: giver.cylinder, valve: giver.valve } }),
    },
    ...(misses ? { toHave: shim } : {}),
  };
}

/** The stock on both sides of what is wanted, for whoever weighs one of them against waiting. */
function besideOf(
  { fitted, found, shim }: Known,
  { toHave }: Pick<ShimRow, 'toHave'>,
  stock: readonly number[],
): Pick<ShimRow, 'beside'> {
  const middle = middleOf(found);
  if (toHave === undefined || shim === undefined || fitted === undefined || middle === undefined) return {};
  const all = fitted + middle;
  const thinner = stock.filter((each) => each <= shim);
  const thicker = stock.filter((each) => each > shim && all - each > EQUAL);
  const next = [
    ...(thinner.length === 0 ? [] : [Math.max(...thinner)]),
    ...(thicker.length === 0 ? [] : [Math.min(...thicker)]),
  ];
  return next.length === 0 ? {} : { beside: next.map((each) => ({ shim: each, lash: all - each })) };
}

/**
 * The shim of every valve in the lash log whose gap a shim sets, out of those that are there together.
 *
 * @param evidence everything on the record, in SI
 * @param notSet valves that nobody sets yet: no shim is told of them
 * @returns a row for each valve that has a lash, the quantities of those that are complete, what is told first of them,
 * and the valves that may be held open
 *
 * Validity: solid buckets with a shim over or under, solid followers with one over the stem; the gap read on the base circle.
 * Source: `lash-shim` and `chooseShims`; a lash left as it is within its allowance, see the seeds.
 */
export function shimsOf(
  evidence: Evidence,
  notSet: readonly NotSet[],
): {
  readonly detail: ShimsDetail;
  readonly quantities: readonly AssessedQuantity[];
  readonly headlines: readonly Headline[];
  readonly notToRun: readonly NotToRun[];
} {
  const stock = stockLeft(evidence);
  const within = allowance('lash-as-set');
  if (!hasShims(evidence) || isHydraulicLifter(evidence.engine.lifter))
    return { detail: { within, rows: [] }, quantities: [], headlines: [], notToRun: [] };
  const standing = evidence.lash.filter((line) => line.standing).toSorted(byPlace);
  const places = [...new Map(standing.map((line) => [placeOf(line), line])).values()];
  const all = places.flatMap((place) => knownOf(evidence, place, notSet));
  const complete = all.filter(({ lacks }) => lacks.length === 0);
  const wants = complete.flatMap(({ fitted, found, wanted }) => {
    const middle = middleOf(found);
    return fitted === undefined || middle === undefined || wanted === undefined
      ? []
      : [{ fitted, found: middle, wanted }];
  });
  const chosen = chooseShims(wants, stock, within);
  const choices = all.map((known) => {
    const at = complete.indexOf(known);
    const choice = choiceOf(known, at < 0 ? undefined : chosen[at], complete, within);
    return { ...known, ...choice, ...(at < 0 ? {} : besideOf(known, choice, stock)) };
  });
  const rows = choices.map((known): ShimRow => {
    const to = choices.find(
      ({ choice, toHave }) =>
        toHave === undefined &&
        choice?.fromValve !== undefined &&
        placeOf(choice.fromValve) === placeOf(known),
    );
    const row = {
      ...known,
      ...(isRight(known, within) ? { right: true as const } : {}),
      ...(to === undefined ? {} : { givesTo: { cylinder: to.cylinder, valve: to.valve } }),
    };
    return { ...row, sentence: shimSentence(row, (evidence.engine.shimStock ?? []).length > 0) };
  });
  return {
    detail: { within, rows },
    quantities: rows.flatMap((row) => quantity(row, evidence)),
    headlines: shimHeadlines(rows),
    notToRun: rows.flatMap(heldOpen),
  };
}
