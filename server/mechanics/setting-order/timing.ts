/** One lobe as a crank sees it, from the cylinder's own firing top dead centre. */
export interface LobeWindow {
  /** Where the lobe is at its peak [rad of the crank after firing top dead centre]. */
  readonly centre: number;
  /** How long the valve is off its base circle, ramps among it [rad of the crank]. */
  readonly open: number;
}

export interface ValveWindows {
  readonly intake: LobeWindow;
  readonly exhaust: LobeWindow;
}

/** A lobe of the card: its centreline and what its duration is stated at; SI. */
interface LobeOfCard {
  readonly centreline?: number;
  readonly durations?: readonly { readonly atLift: number; readonly duration: number }[];
}

export const DEGREE = Math.PI / 180;
const INCH = 0.0254;

/** Ramps and all, of an ordinary cam: common practice, no published source. */
export const ORDINARY: ValveWindows = {
  intake: { centre: 470 * DEGREE, open: 290 * DEGREE },
  exhaust: { centre: 250 * DEGREE, open: 290 * DEGREE },
};

/**
 * What the ramps add to a duration that is stated at a lift: ten degrees, and twelve for each .010 in of that lift. On the
 * wide side, so that a valve counted as on its base circle is on it: common practice, no published source.
 */
const rampsAt = (lift: number): number => (10 + 1200 * (lift / INCH)) * DEGREE;

function openOf({ durations = [] }: LobeOfCard): number | undefined {
  const all = durations.map(({ atLift, duration }) => duration + rampsAt(atLift));
  return all.length === 0 ? undefined : Math.max(...all);
}

/**
 * When the valves of one cylinder are off their base circles, from the card as far as it says it.
 *
 * Equation: open = duration + 10° + 1.2° for each .001 in of the lift it is stated at; intake centre = 360° + centreline;
 * exhaust centre = 360° − centreline
 *
 * @param card [rad] centrelines (intake after, exhaust before the overlap's top dead centre) and durations of each lobe
 * @returns centre and open [rad of the crank] of each, and whether the card gave all of it; what it does not say is an
 * ordinary cam's
 *
 * Validity: four strokes; a cam in time with its card.
 * Source: definitions; the ramps by common practice, no published source.
 */
export function windowsOf(card: Readonly<Record<'intake' | 'exhaust', LobeOfCard>>): {
  readonly windows: ValveWindows;
  readonly fromCard: boolean;
} {
  const { intake, exhaust } = card;
  const told = [intake.centreline, exhaust.centreline, openOf(intake), openOf(exhaust)];
  const turn = 2 * Math.PI;
  return {
    windows: {
      intake: {
        centre: intake.centreline === undefined ? ORDINARY.intake.centre : turn + intake.centreline,
        open: openOf(intake) ?? ORDINARY.intake.open,
      },
      exhaust: {
        centre: exhaust.centreline === undefined ? ORDINARY.exhaust.centre : turn - exhaust.centreline,
        open: openOf(exhaust) ?? ORDINARY.exhaust.open,
      },
    },
    fromCard: told.every((each) => each !== undefined),
  };
}
