import { defined } from '../../../../../shared/defined.ts';
import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { byPlace, placeOf } from '../../common/said.ts';
import { type SwapTold, swapsOfArm, type ToldOfArm, toldOfArm } from '../../common/swap-told.ts';
import type { Evidence, ValvePlace } from '../../evidence.ts';
import { groupKey } from '../read/group-key.ts';
import type { SetUpRead } from '../read/set-up-read.ts';

/** Everything that speaks of one arm on one valve. */
export interface Group extends ValvePlace {
  /** `3-intake:armId`; of an arm that was never named, the valve alone. */
  readonly key: string;
  readonly armId?: string;
  /** What the arms that are off since were sold as, where it was read with one of them. */
  readonly soldAsThen?: number;
  readonly own: readonly SetUpRead[];
  /** The same arm on other valves whose lobes are alike. */
  readonly elsewhere: readonly SetUpRead[];
  /** The same arm was read on a valve with another lobe: that speaks there. */
  readonly readElsewhere: boolean;
  /** Other set-ups of the valve: their lobe is this lobe. */
  readonly sameLobe: readonly SetUpRead[];
  /** Set-ups of it that are put aside, since another of them holds. */
  readonly aside: readonly SetUpRead[];
  /** Of its own those whose passes speak against them, beside a sound one: nothing is weighed of them. */
  readonly poor: readonly SetUpRead[];
  /** What a swap decided of this arm on this valve. */
  readonly told?: ToldOfArm;
}

interface GroupsBy {
  /** Lobes within this of one another are one lobe [m]. */
  readonly within: number;
  readonly swaps: readonly SwapTold[];
  /** Another set-up of the same arm holds: of these the lobe alone speaks. */
  readonly aside: ReadonlySet<SetUpRead>;
  /** Nobody knows yet which of them holds: on another valve they say nothing of the arm. */
  readonly undecided: ReadonlySet<SetUpRead>;
  /** Their own passes speak against them, and another is sound. */
  readonly poor: ReadonlySet<SetUpRead>;
  /** Of these the lobe is undecided too. */
  readonly lobesUndecided: ReadonlySet<SetUpRead>;
}

const keyOf = ({ setUp }: SetUpRead): string => groupKey(setUp);

/** Lobes that the card holds to be alike within what one lobe may differ from its card. */
function lobesAlike(evidence: Evidence, a: ValvePlace, b: ValvePlace, within: number): boolean {
  if (sideOfValve(a.valve) === sideOfValve(b.valve)) return true;
  const [one, other] = [
    evidence.card[sideOfValve(a.valve)].lobeLift,
    evidence.card[sideOfValve(b.valve)].lobeLift,
  ];
  return one !== undefined && other !== undefined && Math.abs(one - other) <= within;
}

/** Places of a swap that told of a position: what an arm gave on the one says nothing of it on the other. */
const placesApart = (
  swaps: readonly SwapTold[],
  arm: ValvePlace & { readonly armId?: string },
): Set<string> =>
  new Set(
    swapsOfArm(swaps, arm)
      .filter(({ verdict }) => verdict === 'position' || verdict === 'both')
      .flatMap(({ places }) => places),
  );

function groupOf(
  evidence: Evidence,
  key: string,
  all: readonly SetUpRead[],
  { within, swaps, aside, undecided, lobesUndecided, poor }: GroupsBy,
): Group[] {
  const own = all.filter((each) => keyOf(each) === key && !aside.has(each));
  const [first] = own;
  if (first === undefined) return [];
  const { cylinder, valve, armId, soldAsThen } = first.setUp;
  const here = placeOf(first.setUp);
  const apart = placesApart(swaps, first.setUp);
  const sameArm = all.filter(
    (each) =>
      armId !== undefined && each.setUp.armId === armId && placeOf(each.setUp) !== here && !aside.has(each),
  );
  return [
    {
      key,
      cylinder,
      valve,
      ...defined({ armId, soldAsThen }),
      own,
      elsewhere: sameArm.filter(
        (each) =>
          !undecided.has(each) &&
          !poor.has(each) &&
          !apart.has(placeOf(each.setUp)) &&
          lobesAlike(evidence, each.setUp, first.setUp, within),
      ),
      poor: own.filter((each) => poor.has(each)),
      readElsewhere: sameArm.length > 0,
      aside: all.filter((each) => keyOf(each) === key && aside.has(each)),
      sameLobe: all.filter(
        (each) => placeOf(each.setUp) === here && !own.includes(each) && !lobesUndecided.has(each),
      ),
      ...defined({ told: toldOfArm(swaps, first.setUp) }),
    },
  ];
}

/** Each valve with each arm that was read on it, in the engine's own numbering. */
export function groupsOf(evidence: Evidence, all: readonly SetUpRead[], by: GroupsBy): Group[] {
  const keys = [...new Set(all.map(keyOf))].sort();
  return keys.flatMap((key) => groupOf(evidence, key, all, by)).sort(byPlace);
}
