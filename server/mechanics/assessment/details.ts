import type { ChangeDetail } from './change/detail.ts';
import type { GearDetail } from './gear/detail.ts';
import type { LashDetail } from './lash/detail.ts';
import type { MarksDetail } from './marks/detail.ts';
import type { NoiseDetail } from './noise/detail.ts';
import type { PartDetail } from './part/detail.ts';
import type { SetUpDetail } from './ratio/read/detail.ts';
import type { ScansDetail } from './scans/detail.ts';
import type { SheetDetail } from './sheet/rows/detail.ts';
import type { TimingDetail } from './timing/timing.ts';
import type { WorkingsDetail } from './workings/workings.ts';

/** Figures behind the judgements, for tables and drawings; no verdict is made from them outside of the assessment. */
export interface Details {
  /** What does not apply to the valve gear of this engine. */
  readonly gear: GearDetail;
  readonly setUps: readonly SetUpDetail[];
  readonly sheet: SheetDetail;
  /** Piston to valve over the crank, each scan that stands. */
  readonly scans: ScansDetail;
  /** What a ratio does, for each valve that something is known of. */
  readonly change: readonly ChangeDetail[];
  readonly marks: MarksDetail;
  readonly lash: LashDetail;
  readonly timing: TimingDetail;
  /** What was worked out of adjusters, pushrods and stands. */
  readonly workings: WorkingsDetail;
  /** What noise or a failure may come of. */
  readonly noise: NoiseDetail;
  /** What each part in the hand may be, its fastener, and the room under the cover; at least one. */
  readonly parts: readonly PartDetail[];
}
