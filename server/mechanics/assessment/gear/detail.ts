import type { ValveGear } from '../../../../shared/schemas/words.ts';
import type { StepName } from '../../../../shared/steps.ts';
import type { SheetKindName } from '../evidence.ts';

/** What does not apply to the valve gear of this engine; what is on record is never in it. */
export interface GearDetail {
  readonly gear: ValveGear;
  readonly steps: readonly { readonly step: StepName; readonly why: string }[];
  /** Parts of steps, by the name that each has in its own step. */
  readonly parts: readonly string[];
  readonly kinds: readonly SheetKindName[];
}

/** Something that is not worked out for this engine, with what is done instead. */
export interface NotCovered {
  readonly id: string;
  readonly sentence: string;
  readonly instead: string;
}
