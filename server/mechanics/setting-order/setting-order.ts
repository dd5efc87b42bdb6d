import { withinHalfCycle } from '../cam/wrap.ts';
import { DEGREE, type LobeWindow, type ValveWindows } from './timing.ts';

const CYCLE = 4 * Math.PI;
/** A valve is set only where the crank may be off by this much and the lifter is still on the base circle. */
const ROOM = 20 * DEGREE;
/** How far before its base circle an intake is called nearly closed. */
const NEARLY = 10 * DEGREE;

/** One cylinder by the order of exhaust opening and intake closing; angles of the crank after the first firing. */
interface SettingRow {
  readonly cylinder: number;
  /** Where the exhaust begins to open: the intake of this cylinder is set. */
  readonly setIntakeAt: number;
  /** Where the intake has nearly closed: the exhaust of this cylinder is set. */
  readonly setExhaustAt: number;
}

/** The valves that can be set with one cylinder at its firing top dead centre. */
export interface SettingPosition {
  readonly firing: number;
  readonly intakes: readonly number[];
  readonly exhausts: readonly number[];
}

export interface SettingOrder {
  readonly rows: readonly SettingRow[];
  /** Left out where it does not apply. */
  readonly twoPositions?: readonly [SettingPosition, SettingPosition];
  readonly whyNot?: 'odd-count' | 'few-cylinders' | 'no-room';
}

const wrapped = (angle: number): number => ((angle % CYCLE) + CYCLE) % CYCLE;

/** How far the crank is from where the valve leaves or meets its base circle; negative while it is off it. */
const roomOnBase = (after: number, { centre, open }: LobeWindow): number =>
  Math.abs(withinHalfCycle(after - centre)) - open / 2;

/** Where the cylinders are, each from its own firing, when the one at `first` of the order fires. */
function positionAt(order: readonly number[], first: number, windows: ValveWindows) {
  const count = order.length;
  const firing = order[first] ?? 0;
  const half = count / 2;
  const seats = order.map((cylinder, index) => {
    const late = (((index - first) % count) + count) % count;
    return { cylinder, late, after: wrapped((-late * CYCLE) / count) };
  });
  // What fires within the coming turn has its exhaust shut, what fired within the last one its intake.
  const intakes = seats.filter(({ late }) => late === 0 || late > half);
  const exhausts = seats.filter(({ late }) => late < half);
  const rooms = [
    ...intakes.map(({ after }) => roomOnBase(after, windows.intake)),
    ...exhausts.map(({ after }) => roomOnBase(after, windows.exhaust)),
  ];
  const numbers = (all: typeof seats) => all.map(({ cylinder }) => cylinder).sort((a, b) => a - b);
  return {
    room: Math.min(...rooms),
    position: { firing, intakes: numbers(intakes), exhausts: numbers(exhausts) },
  };
}

function twoPositions(
  order: readonly number[],
  windows: ValveWindows,
): Pick<SettingOrder, 'twoPositions' | 'whyNot'> {
  if (order.length % 2 !== 0) return { whyNot: 'odd-count' };
  if (order.length < 4) return { whyNot: 'few-cylinders' };
  const [first, second] = [positionAt(order, 0, windows), positionAt(order, order.length / 2, windows)];
  if (Math.min(first.room, second.room) < ROOM) return { whyNot: 'no-room' };
  return { twoPositions: [first.position, second.position] };
}

/**
 * Which valves may be set at which position of the crank: cylinder by cylinder as the exhaust opens and the intake closes,
 * and all of them in two positions a turn apart, where the engine allows that.
 *
 * Equation: a cylinder that fires i-th of n is at (θ − i·720°/n) mod 720° after its own firing; a valve is on its base
 * circle while it is further from its peak than half of what its lobe is open
 *
 * @param order [1] cylinders in their firing order
 * @param windows [rad] centre and open of each lobe, from the cylinder's own firing top dead centre
 * @returns rows [rad of the crank after the first cylinder of the order fired]; twoPositions [1]: the valves that are at
 * least 20° of the crank away from leaving their base circles; or whyNot: an odd count, fewer than four, or no such room
 *
 * Validity: four strokes, firing evenly spaced: every 720°/n of the crank.
 * Source: common practice, no published source; derived here from where each lobe is.
 */
export function settingOrder(order: readonly number[], windows: ValveWindows): SettingOrder {
  const { intake, exhaust } = windows;
  return {
    rows: order.map((cylinder, index) => {
      const fires = (index * CYCLE) / order.length;
      return {
        cylinder,
        setIntakeAt: wrapped(fires + exhaust.centre - exhaust.open / 2),
        setExhaustAt: wrapped(fires + intake.centre + intake.open / 2 - NEARLY),
      };
    }),
    ...twoPositions(order, windows),
  };
}
