import { defined } from '../../../../shared/defined.ts';
import { inDoubt } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import type { KeptSet } from '../common/kept.ts';
import type { NotSet } from '../common/not-set.ts';
import { listed, upperFirst } from '../common/said.ts';
import type { TurnsEvidence } from '../evidence/kept-sums.ts';
import type { Evidence, WorkingEvidence } from '../evidence.ts';
import { readOf } from '../timing/readings.ts';
import { againstBuild } from './against-build.ts';
import { wantedOff } from './against-lash.ts';
import { armOff, liftOff } from './against-lift.ts';
import { isHeld, NOT_MADE, turnMade, withoutNotSet } from './turn-made.ts';

/** A kept computation that was made with another figure than the build has now, and what differs. */
export interface Outdated {
  readonly id: string;
  readonly sentence: string;
  /** It is asked which holds, and what came out waits for that; else what differs stands beside it. */
  readonly waits: boolean;
}

const isTurns = (kept: KeptSet): kept is KeptSet<TurnsEvidence> => kept.set.of === 'turns';

/** Every valve that a turn would be made on is looked at first: its figure is told as little as its sentence. */
function notSetYet(
  { id, line, set }: WorkingEvidence,
  evidence: Evidence,
  notSet: readonly NotSet[],
): string[] {
  if (set?.of !== 'turns') return [];
  const told = withoutNotSet(turnMade({ id, line, set }, evidence), set, notSet);
  return isHeld(told) ? [`${upperFirst(listed(told.notSet.map(({ why }) => why)))}.`] : [];
}

function ofSum({ id, line, set }: WorkingEvidence, evidence: Evidence): string[] {
  if (set === undefined) return [];
  const kept: KeptSet = { id, line, set };
  const made = isTurns(kept) ? turnMade(kept, evidence) : NOT_MADE;
  return againstBuild(kept, made, evidence)
    .filter(inDoubt)
    .flatMap(({ size }) => size ?? []);
}

/** A sweep, a linkage and a shim are figures alone, and may be worked out for another arm or lash than is on. */
const ofFigures = ({ netLift, pivotToTip, lashWanted }: WorkingEvidence, evidence: Evidence): string[] =>
  [
    ...(netLift === undefined ? [] : liftOff(netLift, evidence)),
    ...(pivotToTip === undefined ? [] : armOff(pivotToTip, evidence)),
    ...wantedOff(defined({ lashWanted }), NOT_MADE, evidence),
  ].map(({ said }) => said);

/** Every kept computation that the build has gone past, or of which nothing is told yet. */
export function outdatedOf(evidence: Evidence, notSet: readonly NotSet[]): Outdated[] {
  const peaks = readOf(evidence).peaks;
  return evidence.workings.flatMap((working) => {
    const { id } = working;
    const peak = peaks.find((each) => each.id === id)?.cardAsked;
    const waiting = [
      ...ofSum(working, evidence),
      ...notSetYet(working, evidence, notSet),
      ...(peak === undefined || chosenOf(peak) === 'reading' ? [] : [peak.size ?? '']),
    ];
    const said = [...waiting, ...ofFigures(working, evidence)];
    return said.length === 0 ? [] : [{ id, sentence: said.join(' '), waits: waiting.length > 0 }];
  });
}
