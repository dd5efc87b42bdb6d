/** A drawing read back as numbers: what its markup says, and not what made it. */
type Spot = readonly [number, number];

const numbersOf = (text: string): number[] => (text.match(/-?\d+(?:\.\d+)?/g) ?? []).map(Number);

/** The `d` of every path of one class, in order. */
export const pathsOf = (svg: string, className: string): string[] =>
  Array.from(svg.matchAll(/<path class="([^"]*)" d="([^"]*)"/g))
    .filter(([, classes]) => classes === className)
    .map(([, , d]) => d ?? '');

interface Circle {
  readonly className: string;
  readonly at: Spot;
  readonly r: number;
}

export const circlesOf = (svg: string): Circle[] =>
  Array.from(
    svg.matchAll(/<circle class="([^"]*)" cx="([-\d.]+)" cy="([-\d.]+)" r="([\d.]+)"/g),
    ([, className = '', cx, cy, r]) => ({ className, at: [Number(cx), Number(cy)], r: Number(r) }),
  );

interface Text {
  readonly text: string;
  readonly at: Spot;
  readonly anchor: string;
}

export const textsOf = (svg: string): Text[] =>
  Array.from(svg.matchAll(/<text([^>]*)>([^<]*)<\/text>/g), ([, attributes = '', text = '']) => {
    const of = (name: string) => new RegExp(` ${name}="([^"]*)"`).exec(attributes)?.[1] ?? '';
    return { text, at: [Number(of('x')), Number(of('y'))], anchor: of('text-anchor') };
  });

/** The upper or only line of a level stroke, by its y. */
export const levelOf = (d: string): number => numbersOf(d)[1] ?? Number.NaN;

/** The two ends of an arc `M x y A r r 0 large sweep x y`, and its radius. */
export function arcOf(d: string): {
  readonly from: Spot;
  readonly to: Spot;
  readonly r: number;
  readonly large: boolean;
} {
  const [x1 = 0, y1 = 0, r = 0, , , large = 0, , x2 = 0, y2 = 0] = numbersOf(d);
  return { from: [x1, y1], to: [x2, y2], r, large: large === 1 };
}

/** Degrees from the right, counter-clockwise; the sheet's y goes down. */
export const directionOf = (corner: Spot, to: Spot): number =>
  ((Math.atan2(corner[1] - to[1], to[0] - corner[0]) * 180) / Math.PI + 360) % 360;
