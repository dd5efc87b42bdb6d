import { type Case, isHydraulic, isRunning } from './case.ts';
import type { Action, ExplainReading } from './types.ts';

/** Something that can be done next: how long it takes, and the reading it would give (none: a question). */
export interface Offer {
  readonly action: Action;
  readonly minutes: number;
  readonly reading?: ExplainReading;
  /** The indicator is set up again for it. */
  readonly renewed: boolean;
}

const ENOUGH_PASSES = 3;

/** The next pass as it would be taken with nothing changed: the flags of the last valve reading kept. */
function nextPass(given: Case): ExplainReading {
  const last = given.input.readings.findLast((reading) => reading.of === 'valve-lift');
  if (last === undefined) return { of: 'valve-lift', value: 0, pass: 1, setUp: 0 };
  const { atLobeLift: _, ...kept } = last;
  return { ...kept, value: 0, pass: last.pass + 1 };
}

function questionOffers(given: Case): Offer[] {
  const asked = given.input.answers?.some((answer) => answer.ask === 'read-back') ?? false;
  if (asked) return [];
  return [{ action: 'read-back', minutes: given.assumed.minutesReadBack, renewed: false }];
}

function valveOffers(given: Case, next: ExplainReading): Offer[] {
  const a = given.assumed;
  const valves = given.input.readings.filter((reading) => reading.of === 'valve-lift');
  const counted = valves.filter((reading) => reading.counted && reading.atLobeLift === undefined);
  const offers: Offer[] = [];
  const offer = (action: Action, minutes: number, change: Partial<ExplainReading>) =>
    offers.push({ action, minutes, reading: { ...next, ...change }, renewed: false });
  if (counted.length < ENOUGH_PASSES) offer('one-more-pass', a.minutesOneMorePass, { counted: true });
  if (!valves.some((v) => v.lashSet)) offer('lash-to-zero', a.minutesLashToZero, { lashSet: true });
  if (!valves.some((v) => v.aligned)) offer('align-plunger', a.minutesAlignPlunger, { aligned: true });
  if (!valves.some((v) => v.atLobeLift !== undefined)) {
    offer('valve-lift-at-.200', a.minutesAtStation, { atLobeLift: a.station });
  }
  return offers;
}

/** Whoever has no dial reads the lobe with the same tool. */
const ofTool = ({ errorLimit }: ExplainReading): Pick<ExplainReading, 'errorLimit'> =>
  errorLimit === undefined ? {} : { errorLimit };

function lobeOffers(given: Case, next: ExplainReading): Offer[] {
  const taken = given.input.readings.filter((r) => r.of === 'lobe-lift' && r.method !== 'caliper').length;
  if (taken >= ENOUGH_PASSES) return [];
  const reading: ExplainReading = {
    of: 'lobe-lift',
    value: 0,
    pass: taken + 1,
    setUp: next.setUp,
    ...ofTool(next),
  };
  return [{ action: 'lobe-at-lifter', minutes: given.assumed.minutesLobeAtLifter, reading, renewed: false }];
}

function changedOffers(given: Case, next: ExplainReading, somethingElse: number): Offer[] {
  const a = given.assumed;
  const valves = given.input.readings.filter((reading) => reading.of === 'valve-lift');
  const setUp = Math.max(0, ...given.input.readings.map((reading) => reading.setUp)) + 1;
  const offers: Offer[] = [];
  if (!valves.some((v) => !isRunning(v) && !isHydraulic(v))) {
    offers.push({
      action: 'light-spring-solid-lifter',
      minutes: isHydraulic(next) ? a.minutesLightSpringHydraulic : a.minutesLightSpring,
      reading: { ...next, spring: 'light', lifter: 'solid', setUp },
      renewed: true,
    });
  }
  if (somethingElse >= a.somethingElseAsks && !valves.some((v) => v.otherValve)) {
    offers.push({
      action: 'rocker-on-another-valve',
      minutes: a.minutesOtherValve,
      reading: { ...next, otherValve: true, setUp },
      renewed: true,
    });
  }
  return offers;
}

/** Everything still worth offering: each action till it is done, passes and lobe till there are three. */
export function offersFor(given: Case, somethingElse: number): Offer[] {
  const next = nextPass(given);
  const taken = given.input.notOffered ?? [];
  const offers = [
    ...questionOffers(given),
    ...valveOffers(given, next),
    ...lobeOffers(given, next),
    ...changedOffers(given, next, somethingElse),
  ];
  return offers.filter(({ action }) => !taken.includes(action));
}
