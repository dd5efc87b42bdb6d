import type { SetUpNow } from './set-ups.ts';

/** What must come off or be moved for it: the indicator does not stand where it stood before. */
const movesIndicator = (before: SetUpNow, after: SetUpNow): boolean =>
  before.cylinder !== after.cylinder ||
  before.valve !== after.valve ||
  before.armId !== after.armId ||
  before.spring !== after.spring ||
  before.lifter !== after.lifter ||
  before.restsOn !== after.restsOn;

const differs = (before: SetUpNow, after: SetUpNow): boolean =>
  before.lash !== after.lash || before.alignment !== after.alignment;

/**
 * Counts how often the indicator was set up again, by set-up. Taking out the lash or standing the plunger straight
 * is a set-up of its own on the record, but the zero is the one it had; a set-up with nothing changed was started
 * because the indicator was put up again.
 */
export function indicatorPlaces(setUps: readonly SetUpNow[]): ReadonlyMap<string, number> {
  const each = setUps.filter((setUp, index) => setUp.id !== setUps[index - 1]?.id);
  const places = new Map<string, number>();
  let place = 0;
  for (const [index, setUp] of each.entries()) {
    const before = each[index - 1];
    if (before !== undefined && (movesIndicator(before, setUp) || !differs(before, setUp))) place += 1;
    places.set(setUp.id, place);
  }
  return places;
}
