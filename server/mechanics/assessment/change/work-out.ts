import { defined } from '../../../../shared/defined.ts';
import { planOf } from '../../../../shared/schemas/goals.ts';
import { assumptionsOf } from '../../consequences/assumptions.ts';
import { movedScan } from '../../consequences/piston-gap.ts';
import { nestSaid } from '../../springs/nested.ts';
import { firstSaid } from '../common/first-said.ts';
import { keyOf, listed, nominalSaid, placeOf, subjectSaid } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { gapCells } from '../sheet/cells.ts';
import type { SheetRow } from '../sheet/rows.ts';
import { isWithPlan } from './arms-of-gaps.ts';
import { checksOf, notCalculated } from './checks.ts';
import type { ChangeDetail, ChangeFigure, ChangeGap } from './detail.ts';
import { figureQuantities, figuresOf } from './figures.ts';
import type { GapCalculations } from './gap-calculations.ts';
import { gapsOf } from './gaps.ts';
import type { ValveRatio } from './input.ts';
import { knownInput, lashInForce } from './known.ts';
import { planKey } from './plans.ts';
import { type PushrodPair, pushrodRead, readWith } from './pushrod-read-with.ts';
import { type BeforeAndAfter, beforeAndAfter, isOfPlan, nominalNow } from './ratios.ts';
import { type ReadAlike, readAlike, worstOfAll } from './read-alike.ts';
import type { Spot } from './spots.ts';
import { bendOf, variantsOf } from './spread.ts';
import { cardsRatio } from './stated-ratios.ts';
import { todayOf } from './today.ts';
import type { Worked } from './told-once.ts';
import type { GapsAsked } from './worked-gap.ts';

export interface PlannedSpot {
  readonly seen: Evidence;
  readonly spot: Spot;
  readonly plan: number | undefined;
}

/** Where the two ratios are from, with what their intervals allow. */
const sourcesSaid = ({ before, after }: BeforeAndAfter): string[] => [
  ...(before === undefined ? [] : [`the ratio before: ${before.source}`]),
  ...(after === undefined ? [] : [`the ratio after: ${after.source}`]),
];

/** Of gaps that were read with arms of several ratios: what each is worked out from. */
const waysSaid = (ways: readonly ReadAlike[]): string[] => {
  const sold = ways.flatMap(({ soldAs }) => (soldAs === undefined ? [] : [nominalSaid(soldAs)]));
  return ways.length < 2
    ? []
    : [`a gap that was read with arms of ${listed(sold)} is worked out from what its own arms were sold as`];
};

/** Each of two springs by itself, at the lift after. */
function ofNest({ springs: { nest } }: Evidence, figures: readonly ChangeFigure[]): string[] {
  const lift = figures.find(({ name }) => name === 'net-lift')?.after?.value;
  return nest === undefined || lift === undefined ? [] : nestSaid(nest, lift);
}

/** A ratio that was read and is no ground for a figure yet: what comes first. */
const withheldSaid = ({ withheld, about }: Spot): string[] =>
  withheld
    .slice(0, 1)
    .map(
      ({ lacks }) =>
        `The ratio read on ${subjectSaid(about)} is not calculated with yet. ${firstSaid(lacks)}`,
    );

/** What was read with the arms of one plan says nothing of another. */
const rowWith = (row: SheetRow, plan: number | undefined, evidence: Evidence): SheetRow => ({
  ...row,
  others: row.others.filter((entry) => isWithPlan(entry, plan, evidence)),
});

/** Gaps that were read with other arms, by what those were sold as; with arms of several none is the one before. */
function readOn(evidence: Evidence, { place }: Spot) {
  const ways = readAlike(evidence, place);
  const [own = { before: [] }] = ways.length === 1 ? ways : [];
  return { ways, own };
}

/** What is known of the arms that pushrod to head may have been read with. */
export function armsKnown({ seen, spot, plan }: PlannedSpot) {
  const { side, place } = spot;
  const { soldAs } = readOn(seen, spot).own;
  return {
    side,
    plan,
    ...beforeAndAfter(seen, side, spot.ratios, plan, defined({ place, soldThen: soldAs })),
    ...defined({ nominal: nominalNow(seen, place), card: cardsRatio(seen, side) }),
  };
}

interface OfAllSpots {
  readonly calculations: GapCalculations;
  readonly read: readonly ValveRatio[];
  readonly pairs: readonly PushrodPair[];
}

/** The two ratios of a spot, and what is known beside them, where gaps were read with arms of that kind. */
function inputOf({ seen, spot, plan }: PlannedSpot, { before, soldAs }: ReadAlike) {
  const { side, place, lobeLift } = spot;
  return {
    ratios: beforeAndAfter(seen, side, spot.ratios, plan, defined({ place, soldThen: soldAs })),
    known: knownInput(seen, { side, ...(place && { place }), ...(lobeLift && { lobeLift }), before }),
  };
}

/** Gaps of that valve that the sheet tells, with whatever arms they were read. */
const toldBySheet = ({ seen, spot: { row, place } }: PlannedSpot): ReadonlySet<string> =>
  new Set(
    [
      ...(row?.others ?? []),
      ...seen.sheet.filter(
        (each) => each.otherArms !== undefined && place !== undefined && placeOf(each) === placeOf(place),
      ),
    ].map(({ kind }) => kind),
  );

/** What its gaps are asked with, however they were read. */
function askedOf(
  { seen, spot, plan }: PlannedSpot,
  { calculations, read }: Pick<OfAllSpots, 'calculations' | 'read'>,
): Omit<GapsAsked, 'before' | 'bend' | 'pushrod' | 'after' | 'told'> {
  return {
    evidence: seen,
    calculations,
    about: spot.about,
    planKey: planKey(seen, plan),
    isFirstRead: read.some((each) => each.spring === 'light' && isOfPlan(each, plan, seen)),
    measured: spot.row === undefined ? [] : gapCells(seen, rowWith(spot.row, plan, seen)),
  };
}

/** Every gap, worked out from what was read with arms of each kind; of several the worst. */
function gapsOfWays(
  planned: PlannedSpot,
  { ways, own }: ReturnType<typeof readOn>,
  bend: number,
  asked: Omit<GapsAsked, 'before'>,
): ChangeGap[] {
  const gapsWith = (way: ReadAlike): ChangeGap[] => {
    const { ratios, known } = inputOf(planned, way);
    const variants = readWith(variantsOf(known, ratios, bend), asked.pushrod.arms);
    const moved = movedScan(variants.middle);
    return gapsOf(variants, { ...asked, before: way.before, ...defined({ moved }) });
  };
  return worstOfAll(
    gapsWith(own),
    ways.length === 1 ? [] : ways.map((way) => ({ way, gaps: gapsWith(way) })),
  );
}

/** One valve or side with one of the ratios that are planned, or with what is on it where none is. */
export function workOut(planned: PlannedSpot, all: OfAllSpots): Worked {
  const { seen: evidence, spot, plan } = planned;
  const { side, place, about, lobeLift } = spot;
  const readings = readOn(evidence, spot);
  const { ratios, known } = inputOf(planned, readings.own);
  const bend = bendOf(ratios.after, lobeLift, evidence);
  const figures = figuresOf(variantsOf(known, ratios, 0), about, planKey(evidence, plan));
  const pushrod = pushrodRead(evidence, armsKnown(planned), all.pairs);
  const { middle } = readWith(variantsOf(known, ratios, bend), pushrod.arms);
  const gaps = gapsOfWays(planned, readings, bend, {
    ...askedOf(planned, all),
    bend: bend * (lobeLift ?? 0),
    pushrod,
    told: toldBySheet(planned),
    ...defined({ after: ratios.after }),
  });
  const calculated = gaps.some(({ after }) => after?.basis === 'calculated');
  const lash = lashInForce(evidence, side, place);
  const piston = gaps.find(({ name }) => name === 'piston-to-valve')?.after;
  const closest = piston?.basis === 'calculated' ? all.calculations.closest(middle) : undefined;
  const key = `${keyOf(about)}${planKey(evidence, plan)}`;
  const otherArms = plan !== undefined || planOf(evidence.call.goal).isChange === true;
  const detail: Omit<ChangeDetail, 'checks' | 'cautions' | 'adjusters'> = {
    id: `change:${key}`,
    key,
    about,
    ...ratios,
    ...defined({ plan, lobeLift, lash, today: todayOf(planned, known) }),
    figures,
    gaps,
    ...defined({ closest, notUsed: withheldSaid(spot)[0] }),
    assumptions: [
      ...assumptionsOf(middle, calculated),
      ...ofNest(evidence, figures),
      ...sourcesSaid(ratios),
      ...waysSaid(readings.ways),
      ...(otherArms ? [notCalculated(evidence)] : []),
    ],
  };
  return {
    detail: { ...detail, checks: otherArms ? checksOf(detail) : [] },
    input: middle,
    otherArms,
    questions: pushrod.question === undefined ? [] : [pushrod.question],
    quantities: figureQuantities(figures, about, ratios.after, lash),
  };
}
