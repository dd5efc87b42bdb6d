import { GAP_KINDS } from '../../../../../shared/schemas/sheet.ts';
import { placeOf } from '../../common/said.ts';
import type { WithheldRatio } from '../../common/valve-ratio.ts';
import type { Evidence, SheetEvidence, Spring, ValvePlace } from '../../evidence.ts';
import type { SheetDetail, SheetHeld } from './detail.ts';

/** Why nothing is worked out from the lift of this valve on this spring. */
export const heldOf = (held: readonly SheetHeld[], place: ValvePlace, spring: Spring): string[] =>
  held.filter((each) => each.spring === spring && placeOf(each) === placeOf(place)).map(({ lack }) => lack);

const isGap = ({ kind }: SheetEvidence): boolean => GAP_KINDS.some((gap) => gap === kind);

/** The valves whose gaps were read. */
export const gappedIn = ({ sheet }: Evidence): Set<string> =>
  new Set(sheet.filter((each) => each.standing && isGap(each)).map(placeOf));

/** Of valves whose gaps were read: what must come first, before a change is worked out from their ratio. */
export function heldRatios(evidence: Evidence, { held }: Pick<SheetDetail, 'held'>): WithheldRatio[] {
  const gapped = gappedIn(evidence);
  return held
    .filter((each) => gapped.has(placeOf(each)))
    .map(({ cylinder, valve, lack }) => ({ cylinder, valve, lacks: [lack] }));
}
