/** Median of a list. */
export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  const high = sorted[middle] ?? 0;
  return sorted.length % 2 === 1 ? high : ((sorted[middle - 1] ?? 0) + high) / 2;
}

/** Times one piece of work, in microseconds each, in rounds that are long enough for the clock. */
async function roundsOf(work: () => unknown, roundMs: number, rounds: number): Promise<number[]> {
  const each: number[] = [];
  for (let warm = performance.now(); performance.now() - warm < roundMs; ) await work();
  for (let round = 0; round < rounds; round += 1) {
    const start = performance.now();
    let times = 0;
    while (performance.now() - start < roundMs) {
      await work();
      times += 1;
    }
    each.push(((performance.now() - start) / times) * 1000);
  }
  return each;
}

export async function timed(work: () => unknown, roundMs = 150, rounds = 5): Promise<number> {
  return median(await roundsOf(work, roundMs, rounds));
}

/** The quickest round: what the work takes where nothing else disturbs it. */
export async function quickest(work: () => unknown, roundMs = 40, rounds = 7): Promise<number> {
  return Math.min(...(await roundsOf(work, roundMs, rounds)));
}

export interface Compared {
  /** Microseconds each. */
  readonly floor: number;
  readonly work: number;
  readonly ratio: number;
}

/**
 * Work against its floor, in turns within the same run, so that a busy machine slows both alike.
 * The ratio is floor over work: 1 is as fast as the floor.
 */
export async function against(
  floor: () => unknown,
  work: () => unknown,
  options: { roundMs?: number; turns?: number } = {},
): Promise<Compared> {
  const floors: number[] = [];
  const works: number[] = [];
  for (let turn = 0; turn < (options.turns ?? 5); turn += 1) {
    floors.push(await timed(floor, options.roundMs ?? 300, 1));
    works.push(await timed(work, options.roundMs ?? 300, 1));
  }
  return {
    floor: median(floors),
    work: median(works),
    ratio: median(floors.map((each, turn) => each / (works[turn] ?? each))),
  };
}

export const shown = (microseconds: number): string =>
  microseconds < 1000 ? `${microseconds.toFixed(1)} µs` : `${(microseconds / 1000).toFixed(2)} ms`;
