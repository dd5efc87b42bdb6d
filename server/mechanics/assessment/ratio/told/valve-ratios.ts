import { defined } from '../../../../../shared/defined.ts';
import { toRead } from '../../common/lack.ts';
import { placeOf } from '../../common/said.ts';
import type { AsRead, ValveRatio, WithheldRatio } from '../../common/valve-ratio.ts';
import type { Evidence, Spring } from '../../evidence.ts';
import type { GroupExplained } from '../compared/explain.ts';
import type { SetUpKnown } from '../compared/known.ts';
import { lacksOfGroup, restingOn } from '../compared/lacking.ts';
import { isUndecided } from '../compared/set-ups-differ.ts';
import { isDoubted } from '../compared/word.ts';
import { isLashKnownIn } from '../read/lack.ts';
import { asLack } from '../read/lack-said.ts';

/** Nobody knows yet which of several set-ups holds, or whether the sheet's lower figure does. */
const isOpen = (each: SetUpKnown): boolean => isUndecided(each) || each.besideSheet === 'higher';

function ofSetUp(known: SetUpKnown): ValveRatio[] {
  const { read, result, lacks } = known;
  const { setUp, lobe, valve } = read;
  if (result === undefined || lobe.value === undefined || setUp.spring === 'not-said') return [];
  const putBack = setUp.lash === 'set';
  return [
    {
      cylinder: setUp.cylinder,
      valve: setUp.valve,
      setUpId: setUp.id,
      ...defined({ armId: setUp.armId, soldAsThen: setUp.soldAsThen, comesOff: setUp.comesOff }),
      value: result.ratio,
      low: result.interval95[0],
      high: result.interval95[1],
      spring: setUp.spring,
      basis: putBack ? 'calculated' : 'measured',
      lashIn: putBack ? 'put-back' : 'none',
      lobeLift: lobe.value,
      lacks: lacks.map(asLack),
      ...(isOpen(known) ? { open: true as const } : {}),
      restsOn: [...valve.used, ...lobe.passes.used].map(({ id }) => id).sort(),
    },
  ];
}

/** Nothing is lacking but that the lash was in it, and how much is known: it is put back, and no word stands on it. */
const isGround = ({ lacks, read: { setUp } }: SetUpKnown): boolean =>
  lacks.length === 0 || (setUp.lashSetting !== undefined && lacks.every(isLashKnownIn));

/** The newest on this spring that may be calculated with. */
const believedOn = (spring: Spring, known: readonly SetUpKnown[]): SetUpKnown | undefined =>
  known.findLast((each) => each.read.setUp.spring === spring && isGround(each));

function believedLight(explained: GroupExplained): SetUpKnown | undefined {
  const light = restingOn(explained);
  return light !== undefined && isGround(light) ? light : undefined;
}

/** While nobody knows which of several holds, the highest on that spring: it leaves the least room. */
const highestOn = (spring: Spring, known: readonly SetUpKnown[]): SetUpKnown | undefined =>
  known
    .filter((each) => each.read.setUp.spring === spring && isOpen(each))
    .toSorted((a, b) => (b.result?.ratio ?? 0) - (a.result?.ratio ?? 0))[0];

/** The word rests on one of several that differ. */
const restsOnUndecided = (explained: GroupExplained): boolean => {
  const resting = restingOn(explained);
  return resting !== undefined && isOpen(resting);
};

/**
 * Ratios that may be calculated with: of each arm on a valve the one that is told of it, and one on the running spring.
 * One whose word is withheld (lash left in, a plunger that leans, passes apart), or that is doubted, is no ground for a
 * figure. Where set-ups differ the highest is calculated with, and no word stands on it but short.
 */
export const valveRatios = (explained: readonly GroupExplained[]): ValveRatio[] =>
  explained.flatMap((each) => {
    const undecided = restsOnUndecided(each) ? highestOn('light', each.known) : undefined;
    if (undecided === undefined && isDoubted(each)) return [];
    const light = undecided ?? believedLight(each);
    const running = believedOn('running', each.known) ?? highestOn('running', each.known);
    return [light, running].flatMap((known) => (known === undefined ? [] : ofSetUp(known)));
  });

/** Another arm sits there now, and was read, or the whole set was changed: what the one before gave is not waited for. */
function hasMovedOn({ seats }: Evidence, { group }: GroupExplained, all: readonly GroupExplained[]): boolean {
  if (group.soldAsThen !== undefined) return true;
  const seat = seats.find((each) => placeOf(each) === placeOf(group))?.armId;
  return (
    seat !== undefined &&
    seat !== group.armId &&
    all.some(({ group: other }) => placeOf(other) === placeOf(group) && other.armId === seat)
  );
}

/** What it gives as it stands: the highest of its set-ups, since that leaves the least room. */
function asReadOf({ known }: GroupExplained): AsRead | undefined {
  const [highest] = known
    .filter(
      ({ differs, besideSheet, poor }) =>
        differs?.now !== 'aside' && besideSheet !== 'aside' && poor === undefined,
    )
    .flatMap(({ result, read: { setUp } }) => (result === undefined ? [] : [{ result, setUp }]))
    .toSorted((a, b) => b.result.ratio - a.result.ratio);
  if (highest === undefined) return undefined;
  const { result, setUp } = highest;
  return {
    value: result.ratio,
    low: result.interval95[0],
    high: result.interval95[1],
    orMore: setUp.spring !== 'light' || setUp.lash !== 'zero' || setUp.lifter === 'hydraulic',
  };
}

const OF_POSITION = 'what in its position is odd, as the swap told';
const DOUBTED = 'why the lift is so far off what the arm is stamped or sold as';

/** What must be known before the ratio that was read on a valve may be calculated with, where one was read. */
export function ratiosWithheld(evidence: Evidence, explained: readonly GroupExplained[]): WithheldRatio[] {
  return explained.flatMap((each) => {
    if (each.given === undefined || valveRatios([each]).length > 0) return [];
    if (hasMovedOn(evidence, each, explained)) return [];
    // What the sheet has is calculated with instead.
    if (restingOn(each)?.besideSheet === 'aside') return [];
    const { cylinder, valve, armId, soldAsThen, own } = each.group;
    const comesOff = own[0]?.setUp.comesOff;
    const lacks = lacksOfGroup(each).map(asLack);
    const { told } = each.group;
    const doubted = told?.verdict === 'position' && told.odd === 'own' ? OF_POSITION : DOUBTED;
    return [
      {
        cylinder,
        valve,
        ...defined({ armId, soldAsThen, comesOff, asRead: asReadOf(each) }),
        lacks: lacks.length > 0 ? lacks : [toRead('ratio-doubted', doubted)],
      },
    ];
  });
}
