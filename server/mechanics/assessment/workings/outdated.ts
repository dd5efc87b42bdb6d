import { defined } from '../../../../shared/defined.ts';
import { inDoubt } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import type { KeptSet } from '../common/kept.ts';
import type { TurnsEvidence } from '../evidence/kept-sums.ts';
import type { Evidence, WorkingEvidence } from '../evidence.ts';
import { readOf } from '../timing/readings.ts';
import { againstBuild } from './against-build.ts';
import { wantedOff } from './against-lash.ts';
import { armOff, liftOff } from './against-lift.ts';
import { NOT_MADE, turnMade } from './turn-made.ts';

/** A kept computation that was made with another figure than the build has now, and what differs. */
export interface Outdated {
  readonly id: string;
  readonly sentence: string;
  /** It is asked which holds, and what came out waits for that; else what differs stands beside it. */
  readonly waits: boolean;
}

const isTurns = (kept: KeptSet): kept is KeptSet<TurnsEvidence> => kept.set.of === 'turns';

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

/** Every kept computation that the build has gone past. */
export function outdatedOf(evidence: Evidence): Outdated[] {
  const peaks = readOf(evidence).peaks;
  return evidence.workings.flatMap((working) => {
    const { id } = working;
    const peak = peaks.find((each) => each.id === id)?.cardAsked;
    const waiting = [
      ...ofSum(working, evidence),
      ...(peak === undefined || chosenOf(peak) === 'reading' ? [] : [peak.size ?? '']),
    ];
    const said = [...waiting, ...ofFigures(working, evidence)];
    return said.length === 0 ? [] : [{ id, sentence: said.join(' '), waits: waiting.length > 0 }];
  });
}
