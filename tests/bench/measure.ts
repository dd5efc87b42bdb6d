/** Median of a list. */
export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  const high = sorted[middle] ?? 0;
  return sorted.length % 2 === 1 ? high : ((sorted[middle - 1] ?? 0) + high) / 2;
}

/** Microseconds each over one round that is long enough for the clock. */
async function round(work: () => unknown, ms: number): Promise<number> {
  const start = performance.now();
  let times = 0;
  while (performance.now() - start < ms) {
    await work();
    times += 1;
  }
  return ((performance.now() - start) / times) * 1000;
}

/** The quickest of many short rounds, in microseconds each: what the work takes where nothing disturbs it. */
export async function quickest(work: () => unknown, ms = 150): Promise<number> {
  await round(work, ms);
  let least = Number.POSITIVE_INFINITY;
  for (let spent = 0; spent < 3 * ms; spent += 3) least = Math.min(least, await round(work, 3));
  return least;
}

export interface Compared {
  /** Microseconds each. */
  readonly floor: number;
  readonly work: number;
  readonly ratio: number;
  /** The same of this process's processor time, which waiting for a busy machine does not add to. */
  readonly ofProcessor: number;
}

async function once(work: () => unknown): Promise<number> {
  const start = performance.now();
  await work();
  return (performance.now() - start) * 1000;
}

/** At a time, so that each finds the processor's caches as it left them. */
const IN_A_ROW = 10;

/** Until the engine has compiled what is called often; a slow piece of work gets six seconds. */
async function warm(work: () => unknown): Promise<void> {
  const start = performance.now();
  for (let times = 0; times < 3000 && performance.now() - start < 6000; times += 1) await work();
}

interface Run {
  readonly each: number[];
  processor: number;
}

async function inARow(work: () => unknown, run: Run): Promise<void> {
  const before = process.cpuUsage();
  for (let times = 0; times < IN_A_ROW; times += 1) run.each.push(await once(work));
  const { user, system } = process.cpuUsage(before);
  run.processor += user + system;
}

/**
 * Work against its floor, in turns within the same run, each call timed by itself: a busy machine slows both alike,
 * and a call that it holds up leaves the medians where they are. The ratio is floor over work: 1 is as fast.
 */
export async function against(
  floor: () => unknown,
  work: () => unknown,
  { seconds = 8 }: { seconds?: number } = {},
): Promise<Compared> {
  const floors: Run = { each: [], processor: 0 };
  const works: Run = { each: [], processor: 0 };
  await warm(floor);
  await warm(work);
  for (const start = performance.now(); performance.now() - start < seconds * 1000; ) {
    await inARow(floor, floors);
    await inARow(work, works);
  }
  const bare = median(floors.each);
  const whole = median(works.each);
  return { floor: bare, work: whole, ratio: bare / whole, ofProcessor: floors.processor / works.processor };
}

export const shown = (microseconds: number): string =>
  microseconds < 1000 ? `${microseconds.toFixed(1)} µs` : `${(microseconds / 1000).toFixed(2)} ms`;
