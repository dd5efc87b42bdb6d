import { impossible } from '../../../shared/problems/faults.ts';
import type { Side, TimedEvent } from '../../../shared/schemas/event-field.ts';
import { everyFault } from '../kit/every-fault.ts';

const HALF_TURN = Math.PI;
const CYCLE = 4 * Math.PI;

export type LobeSide = 'intake' | 'exhaust';

/**
 * The timing of one lobe in crank radians, the same for both sides: `atTop` is the event by top dead centre
 * (intake opens BTDC, exhaust closes ATDC), `atBottom` the one by bottom dead centre (intake closes ABDC,
 * exhaust opens BBDC); each positive while it widens the opening, negative on the other side.
 */
export interface LobeTiming {
  readonly atTop: number;
  readonly atBottom: number;
  readonly duration: number;
  /** Positive after TDC for an intake, positive before TDC for an exhaust. */
  readonly centreline: number;
}

/** The sides that the trade tells each event from; the other side of the same dead centre is negative. */
const USUAL_SIDES = {
  intake: { opens: 'BTDC', closes: 'ABDC' },
  exhaust: { opens: 'BBDC', closes: 'ATDC' },
} as const satisfies Record<LobeSide, { opens: Side; closes: Side }>;

/** The two sides an event of a lobe may be told from. */
export const EVENT_SIDES = {
  intake: { opens: ['BTDC', 'ATDC'], closes: ['BBDC', 'ABDC'] },
  exhaust: { opens: ['BBDC', 'ABDC'], closes: ['BTDC', 'ATDC'] },
} as const satisfies Record<LobeSide, { opens: readonly Side[]; closes: readonly Side[] }>;

const told = (event: TimedEvent, from: Side): number => (event.side === from ? event.angle : -event.angle);

/**
 * Timing of a lobe from its two events.
 *
 * Equation: duration = atTop + 180° + atBottom; centreline = duration/2 − atTop
 *
 * @param side [1] which lobe
 * @param opens [rad] opening event with the side it is told from
 * @param closes [rad] closing event with the side it is told from
 * @param fields [1] the names of the two fields, for a fault
 * @throws impossible-input when the valve would close before it opens, or stay open over 720°
 *
 * Validity: symmetric lobes for the centreline; all events at one stated lift.
 * Source: definitions, common practice, no published source.
 */
export function timingFromEvents(
  side: LobeSide,
  opens: TimedEvent,
  closes: TimedEvent,
  fields: readonly string[],
): LobeTiming {
  const opensAt = told(opens, USUAL_SIDES[side].opens);
  const closesAt = told(closes, USUAL_SIDES[side].closes);
  const duration = opensAt + HALF_TURN + closesAt;
  if (duration <= 0) impossible(fields, 'the valve would close before it opens');
  if (duration > CYCLE) impossible(fields, 'the valve would be open for more than the whole cycle of 720°');
  const atTop = side === 'intake' ? opensAt : closesAt;
  const atBottom = side === 'intake' ? closesAt : opensAt;
  return { atTop, atBottom, duration, centreline: (HALF_TURN + atBottom - atTop) / 2 };
}

/**
 * Timing of a lobe from its duration and centreline.
 *
 * Equation: atTop = duration/2 − centreline; atBottom = duration/2 + centreline − 180°
 *
 * @param duration [rad] crank, above zero, to 720°
 * @param centreline [rad] crank, after TDC for an intake, before TDC for an exhaust, 0 to 360°
 * @param fields [1] the names of the two fields, for a fault
 * @throws impossible-input when the duration is over 720° or the centreline over 360°
 *
 * Validity: symmetric lobes.
 * Source: definitions, common practice, no published source.
 */
export function timingFromCentreline(
  duration: number,
  centreline: number,
  fields: { readonly duration: string; readonly centreline: string },
): LobeTiming {
  everyFault(
    () => duration <= CYCLE || impossible([fields.duration], 'is more than the whole cycle of 720°'),
    () =>
      centreline <= 2 * Math.PI ||
      impossible([fields.centreline], 'is more than a turn of the crank from TDC'),
  );
  return {
    atTop: duration / 2 - centreline,
    atBottom: duration / 2 + centreline - HALF_TURN,
    duration,
    centreline,
  };
}
