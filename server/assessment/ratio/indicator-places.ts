import type { SetUp } from '../../records/set-ups/set-ups.ts';

/** What must come off or be moved for it: the indicator does not stand where it stood before. */
const movesIndicator = (before: SetUp, after: SetUp): boolean =>
  before.cylinder !== after.cylinder ||
  before.valve !== after.valve ||
  before.armId !== after.armId ||
  before.method.spring !== after.method.spring ||
  before.method.lifter !== after.method.lifter ||
  before.method.restsOn !== after.method.restsOn;

const differs = (before: SetUp, after: SetUp): boolean =>
  before.method.lash !== after.method.lash || before.method.alignment !== after.method.alignment;

/**
 * Counts how often the indicator was set up again, by set-up. Taking out the lash or standing the plunger straight
 * is a set-up of its own on the record, but the zero is the one it had; a set-up with nothing changed was started
 * because the indicator was put up again.
 */
export function indicatorPlaces(setUps: readonly SetUp[]): ReadonlyMap<string, number> {
  const places = new Map<string, number>();
  let place = 0;
  for (const [index, setUp] of setUps.entries()) {
    const before = setUps[index - 1];
    if (before !== undefined && (movesIndicator(before, setUp) || !differs(before, setUp))) place += 1;
    places.set(setUp.id, place);
  }
  return places;
}
