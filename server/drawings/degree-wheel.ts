import { curve, type Point } from './curve.ts';
import { type Anchor, at, circle, label, path } from './svg.ts';

/** The wheel's middle and rim on a sheet 320 wide. */
const WHEEL = { x: 160, y: 152, rim: 84 } as const;

/** Where a wheel angle stands: clockwise from the top, as the crank is turned seen from its front. */
function onWheel(degrees: number, radius: number): Point {
  const angle = (degrees * Math.PI) / 180;
  return [WHEEL.x + radius * Math.sin(angle), WHEEL.y - radius * Math.cos(angle)];
}

/** Rim, a tick each ten degrees, and the names of the two dead centres. */
export function wheel(): string {
  const ticks = Array.from({ length: 36 }, (_, tick) => {
    const [x1, y1] = onWheel(tick * 10, WHEEL.rim);
    const [x2, y2] = onWheel(tick * 10, WHEEL.rim - (tick % 9 === 0 ? 12 : 6));
    return `M${at(x1)} ${at(y1)}L${at(x2)} ${at(y2)}`;
  });
  return (
    circle('draw-behind', WHEEL.x, WHEEL.y, WHEEL.rim) +
    path('draw-behind', ticks.join('')) +
    label(WHEEL.x, WHEEL.y - WHEEL.rim - 9, 'TDC', { anchor: 'middle', soft: true }) +
    label(WHEEL.x, WHEEL.y + WHEEL.rim + 19, 'BDC', { anchor: 'middle', soft: true })
  );
}

/** An arc from one wheel angle on to another, clockwise; past a whole turn it lies on itself. */
export function arc(className: string, from: number, to: number, radius: number): string {
  const steps = Math.max(2, Math.ceil(Math.abs(to - from) / 3));
  const points = Array.from({ length: steps + 1 }, (_, step) =>
    onWheel(from + ((to - from) * step) / steps, radius),
  );
  return curve(className, points);
}

export interface Spoke {
  readonly at: number;
  readonly name: string;
  readonly figure: string;
  readonly moving?: boolean;
}

/** About how wide a letter of a name is. */
const LETTER = 7.6;
/** Names stand in two lines; nearer than this they run into each other. */
const APART = 36;

/** A spoke at each angle and its name beside the rim, names of one side moved apart where they would meet. */
export function spokes(given: readonly Spoke[], inner = 20): string {
  const placed = given.map((spoke) => {
    const [x, y] = onWheel(spoke.at, WHEEL.rim + 12);
    return { spoke, right: x >= WHEEL.x, y };
  });
  return [true, false]
    .flatMap((side) => {
      const own = placed.filter(({ right }) => right === side).sort((a, b) => a.y - b.y);
      let above = Number.NEGATIVE_INFINITY;
      return own.map(({ spoke, y }) => {
        above = Math.max(y, above + APART);
        return spokeWithName(spoke, side ? 'end' : 'start', above, inner);
      });
    })
    .join('');
}

function spokeWithName(spoke: Spoke, anchor: Anchor, y: number, inner: number): string {
  const [x1, y1] = onWheel(spoke.at, inner);
  const [x2, y2] = onWheel(spoke.at, WHEEL.rim + 6);
  const x = anchor === 'end' ? 316 : 4;
  const style = { anchor, ...(spoke.moving ? { className: 'draw-text-moving' } : {}) };
  // A name that stands away from its spoke is led to it.
  const longest = Math.max(spoke.name.length, spoke.figure.length) * LETTER + 4;
  const from = anchor === 'end' ? x - longest : x + longest;
  const isAway = spoke.name !== '' && Math.hypot(x2 - from, y2 - y) > 24;
  return (
    (isAway ? path('draw-dim', `M${at(from)} ${at(y - 4)}L${at(x2)} ${at(y2)}`) : '') +
    path(spoke.moving ? 'draw-moving' : 'draw-outline', `M${at(x1)} ${at(y1)}L${at(x2)} ${at(y2)}`) +
    label(x, y - 3, spoke.name, style) +
    label(x, y + 12, spoke.figure, style)
  );
}
