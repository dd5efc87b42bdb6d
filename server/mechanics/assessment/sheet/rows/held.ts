import { defined } from '../../../../../shared/defined.ts';
import { GAP_KINDS } from '../../../../../shared/schemas/sheet.ts';
import { toRead, toSay } from '../../common/lack.ts';
import { placeOf } from '../../common/said.ts';
import type { WithheldRatio } from '../../common/valve-ratio.ts';
import type { Evidence, SheetEvidence, Spring, ValvePlace } from '../../evidence.ts';
import type { SheetDetail, SheetHeld } from './detail.ts';

const heldAt = (held: readonly SheetHeld[], place: ValvePlace, spring: Spring): SheetHeld[] =>
  held.filter((each) => each.spring === spring && placeOf(each) === placeOf(place));

/** Why nothing is worked out from the lift of this valve on this spring. */
export const heldOf = (held: readonly SheetHeld[], place: ValvePlace, spring: Spring): string[] => [
  ...new Set(heldAt(held, place, spring).map(({ lack }) => lack)),
];

const isGap = ({ kind }: SheetEvidence): boolean => GAP_KINDS.some((gap) => gap === kind);

/** The valves whose gaps were read. */
export const gappedIn = ({ sheet }: Evidence): Set<string> =>
  new Set(sheet.filter((each) => each.standing && isGap(each)).map(placeOf));

/**
 * Of valves whose lift is not worked with: what must come first. What made it read low is in it, so that the arm has that
 * ratio or more; of what may have been made to read high nobody knows.
 */
export function heldRatios(
  evidence: Evidence,
  { held, ratios }: Pick<SheetDetail, 'held' | 'ratios'>,
): WithheldRatio[] {
  const gapped = gappedIn(evidence);
  return ratios.flatMap((ratio): WithheldRatio[] => {
    const { cylinder, valve, spring, value, low, high, soldAsThen, comesOff } = ratio;
    const lacks = [
      ...heldOf(held, ratio, spring).map((lack) => toRead('another-reading', lack)),
      ...(spring === 'not-said' ? [toSay('which-spring', 'which spring was on the valve')] : []),
    ];
    if (lacks.length === 0) return [];
    const isLeast = heldAt(held, ratio, spring).every(({ mayBeLess }) => mayBeLess !== true);
    const isKnown = value !== undefined && low !== undefined && high !== undefined;
    return [
      {
        cylinder,
        valve,
        ...defined({ soldAsThen, comesOff }),
        lacks,
        ...(isKnown ? { asRead: { value, low, high, orMore: isLeast } } : {}),
        ...(gapped.has(placeOf(ratio)) ? {} : { ofSheet: true }),
      },
    ];
  });
}
