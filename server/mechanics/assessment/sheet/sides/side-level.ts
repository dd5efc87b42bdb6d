import { defined } from '../../../../../shared/defined.ts';
import { isHydraulicLifter } from '../../../../../shared/lifters.ts';
import { keysOf, sideOfValve } from '../../../../../shared/schemas/words.ts';
import { SIDES } from '../../../../../shared/sides.ts';
import { allowance } from '../../../kit/allowances.ts';
import { medianKnown } from '../../../valve-sheet/siblings.ts';
import { placeOf } from '../../common/said.ts';
import type { Evidence, LifterState, Side, Spring } from '../../evidence.ts';
import { sinkingNeeds } from '../../gaps/sinks.ts';
import type { Claim } from '../../ratio/claims/marks.ts';
import { type Band, bandsOf, ORDINARY } from '../../ratio/compared/bands.ts';
import { isTooCoarse, liftHalf } from '../../ratio/read/dial.ts';
import { claimOfRow } from '../rows/claim-of-row.ts';
import type { SheetRatioDetail, SheetSideDetail } from '../rows/detail.ts';
import { type HowMany, howMany, isOfEngine } from '../rows/how-many.ts';
import type { LiftLot, SheetRow } from '../rows/rows.ts';
import { isLashOut } from './group-answered.ts';

/** Fewer valves than this have no middle worth the name. */
const FEWEST = 3;

/** `count`: the valves whose lifts make the level. */
export interface Level extends HowMany {
  readonly side: Side;
  readonly spring: Spring;
  /** Of these, the ones that are told as odd. */
  readonly odd?: number;
  /** How far the farthest is from the middle of its siblings [m]. */
  readonly farthest: number;
  /** Middle lift [m]. */
  readonly lifts: number;
  /** Some were read on a lifter that may sink. */
  readonly sinks: boolean;
  /** How the lash was, where that was said of all of them. */
  readonly lash?: 'zero' | 'set';
  /** All of them were read on hydraulic lifters, said so or of the engine: no lash is left in. */
  readonly hydraulic: boolean;
  /** The lash was out, as was answered of those that had it in at first. */
  readonly lashOut: boolean;
  /** The lobe under each was read, not taken from the card. */
  readonly lobeRead: boolean;
  /** What is said of it beside the ratio, where nobody said what they are: the set it may be. */
  readonly named?: string;
  /** Middle ratio of them with its interval; left out where no lobe is known. */
  readonly ratio?: { readonly value: number; readonly low: number; readonly high: number };
  readonly claim?: Claim;
  /** The lash was left in, and the card has one: that, and the middle ratio with it put back. */
  readonly back?: { readonly lash: number; readonly ratio: number };
  /** Where that stands to what they all are held to be; more than one: across an edge. */
  readonly bands: readonly Band[];
  readonly restsOn: readonly string[];
}

/** What all of these arms are held to be; nothing where they are held to be several things. */
function claimOf(evidence: Evidence, rows: readonly SheetRow[], spring: Spring): Claim | undefined {
  const first = rows.map((row) => claimOfRow(evidence, row, spring));
  const [one] = first;
  if (one === undefined || first.some((each) => each?.ratio !== one.ratio)) return undefined;
  const sold = first.flatMap((each) => (each?.to === 'sold-as' ? [each] : []));
  // When it was, is said where it is so of all that are held to what they are sold as.
  return {
    to: sold.length === 0 ? 'mark' : 'sold-as',
    ratio: one.ratio,
    ...(sold.length > 0 && sold.every(({ wasThen }) => wasThen === true) ? { wasThen: true } : {}),
    ...(sold.length > 0 && sold.every(({ isPlanned }) => isPlanned === true) ? { isPlanned: true } : {}),
  };
}

/** As it was said with the reading, else as the engine’s lifters are. */
const mayHaveSunk = (lifter: LifterState, { engine }: Evidence): boolean =>
  lifter === 'hydraulic' || (lifter === 'not-said' && isHydraulicLifter(engine.lifter));

const middle = (values: readonly (number | undefined)[]): number => medianKnown(values) ?? 0;

function middleRatio(ratios: readonly SheetRatioDetail[]): Level['ratio'] {
  if (ratios.length < FEWEST) return undefined;
  return {
    value: middle(ratios.map(({ value }) => value)),
    low: middle(ratios.map(({ low }) => low)),
    high: middle(ratios.map(({ high }) => high)),
  };
}

/** As it was said of each of them. */
function lashOf([first, ...others]: readonly LiftLot[]): Level['lash'] {
  return others.every(({ lash }) => lash === first?.lash) ? first?.lash : undefined;
}

/** With the card’s lash put back, which is what was missing from each lift. */
function putBack({ card }: Evidence, side: Side, lift: number, ratio: Level['ratio']): Level['back'] {
  const { lash } = card[side];
  if (lash === undefined || lash <= 0 || ratio === undefined || lift <= 0) return undefined;
  return { lash, ratio: (ratio.value * (lift + lash)) / lift };
}

/** How all valves of a side stand together, as read on one spring; rows in doubt stay out of it. */
export function levelOf(
  evidence: Evidence,
  { side, spring }: Pick<SheetSideDetail, 'side' | 'spring'>,
  rows: readonly SheetRow[],
  ratios: readonly SheetRatioDetail[],
): Level | undefined {
  const read = rows.flatMap((row) => {
    const lot = row.lifts.find((each) => each.spring === spring);
    const value = lot?.figure.value;
    if (sideOfValve(row.valve) !== sideOfValve(side) || lot === undefined || value === undefined) return [];
    return isTooCoarse(lot.readings) || !isOfEngine(evidence, row)
      ? []
      : [{ row, value, lot, readings: lot.readings }];
  });
  if (read.length < FEWEST) return undefined;
  const lift = middle(read.map(({ value }) => value));
  const places = new Set(read.map(({ row }) => placeOf(row)));
  const own = ratios.filter(
    (each) => each.spring === spring && places.has(placeOf(each)) && each.value !== undefined,
  );
  const ratio = middleRatio(own);
  const claim = claimOf(
    evidence,
    read.map(({ row }) => row),
    spring,
  );
  const lash = lashOf(read.map(({ lot }) => lot));
  return {
    side: sideOfValve(side),
    spring,
    count: read.length,
    ...howMany(evidence, sideOfValve(side), 'valve-lift', spring),
    farthest: Math.max(...read.map(({ value }) => Math.abs(value - lift))),
    lifts: lift,
    sinks: read.some(({ readings }) => readings.some((each) => sinkingNeeds(each, evidence).length > 0)),
    ...defined({
      lash,
      back: lash === 'set' ? putBack(evidence, sideOfValve(side), lift, ratio) : undefined,
    }),
    hydraulic: read.every(({ readings }) => readings.every(({ lifter }) => mayHaveSunk(lifter, evidence))),
    lashOut: isLashOut(evidence, sideOfValve(side), spring),
    lobeRead: own.every(({ lobeFrom }) => lobeFrom === 'read'),
    ...(ratio === undefined ? {} : { ratio }),
    ...(claim === undefined ? {} : { claim }),
    bands: ratio === undefined || claim === undefined ? [] : bandsOf(claim.ratio, ratio.low, ratio.high),
    restsOn: read.flatMap(({ readings }) => readings.map(({ id }) => id)).sort(),
  };
}

/** Loaded ratios lie as far under as flex makes them, on stiff springs more than ordinary (common practice, no published source). */
const FLEX = 2 * ORDINARY;

/** They are read again at zero lash before a word stands on them. */
export const isLashIn = ({ hydraulic, lash }: Pick<Level, 'hydraulic' | 'lash'>): boolean =>
  !hydraulic && lash === 'set';

/** With the card’s lash put back they would be off all the same. */
const isOffWithLash = ({ back, ratio, claim }: Level): boolean => {
  if (back === undefined || ratio === undefined || claim === undefined) return false;
  const by = back.ratio / ratio.value;
  const bands = bandsOf(claim.ratio, ratio.low * by, ratio.high * by);
  return bands.every((band) => band === 'far-under' || band === 'far-over');
};

/** No one arm makes it: the whole side is farther off what it is held to be than its spring and its make explain. */
export function isOff(level: Level): boolean {
  const { ratio, claim, bands, spring } = level;
  if (ratio === undefined || claim === undefined || spring === 'not-said') return false;
  // Short by the lash that was left in, they are off by nothing yet: they are read again at zero.
  if (isLashIn(level) && ratio.value < claim.ratio && !isOffWithLash(level)) return false;
  if (spring === 'running')
    return ratio.high < claim.ratio * (1 - FLEX) || ratio.low > claim.ratio * (1 + ORDINARY);
  return bands.every((band) => band === 'far-under' || band === 'far-over' || band === 'under');
}

export interface LobeLevel extends HowMany {
  readonly side: Side;
  readonly lobe: number;
  readonly card: number;
  readonly restsOn: readonly string[];
}

/** Lobes of a side that all lie off the card alike, by more than card and tool explain. */
export const lobesOffCard = (evidence: Evidence, rows: readonly SheetRow[]): LobeLevel[] =>
  SIDES.flatMap((side) => {
    const card = evidence.card[side].lobeLift;
    const own = rows.filter(
      ({ cylinder, valve, lobe, lobes }) =>
        sideOfValve(valve) === side &&
        lobe?.value !== undefined &&
        isOfEngine(evidence, { cylinder, valve }) &&
        lobes.every(({ tool }) => tool !== 'caliper'),
    );
    const readings = own.flatMap(({ lobes }) => lobes);
    if (card === undefined || own.length < FEWEST || isTooCoarse(readings)) return [];
    const lobe = middle(own.map((row) => row.lobe?.value));
    const allowed = allowance('card-lobe') + liftHalf(evidence, readings);
    const alike = own.filter((row) => Math.abs((row.lobe?.value ?? 0) - lobe) <= allowed);
    if (Math.abs(lobe - card) <= allowed || 2 * alike.length <= own.length) return [];
    const many = { count: own.length, ...howMany(evidence, side, 'lobe-lift') };
    return [{ side, ...many, lobe, card, restsOn: readings.map(({ id }) => id).sort() }];
  });

export const sidesOf = (levels: readonly Level[]): readonly [Level, Level][] =>
  keysOf({ light: '', running: '' }).flatMap((spring): [Level, Level][] => {
    const [intake, exhaust] = SIDES.map((side) =>
      levels.find((each) => each.side === side && each.spring === spring),
    );
    return intake === undefined || exhaust === undefined ? [] : [[intake, exhaust]];
  });
