import { defined } from '../../../../shared/defined.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { byPlace, placeOf } from '../common/said.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';
import { groupKey } from './group-key.ts';
import type { SetUpRead } from './set-up-read.ts';

/** Everything that speaks of one arm on one valve. */
export interface Group extends ValvePlace {
  /** `3-intake:armId`; of an arm that was never named, the valve alone. */
  readonly key: string;
  readonly armId?: string;
  readonly own: readonly SetUpRead[];
  /** The same arm on other valves whose lobes are alike. */
  readonly elsewhere: readonly SetUpRead[];
  /** The same arm was read on a valve with another lobe: that speaks there. */
  readonly readElsewhere: boolean;
  /** Other set-ups of the valve: their lobe is this lobe. */
  readonly sameLobe: readonly SetUpRead[];
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

function groupOf(evidence: Evidence, key: string, all: readonly SetUpRead[], within: number): Group[] {
  const own = all.filter((each) => keyOf(each) === key);
  const [first] = own;
  if (first === undefined) return [];
  const { cylinder, valve, armId } = first.setUp;
  const here = placeOf(first.setUp);
  const sameArm = all.filter(
    ({ setUp }) => armId !== undefined && setUp.armId === armId && placeOf(setUp) !== here,
  );
  return [
    {
      key,
      cylinder,
      valve,
      ...defined({ armId }),
      own,
      elsewhere: sameArm.filter(({ setUp }) => lobesAlike(evidence, setUp, first.setUp, within)),
      readElsewhere: sameArm.length > 0,
      sameLobe: all.filter((each) => placeOf(each.setUp) === here && keyOf(each) !== key),
    },
  ];
}

/** Each valve with each arm that was read on it, in the engine's own numbering. */
export function groupsOf(evidence: Evidence, all: readonly SetUpRead[], within: number): Group[] {
  const keys = [...new Set(all.map(keyOf))].sort();
  return keys.flatMap((key) => groupOf(evidence, key, all, within)).sort(byPlace);
}
