/** A smooth curve through points. */
interface Curve {
  at(x: number): number;
  slopeAt(x: number): number;
}

interface Knot {
  readonly x: number;
  readonly y: number;
}

interface Piece {
  readonly from: Knot;
  readonly width: number;
  readonly secant: number;
}

/** One piece as a polynomial in the way past its start. */
interface Cubic {
  readonly x: number;
  readonly y: number;
  readonly slope: number;
  readonly square: number;
  readonly cube: number;
}

function piecesOf(knots: readonly Knot[]): Piece[] {
  return knots.slice(1).map((to, index) => {
    const from = knots[index] ?? to;
    return { from, width: to.x - from.x, secant: (to.y - from.y) / (to.x - from.x) };
  });
}

/** Slope where two pieces meet: zero at a turn, else their weighted harmonic mean. */
function meeting(left: Piece, right: Piece): number {
  if (left.secant * right.secant <= 0) return 0;
  const [leftWeight, rightWeight] = [2 * right.width + left.width, right.width + 2 * left.width];
  return (leftWeight + rightWeight) / (leftWeight / left.secant + rightWeight / right.secant);
}

/** Slope at an end from the two pieces next to it, held to what keeps the end piece monotone. */
function ending(end: Piece, next: Piece): number {
  const slope =
    ((2 * end.width + next.width) * end.secant - end.width * next.secant) / (end.width + next.width);
  if (slope * end.secant <= 0) return 0;
  if (end.secant * next.secant < 0 && Math.abs(slope) > 3 * Math.abs(end.secant)) return 3 * end.secant;
  return slope;
}

function slopesOf(pieces: readonly Piece[]): number[] {
  const slopes = pieces.slice(1).map((right, index) => meeting(pieces[index] ?? right, right));
  const [first, last] = [pieces[0], pieces.at(-1)];
  if (first === undefined || last === undefined) return [0];
  return [ending(first, pieces[1] ?? first), ...slopes, ending(last, pieces.at(-2) ?? last)];
}

function cubicsOf(pieces: readonly Piece[]): Cubic[] {
  const slopes = slopesOf(pieces);
  return pieces.map(({ from, width, secant }, index) => {
    const [start, end] = [slopes[index] ?? 0, slopes[index + 1] ?? 0];
    const square = (3 * secant - 2 * start - end) / width;
    return { x: from.x, y: from.y, slope: start, square, cube: (start + end - 2 * secant) / width ** 2 };
  });
}

/**
 * The monotone piecewise cubic through points: it rises where they rise, falls where they fall, turns only at a
 * point, and has a continuous slope.
 *
 * Equation: cubic Hermite on each piece; inner slopes (w₁ + w₂)/(w₁/δ₁ + w₂/δ₂), w₁ = 2h₂ + h₁, w₂ = h₂ + 2h₁, zero at
 * a turn; end slopes by three points
 *
 * @param knots [1] two points or more, x rising
 * @returns the curve; outside the points its end pieces go on
 *
 * Validity: x strictly rising.
 * Source: F. N. Fritsch and J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300–304, with the end rule of C. Moler,
 * Numerical Computing with MATLAB (2004), section 3.6.
 */
export function monotoneCubic(knots: readonly Knot[]): Curve {
  const cubics = cubicsOf(piecesOf(knots));
  const starts = cubics.map((cubic) => cubic.x);
  const [only] = knots;
  const flat: Cubic = { x: only?.x ?? 0, y: only?.y ?? 0, slope: 0, square: 0, cube: 0 };
  const cubicAt = (x: number): Cubic => {
    let [low, high] = [0, starts.length - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((starts[middle] ?? x) <= x) low = middle;
      else high = middle - 1;
    }
    return cubics[low] ?? flat;
  };
  return {
    at(x) {
      const cubic = cubicAt(x);
      const t = x - cubic.x;
      return cubic.y + t * (cubic.slope + t * (cubic.square + t * cubic.cube));
    },
    slopeAt(x) {
      const cubic = cubicAt(x);
      const t = x - cubic.x;
      return cubic.slope + t * (2 * cubic.square + t * 3 * cubic.cube);
    },
  };
}
