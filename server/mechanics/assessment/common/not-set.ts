import type { ValvePlace } from '../evidence.ts';

/** A valve whose gap nobody sets yet: it would hide what is looked at first. */
export interface NotSet extends ValvePlace {
  /** As a clause with what goes first: `1 exhaust may be sinking into its seat, and a qualified shop looks first`. */
  readonly why: string;
  /** Named as a thing that its shim waits for: `what a qualified shop finds at valve and seat`. */
  readonly first: string;
  /** Its lock let go, and that is all there is of it. */
  readonly moved?: true;
  /** Code of the question that settles it. */
  readonly settles?: string;
}
