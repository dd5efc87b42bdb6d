import { defined } from '../../../../shared/defined.ts';
import { isSolidLifter } from '../../../../shared/lifters.ts';
import { GAP_KINDS, type GapKind } from '../../../../shared/schemas/sheet.ts';
import type { ConsequenceInput, LimitFigure } from '../../consequences/types.ts';
import type { GapBounds } from '../common/gap-said.ts';
import { limitOf } from '../common/limits.ts';
import { asItIs, onceEach } from '../common/once.ts';
import { byId, placeOf } from '../common/said.ts';
import { usableLash } from '../common/usable-lash.ts';
import type { Evidence, SheetEvidence, Side, ValvePlace } from '../evidence.ts';
import { boundsOf } from '../gaps/bounds.ts';
import { type JudgedGap, judgeGap } from '../gaps/gap.ts';
import { worstOf } from '../gaps/worst.ts';
import { isClosestDoubted } from './closest-asked.ts';

const given = <Key extends string>(key: Key, value: number | undefined): Partial<Record<Key, number>> => {
  const found: Partial<Record<Key, number>> = {};
  if (value !== undefined) found[key] = value;
  return found;
};

/** The lash in force: the log's newest line of the valve where it is one figure, else the card's. */
export function lashInForce(
  evidence: Evidence,
  side: Side,
  place: ValvePlace | undefined,
): number | undefined {
  const logged = place === undefined ? undefined : usableLash(evidence, place)?.gap.value;
  return logged ?? evidence.card[side].lash;
}

/** Lash that was in a scan is no doubt of it but a step: it is off the low end once all else is worked out. */
function asRead(entry: JudgedGap['entry']): GapBounds {
  const bounds = boundsOf(entry);
  const lash = entry.scan?.lash ?? 0;
  return bounds.low === undefined ? bounds : { ...bounds, low: bounds.low + lash };
}

/** Of the gaps before, the scan that piston to valve is the least of; one with no least of its own can't be moved. */
function scanBeforeOf(before: readonly JudgedGap[]): Pick<ConsequenceInput, 'scanBefore'> {
  const scan = before.find(({ entry }) => entry.kind === 'piston-to-valve')?.entry.scan;
  if (scan === undefined || scan.stations.length === 0) return {};
  const { stations, error, lash } = scan;
  return { scanBefore: { stations, error, lash } };
}

const isOfGap = (entry: SheetEvidence): entry is JudgedGap['entry'] =>
  GAP_KINDS.some((kind) => kind === entry.kind);

/** The worst standing reading of each gap that was taken with the arms before, of those that are meant. */
export function gapsBefore(
  evidence: Evidence,
  place: ValvePlace | undefined,
  isMeant: (entry: SheetEvidence) => boolean,
): JudgedGap[] {
  if (place === undefined) return [];
  const here = evidence.sheet
    .filter((each) => each.standing && each.arms === 'before' && placeOf(each) === placeOf(place))
    .filter(isMeant)
    .toSorted(byId)
    .filter(isOfGap);
  return GAP_KINDS.flatMap((kind) => {
    const own = here.filter((entry) => entry.kind === kind).map((entry) => judgeGap(entry, evidence));
    return worstOf(own) ?? [];
  });
}

const limitsOf = onceEach(
  asItIs,
  (evidence: Evidence, side: Side): Readonly<Record<GapKind, LimitFigure>> => {
    const limit = (kind: GapKind) => limitOf(evidence, kind, side);
    return {
      'coil-bind': limit('coil-bind'),
      'retainer-to-seal': limit('retainer-to-seal'),
      'piston-to-valve': limit('piston-to-valve'),
      'pushrod-to-head': limit('pushrod-to-head'),
      'slot-to-stud': limit('slot-to-stud'),
      'rocker-to-retainer': limit('rocker-to-retainer'),
      cover: limit('cover'),
    };
  },
);

interface KnownOfValve {
  readonly side: Side;
  readonly place?: ValvePlace;
  readonly lobeLift?: number;
  readonly before: readonly JudgedGap[];
}

/** Everything of the build that the calculations take, but for the ratios and for gaps read with these arms. */
export function knownInput(
  evidence: Evidence,
  { side, place, lobeLift, before }: KnownOfValve,
): Omit<ConsequenceInput, 'before' | 'after'> {
  const { engine, springs, rockers, card } = evidence;
  const { centreline, durations } = card[side];
  const taken = evidence.taken[side];
  const lifter = engine.lifter;
  return {
    side,
    ...given('lobeLift', lobeLift),
    ...given('lash', lashInForce(evidence, side, place)),
    ...(lifter === undefined ? {} : { lifter: isSolidLifter(lifter) ? 'solid' : 'hydraulic' }),
    ...defined({ mounting: engine.mounting }),
    spring: springs,
    crank: engine,
    lobe: {
      ...given('centreline', centreline),
      ...(durations === undefined || durations.length === 0 ? {} : { durations }),
    },
    ...given('closedGapAtTdc', taken.closedGapAtTdc),
    ...defined({ pistonFloor: taken.pistonFloor, lobeLiftAtClosest: taken.lobeLiftAtClosest }),
    ...(isClosestDoubted(evidence, side) ? { closestDoubted: true as const } : {}),
    ...given('pushrodToHead', taken.pushrodToHead),
    ...given('pivotToTip', rockers.pivotToTip),
    ...scanBeforeOf(before),
    readBefore: Object.fromEntries(before.map(({ entry }) => [entry.kind, asRead(entry)])),
    limits: limitsOf(evidence, side),
  };
}
