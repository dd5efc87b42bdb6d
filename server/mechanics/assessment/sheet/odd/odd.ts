import { defined } from '../../../../../shared/defined.ts';
import { isHydraulicLifter } from '../../../../../shared/lifters.ts';
import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { lobesApart, lobesDown } from '../../../valve-sheet/lobes-down.ts';
import { judgeSide } from '../../../valve-sheet/odd-valves.ts';
import { banksOf } from '../../../valve-sheet/orders.ts';
import { twoGroups } from '../../../valve-sheet/two-groups.ts';
import type { OddValve, SheetValve } from '../../../valve-sheet/types.ts';
import { placeOf } from '../../common/said.ts';
import type { Evidence, Side, Spring } from '../../evidence.ts';
import type { LobeOfSetUp } from '../../ratio/compared/lobes-read.ts';
import { asMarked } from '../rows/as-marked.ts';
import type { SheetOddDetail, SheetSideDetail, SheetSwapDetail } from '../rows/detail.ts';
import type { ArmLot } from '../rows/lots-of-swaps.ts';
import type { SheetRow } from '../rows/rows.ts';
import { asSibling, byCaliper, passesOf } from '../rows/siblings.ts';
import { leftOfGroup } from '../sides/group-answered.ts';
import { armNameOf, swapSaid, swapToDo } from '../swaps/swap-to-do.ts';

/** What the swaps on record tell of an odd valve: the arm on it, the valve itself, or neither yet. */
function causeBy(odd: OddValve, armId: string | undefined, swaps: readonly SheetSwapDetail[]) {
  const place = placeOf(odd);
  // Two that are off alike were swapped with each other: each is still to be swapped with another.
  const told = swaps.filter(
    (swap) => swap.alike !== true && (swap.places.includes(place) || swap.arms.some((arm) => arm === armId)),
  );
  if (odd.cause === 'lobe' || odd.cause === 'both') return { cause: odd.cause, touched: told.length > 0 };
  const part = told.find(({ verdict, oddArm }) => verdict === 'part' && oddArm === armId);
  if (part !== undefined && armId !== undefined) return { cause: 'part', touched: true } as const;
  const position = told.find(({ verdict, oddPlace }) => verdict === 'position' && oddPlace === place);
  if (position !== undefined) return { cause: 'position', touched: true } as const;
  return { cause: odd.cause, touched: told.length > 0 };
}

const oddId = (odd: OddValve, spring: Spring): string => `odd:${spring}:${odd.cylinder}-${odd.valve}`;

/** It was read on a hydraulic lifter, or nobody said on which, and the engine has hydraulic ones. */
function maySink({ engine }: Evidence, row: SheetRow | undefined, spring: Spring): boolean {
  const readings = row?.lifts.find((lot) => lot.spring === spring)?.readings ?? [];
  const own = isHydraulicLifter(engine.lifter);
  return readings.some(({ lifter }) => lifter === 'hydraulic' || (lifter === 'not-said' && own));
}

interface Beside {
  /** Rows with an open doubt. */
  readonly doubtful: ReadonlySet<string>;
  readonly lashAsked: ReadonlySet<string>;
  readonly swaps: readonly SheetSwapDetail[];
  readonly lots: readonly ArmLot[];
  /** Lobes that were read in set-ups of their own. */
  readonly ofSetUps: readonly LobeOfSetUp[];
}

/** The lobes of a side, wherever they were read: of one that was read twice the lower, till a person says otherwise. */
function withSetUps(siblings: readonly SheetValve[], ofSetUps: readonly LobeOfSetUp[]): SheetValve[] {
  const least = new Map(siblings.map((each) => [placeOf(each), each]));
  for (const { cylinder, valve, value } of ofSetUps) {
    const key = placeOf({ cylinder, valve });
    const there = least.get(key) ?? { cylinder, valve };
    least.set(key, { ...there, lobeLift: Math.min(value, there.lobeLift ?? value) });
  }
  return [...least.values()];
}

/** The valves that one is set against. */
const besideOf = (odd: OddValve, compared: readonly (readonly SheetValve[])[]): readonly SheetValve[] =>
  compared.find((group) => group.some((each) => placeOf(each) === placeOf(odd))) ?? [];

/** The valves of one side as read on one spring, set against each other; rows in doubt stay out of it. */
export function sideOf(
  evidence: Evidence,
  rows: readonly SheetRow[],
  of: { readonly side: Side; readonly spring: Spring },
  { doubtful, lashAsked, swaps, lots, ofSetUps }: Beside,
): SheetSideDetail {
  const own = rows.filter(({ valve }) => sideOfValve(valve) === of.side);
  const lobes = own.filter(({ lobe }) => lobe !== undefined);
  const calipers = lobes.length > 0 && lobes.every(byCaliper);
  const siblings = own.map((row) =>
    asSibling(row, of.spring, { calipers, lots, ofSetUps, inDoubt: doubtful.has(placeOf(row)) }),
  );
  const cylinders = Math.max(evidence.engine.cylinders ?? 0, ...siblings.map(({ cylinder }) => cylinder));
  const groups =
    twoGroups(siblings, banksOf(evidence.engine.bankOrder, cylinders)) ?? leftOfGroup(evidence, of, siblings);
  const cardLobe = evidence.card[sideOfValve(of.side)].lobeLift;
  const judged = judgeSide(of.side, siblings, cardLobe);
  // Where several are off alike, each is set against those that are like it.
  const compared = groups === undefined ? [siblings] : [groups.own, groups.others];
  const odds =
    groups === undefined ? judged.odd : compared.flatMap((group) => judgeSide(of.side, group, cardLobe).odd);
  const odd = odds.map((each): SheetOddDetail => {
    const row = own.find((one) => placeOf(one) === placeOf(each));
    const armId = row?.armId;
    const marked = asMarked(evidence, { odd: each, spring: of.spring }, own, besideOf(each, compared));
    const { cause, touched } =
      marked === undefined ? causeBy(each, armId, swaps) : ({ cause: 'mark', touched: true } as const);
    const sinks = marked === undefined && maySink(evidence, row, of.spring) && each.cause !== 'lobe';
    const lash = lashAsked.has(placeOf(each)) && !touched && each.cause !== 'lobe';
    const toSwap =
      touched || sinks || lash ? undefined : swapToDo(each, besideOf(each, compared), odds, evidence);
    return {
      ...each,
      cause,
      passes: passesOf(row, of.spring, lots, {
        ofSetUps,
        anyArm: swaps.some((swap) => swap.alike === true && swap.places.includes(placeOf(each))),
      }),
      judgementId: oddId(each, of.spring),
      ...defined({ asMarked: marked }),
      ...(sinks ? { sinks } : {}),
      ...(lash ? { lash } : {}),
      ...defined({ armName: armNameOf(evidence, armId), toSwap }),
      ...(toSwap === undefined ? {} : { swap: swapSaid(each, toSwap) }),
    };
  });
  // A caliper on a loose cam reads low: such lobes are compared with one another alone.
  const besides = calipers ? [] : ofSetUps.filter(({ valve }) => sideOfValve(valve) === of.side);
  const { apart, lobesApart: _, ...side } = judged;
  const lobesRead = withSetUps(siblings, besides);
  const sinking = own.some((row) => maySink(evidence, row, of.spring));
  return {
    ...side,
    // Of groups that lie apart something is told of its own, and of lifters that sink nothing yet.
    ...(apart === undefined || groups !== undefined || sinking
      ? {}
      : {
          noMiddle: {
            apart,
            places: siblings
              .filter(({ valveLift }) => valveLift !== undefined)
              .map(({ cylinder, valve }) => ({ cylinder, valve })),
          },
        }),
    ...defined({ lobesApart: lobesApart(lobesRead) }),
    lobesDown: lobesDown(lobesRead),
    spring: of.spring,
    odd,
    ...defined({ groups }),
  };
}
