import type { Evidence, SheetEvidence } from '../evidence.ts';

/** Read with an arm that is named and on the engine still: before it was moved, and one side of a swap. */
const isOfArmStillOn = ({ arms, kind, armId }: SheetEvidence, { seats }: Evidence): boolean =>
  arms === 'before' &&
  kind === 'valve-lift' &&
  armId !== undefined &&
  seats.some((seat) => seat.armId === armId);

/** The same evidence with lifts that were read before a swap among those of the arms that are on: which arm it was is said. */
export const withMovedArms = (evidence: Evidence): Evidence =>
  evidence.sheet.some((each) => isOfArmStillOn(each, evidence))
    ? {
        ...evidence,
        sheet: evidence.sheet.map((each) =>
          isOfArmStillOn(each, evidence) ? { ...each, arms: 'these' } : each,
        ),
      }
    : evidence;
