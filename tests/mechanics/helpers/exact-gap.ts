/**
 * A gap over the crank by formulas of its own, nothing of the project in them: the slider-crank in its textbook form
 * (J. E. Shigley and J. J. Uicker, Theory of Machines and Mechanisms, the offset-free slider-crank, from memory), and a
 * lobe that rises and falls as a cosine, which is invented. Inches and degrees.
 */
export interface ExactEngine {
  readonly stroke: number;
  readonly rod: number;
  readonly lobeLift: number;
  readonly ratio: number;
  /** After top dead centre; an exhaust's is negative. */
  readonly centreline: number;
  readonly duration: number;
  readonly closedGap: number;
}

const RAD = Math.PI / 180;

export const dropAt = ({ stroke, rod }: ExactEngine, angle: number): number => {
  const crank = stroke / 2;
  const [sine, cosine] = [Math.sin(angle * RAD), Math.cos(angle * RAD)];
  return crank + rod - crank * cosine - Math.sqrt(rod * rod - crank * crank * sine * sine);
};

export const lobeAt = ({ lobeLift, centreline, duration }: ExactEngine, angle: number): number =>
  Math.abs(angle - centreline) >= duration / 2
    ? 0
    : (lobeLift / 2) * (1 + Math.cos((360 * (angle - centreline) * RAD) / duration));

export const gapAt = (engine: ExactEngine, angle: number): number =>
  engine.closedGap + dropAt(engine, angle) - lobeAt(engine, angle) * engine.ratio;

/** The least gap about overlap by halving a bracket in the golden ratio; nothing is fitted. */
export function exactLeast(engine: ExactEngine): { readonly angle: number; readonly gap: number } {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = engine.centreline > 0 ? [0, 40] : [-40, 0];
  while (high - low > 1e-9) {
    const [one, two] = [high - golden * (high - low), low + golden * (high - low)];
    if (gapAt(engine, one) < gapAt(engine, two)) high = two;
    else low = one;
  }
  const angle = (low + high) / 2;
  return { angle, gap: gapAt(engine, angle) };
}

/** Numbers that are the same at every run, and normal ones of them (Box and Muller). */
export function numbers(seed: number) {
  let state = seed;
  const uniform = (from = 0, to = 1) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return from + ((to - from) * (state + 1)) / (2 ** 32 + 1);
  };
  const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal };
}

export function inventedEngine(
  uniform: (from: number, to: number) => number,
  side: 'intake' | 'exhaust',
): ExactEngine {
  const stroke = uniform(3, 4.2);
  const centreline = uniform(102, 116);
  return {
    stroke,
    rod: stroke * uniform(1.5, 1.9),
    lobeLift: uniform(0.3, 0.42),
    ratio: uniform(1.5, 1.8),
    centreline: side === 'intake' ? centreline : -centreline,
    duration: uniform(270, 310),
    closedGap: uniform(0.3, 0.45),
  };
}
