import type { Evidence, PassEvidence } from '../../evidence.ts';
import type { LiftDetail } from './detail.ts';
import { liftOf } from './lift.ts';
import { type LobeInUse, lobeOf } from './lobe.ts';
import { meanOf, standingPasses, type UsedPasses, usedPasses } from './passes.ts';
import { type SetUpNow, setUpsNow } from './set-ups.ts';

/** A set-up with its readings put in order; nothing is judged yet. */
export interface SetUpRead {
  readonly setUp: SetUpNow;
  /** Every pass that stands, in the order in which it was read. */
  readonly standing: readonly PassEvidence[];
  readonly valve: UsedPasses;
  readonly lobe: LobeInUse;
  readonly lift?: LiftDetail;
}

function read(evidence: Evidence, setUp: SetUpNow, all: readonly SetUpNow[]): SetUpRead {
  const standing = standingPasses(evidence, setUp.id);
  const valve = usedPasses(
    standing.filter(({ kind }) => kind === 'valve-lift'),
    setUp,
    'valve',
  );
  return {
    setUp,
    standing,
    valve,
    lobe: lobeOf(evidence, setUp, all),
    ...(valve.used.length === 0 ? {} : { lift: liftOf(evidence, setUp, meanOf(valve.used)) }),
  };
}

/** Every set-up with what was read in it, by its number. */
export function setUpsRead(evidence: Evidence): SetUpRead[] {
  const all = setUpsNow(evidence);
  return all.map((setUp) => read(evidence, setUp, all));
}
