import { defined } from '../../../../shared/defined.ts';
import { planOf } from '../../../../shared/schemas/goals.ts';
import { assumptionsOf } from '../../consequences/assumptions.ts';
import { movedScan } from '../../consequences/piston-gap.ts';
import { nestSaid } from '../../springs/nested.ts';
import { firstSaid } from '../common/first-said.ts';
import { lacksSaid } from '../common/lack.ts';
import { asItIs, onceEach } from '../common/once.ts';
import { isBeside, planKey } from '../common/plans.ts';
import { inches, keyOf, placeOf, subjectSaid } from '../common/said.ts';
import type { ValveRatio } from '../common/valve-ratio.ts';
import type { Evidence, GapName } from '../evidence.ts';
import { gapCells } from '../sheet/rows/cells.ts';
import type { SheetRow } from '../sheet/rows/rows.ts';
import { isWithPlan } from './arms-of-gaps.ts';
import { checksOf, notCalculated } from './checks.ts';
import { deniedBy, deniedBySiblings, ratioAsRead } from './denied.ts';
import type { ChangeDetail, ChangeFigure, ChangeGap, ChangeRatio } from './detail.ts';
import { figureQuantities, figuresOf } from './figures.ts';
import type { GapCalculations } from './gap-calculations.ts';
import { gapsOf } from './gaps.ts';
import { knownInput, lashInForce } from './known.ts';
import { type PushrodPair, pushrodRead, readWith } from './pushrod-read-with.ts';
import { type BeforeAndAfter, beforeAndAfter, nominalNow } from './ratios.ts';
import { type ReadAlike, readAlike, waysSaid, worstOfAll } from './read-alike.ts';
import type { Spot } from './spots.ts';
import { type Bends, bendOf, UNBENT, variantsOf } from './spread.ts';
import { cardsRatio } from './stated-ratios.ts';
import { todayOf } from './today.ts';
import type { Worked } from './told-once.ts';
import { isOfAfter } from './whose-arms.ts';
import { type GapsAsked, workedGap } from './worked-gap.ts';

export interface PlannedSpot {
  readonly seen: Evidence;
  readonly spot: Spot;
  readonly plan: number | undefined;
}

/** Where the two ratios are from, with what their intervals allow. */
const sourcesSaid = ({ before, after }: BeforeAndAfter, bend: number): string[] => [
  ...(before === undefined
    ? []
    : [
        `the ratio before: ${before.source}${bend > 0 ? `; up to ${inches(bend)} of lift is allowed for what bends` : ''}`,
      ]),
  ...(after === undefined ? [] : [`the ratio after: ${after.source}`]),
];

/** Each of two springs by itself, at the lift after. */
function ofNest({ springs: { nest } }: Evidence, figures: readonly ChangeFigure[]): string[] {
  const lift = figures.find(({ name }) => name === 'net-lift')?.after?.value;
  return nest === undefined || lift === undefined ? [] : nestSaid(nest, lift);
}

/** A ratio that was read and is no ground for a figure yet: what comes first. */
const withheldSaid = ({ withheld, about }: Spot): string[] =>
  withheld
    .filter(({ ofSheet }) => ofSheet !== true)
    .slice(0, 1)
    .map(
      ({ lacks }) =>
        `The ratio read on ${subjectSaid(about)} is not calculated with yet. ${firstSaid(lacksSaid(lacks))}`,
    );

/** What was read with the arms of one plan says nothing of another. */
const rowWith = (row: SheetRow, plan: number | undefined, evidence: Evidence): SheetRow => ({
  ...row,
  others: row.others.filter((entry) => isWithPlan(entry, plan, evidence)),
});

/** The ratios before and after, and the gaps that were read with other arms by the ratio of those. */
const ratiosAt = onceEach(asItIs, ({ seen, spot, plan }: PlannedSpot, all: readonly ValveRatio[]) => {
  const { side, place = spot.like, ratios } = spot;
  const ways = readAlike(seen, { side, place, plan, ratios, all });
  // What was read with arms of one ratio was read with those before.
  const [only, ...others] = ways;
  const was = others.length === 0 ? only?.ratio : undefined;
  return { ways, ratios: beforeAndAfter(seen, side, ratios, plan, defined({ place, was })) };
});

/** What is known of the arms that pushrod to head may have been read with. */
export const armsKnown = onceEach(asItIs, (planned: PlannedSpot, all: readonly ValveRatio[]) => {
  const { seen, spot, plan } = planned;
  const { side, place = spot.like } = spot;
  return {
    side,
    plan,
    ...ratiosAt(planned, all).ratios,
    ...defined({ nominal: nominalNow(seen, place), card: cardsRatio(seen, side) }),
  };
});

interface OfAllSpots {
  readonly calculations: GapCalculations;
  readonly read: readonly ValveRatio[];
  readonly pairs: readonly PushrodPair[];
}

/** Readings that a gap is worked out from: what is only told as it was read hangs on no ratio. */
const movedOf = (read: ReadAlike['before'], gaps: readonly ChangeGap[]) =>
  read
    .map(({ entry }) => entry)
    .filter(({ kind }) =>
      gaps.some(
        ({ name, before, after }) => name === kind && before?.basis === 'measured' && after !== undefined,
      ),
    );

/** What is known of a spot beside its two ratios, with gaps that were read with arms before. */
function knownWith({ seen, spot }: PlannedSpot, before: ReadAlike['before']) {
  const { side, place = spot.like, lobeLift } = spot;
  return knownInput(seen, { side, ...(place && { place }), ...(lobeLift && { lobeLift }), before });
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
): Omit<GapsAsked, 'before' | 'unsaid' | 'bend' | 'pushrod' | 'after' | 'told'> {
  return {
    evidence: seen,
    calculations,
    about: spot.about,
    planKey: planKey(seen, plan),
    isFirstRead: read.some((each) => each.spring === 'light' && isOfAfter(each, plan, seen)),
    isOtherRead: plan !== undefined && read.some(({ spring }) => spring === 'light'),
    measured: spot.row === undefined ? [] : gapCells(seen, rowWith(spot.row, plan, seen)),
  };
}

/** Every gap, worked out from what was read with arms of each kind, each from the ratio of its own; of several the worst. */
function gapsOfWays(
  planned: PlannedSpot,
  { ways, ratios }: ReturnType<typeof ratiosAt>,
  bend: Bends,
  asked: Omit<GapsAsked, 'before' | 'unsaid'>,
): ChangeGap[] {
  const gapsWith = ({ ratio, before, unsaid }: ReadAlike): ChangeGap[] => {
    const each = { ...ratios, ...defined({ before: ratio ?? ratios.before }) };
    const known = knownWith(planned, before);
    const withEach = (two: BeforeAndAfter, more: Bends) =>
      readWith(variantsOf(known, two, more), asked.pushrod.arms);
    const variants = withEach(each, bend);
    const own = { ...asked, before, unsaid, ...defined({ moved: movedScan(variants.middle) }) };
    const read = asked.denied && ratios.after && ratioAsRead(asked.denied, ratios.after);
    const asRead =
      read &&
      ((name: GapName) => workedGap(name, withEach({ ...each, after: read }, { ...bend, after: 0 }), own));
    return gapsOf(variants, { ...own, ...defined({ asRead }) });
  };
  return worstOfAll(
    gapsWith({ before: [], asked: false, unsaid: false }),
    ways.map((way) => ({ way, gaps: gapsWith(way) })),
  );
}

/** What was read that the ratio after does not hold; what bends is allowed for in it already. */
function deniedAt({ seen, spot, plan }: PlannedSpot, after: ChangeRatio | undefined, bend: number) {
  const most = after && { ...after, high: after.high + bend };
  return deniedBy(most, spot, plan, seen) ?? deniedBySiblings(most, spot.siblings, plan, seen);
}

/** One valve or side with one of the ratios that are planned, or with what is on it where none is. */
export function workOut(planned: PlannedSpot, all: OfAllSpots): Worked {
  const { seen: evidence, spot, plan } = planned;
  const { side, place, about, lobeLift } = spot;
  const readings = ratiosAt(planned, all.read);
  const { ways, ratios } = readings;
  const known = knownWith(planned, []);
  const bend: Bends = {
    before: bendOf(ratios.before, lobeLift, evidence),
    after: bendOf(ratios.after, lobeLift, evidence),
  };
  const figures = figuresOf(variantsOf(known, ratios, UNBENT), about, planKey(evidence, plan));
  const pushrod = pushrodRead(evidence, armsKnown(planned, all.read), all.pairs);
  const { middle } = readWith(variantsOf(known, ratios, bend), pushrod.arms);
  const denied = deniedAt(planned, ratios.after, bend.after);
  const gaps = gapsOfWays(planned, readings, bend, {
    ...askedOf(planned, all),
    ...defined({ denied }),
    bend: bend.after * (lobeLift ?? 0),
    pushrod,
    told: toldBySheet(planned),
    ...defined({ after: ratios.after }),
  });
  const calculated = gaps.some(({ after }) => after?.basis === 'calculated');
  const lash = lashInForce(evidence, side, place ?? spot.like);
  const piston = gaps.find(({ name }) => name === 'piston-to-valve')?.after;
  const closest = piston?.basis === 'calculated' ? all.calculations.closest(middle) : undefined;
  const key = `${keyOf(about)}${planKey(evidence, plan)}`;
  const otherArms = plan !== undefined || planOf(evidence.call.goal).isChange === true;
  const detail: Omit<ChangeDetail, 'checks' | 'cautions' | 'adjusters'> = {
    id: `change:${key}`,
    key,
    about,
    ...ratios,
    ...(isBeside(evidence, plan) ? { beside: true } : {}),
    ...defined({ plan, lobeLift, lash, today: todayOf(planned, known) }),
    figures,
    gaps,
    ...defined({ closest, notUsed: withheldSaid(spot)[0] }),
    assumptions: [
      ...assumptionsOf(middle, calculated),
      ...ofNest(evidence, figures),
      ...sourcesSaid(ratios, bend.before * (lobeLift ?? 0)),
      ...waysSaid(ways, ratios.before),
      ...(otherArms ? [notCalculated(evidence)] : []),
    ],
  };
  return {
    detail: { ...detail, checks: otherArms ? checksOf(detail) : [] },
    input: middle,
    otherArms,
    questions: pushrod.question === undefined ? [] : [pushrod.question],
    asksRatio: ways.filter((way) => way.asked).flatMap((way) => movedOf(way.before, gaps)),
    quantities: figureQuantities(figures, about, ratios.after, lash),
  };
}
