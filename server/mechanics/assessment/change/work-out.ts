import { defined } from '../../../../shared/defined.ts';
import { planOf } from '../../../../shared/schemas/goals.ts';
import { assumptionsOf } from '../../consequences/assumptions.ts';
import { movedScan } from '../../consequences/piston-gap.ts';
import { nestSaid } from '../../springs/nested.ts';
import { firstSaid } from '../common/first-said.ts';
import { asItIs, onceEach } from '../common/once.ts';
import { planKey } from '../common/plans.ts';
import { keyOf, placeOf, subjectSaid } from '../common/said.ts';
import type { ValveRatio } from '../common/valve-ratio.ts';
import type { Evidence } from '../evidence.ts';
import { gapCells } from '../sheet/rows/cells.ts';
import type { SheetRow } from '../sheet/rows/rows.ts';
import { isWithPlan } from './arms-of-gaps.ts';
import { checksOf, notCalculated } from './checks.ts';
import type { ChangeDetail, ChangeFigure, ChangeGap } from './detail.ts';
import { figureQuantities, figuresOf } from './figures.ts';
import type { GapCalculations } from './gap-calculations.ts';
import { gapsOf } from './gaps.ts';
import { knownInput, lashInForce } from './known.ts';
import { type PushrodPair, pushrodRead, readWith } from './pushrod-read-with.ts';
import { type BeforeAndAfter, beforeAndAfter, isOfPlan, nominalNow } from './ratios.ts';
import { type ReadAlike, readAlike, waysSaid, worstOfAll } from './read-alike.ts';
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

/** The ratios before and after, and the gaps that were read with other arms by the ratio of those. */
const ratiosAt = onceEach(asItIs, ({ seen, spot, plan }: PlannedSpot, all: readonly ValveRatio[]) => {
  const { side, place, ratios } = spot;
  const ways = readAlike(seen, { side, place, plan, ratios, all });
  // What was read with arms of one ratio was read with those before.
  const [only, ...others] = ways;
  const was = others.length === 0 ? only?.ratio : undefined;
  return { ways, ratios: beforeAndAfter(seen, side, ratios, plan, defined({ place, was })) };
});

/** What is known of the arms that pushrod to head may have been read with. */
export const armsKnown = onceEach(asItIs, (planned: PlannedSpot, all: readonly ValveRatio[]) => {
  const { seen, spot, plan } = planned;
  const { side, place } = spot;
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
function knownWith({ seen, spot: { side, place, lobeLift } }: PlannedSpot, before: ReadAlike['before']) {
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
    isFirstRead: read.some((each) => each.spring === 'light' && isOfPlan(each, plan, seen)),
    measured: spot.row === undefined ? [] : gapCells(seen, rowWith(spot.row, plan, seen)),
  };
}

/** Every gap, worked out from what was read with arms of each kind, each from the ratio of its own; of several the worst. */
function gapsOfWays(
  planned: PlannedSpot,
  { ways, ratios }: ReturnType<typeof ratiosAt>,
  bend: number,
  asked: Omit<GapsAsked, 'before' | 'unsaid'>,
): ChangeGap[] {
  const gapsWith = ({ ratio, before, unsaid }: ReadAlike): ChangeGap[] => {
    const each = { ...ratios, ...defined({ before: ratio ?? ratios.before }) };
    const variants = readWith(variantsOf(knownWith(planned, before), each, bend), asked.pushrod.arms);
    return gapsOf(variants, { ...asked, before, unsaid, ...defined({ moved: movedScan(variants.middle) }) });
  };
  return worstOfAll(
    gapsWith({ before: [], asked: false, unsaid: false }),
    ways.map((way) => ({ way, gaps: gapsWith(way) })),
  );
}

/** One valve or side with one of the ratios that are planned, or with what is on it where none is. */
export function workOut(planned: PlannedSpot, all: OfAllSpots): Worked {
  const { seen: evidence, spot, plan } = planned;
  const { side, place, about, lobeLift } = spot;
  const readings = ratiosAt(planned, all.read);
  const { ways, ratios } = readings;
  const known = knownWith(planned, []);
  const bend = bendOf(ratios.after, lobeLift, evidence);
  const figures = figuresOf(variantsOf(known, ratios, 0), about, planKey(evidence, plan));
  const pushrod = pushrodRead(evidence, armsKnown(planned, all.read), all.pairs);
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
