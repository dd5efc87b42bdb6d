/** A small seeded source of chance, so that a run can be repeated. */
export interface Chance {
  /** Even between two bounds. */
  between(low: number, high: number): number;
  normal(spread: number): number;
  /** True with the probability given. */
  happens(probability: number): boolean;
  sign(): 1 | -1;
  pick<T>(items: readonly T[]): T;
}

/** Mulberry32: 32 bits of state, period 2^32, public domain. */
function uniformSource(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export function chanceFrom(seed: number): Chance {
  const uniform = uniformSource(seed);
  return {
    between: (low, high) => low + (high - low) * uniform(),
    normal: (spread) => spread * Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
    happens: (probability) => uniform() < probability,
    sign: () => (uniform() < 0.5 ? -1 : 1),
    pick: (items) => {
      const item = items[Math.floor(uniform() * items.length)];
      if (item === undefined) throw new Error('nothing to pick from');
      return item;
    },
  };
}
