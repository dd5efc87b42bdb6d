/** Less than this is work that nobody waits for, whatever it grows by, and too little to be told from noise. */
const FLOOR_MS = 100;
/** Twice as much may take twice as long, and half as long again for what the machine does beside it. */
const MOST_TIMES = 3;
/** Whatever it grows by: one text must not hold up everybody else. */
const MOST_MS = 1000;
const TRIES = 3;

async function spent(work: () => Promise<unknown>): Promise<number> {
  const begun = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(begun);
  return (user + system) / 1000;
}

/** The least of several runs: what the machine did beside them only adds. */
async function least(work: () => Promise<unknown>): Promise<number> {
  const runs: number[] = [];
  for (let run = 0; run < TRIES; run += 1) runs.push(await spent(work));
  return Math.min(...runs);
}

/** All of what is given, half of it, and a quarter. */
export type Share = 1 | 0.5 | 0.25;

/**
 * What is wrong with how `work` grows, by the processor time of this process and its threads: of all of it against half
 * of it, and then against a quarter, since a step of its own, such as a list that goes to another thread, is no growth.
 * Undefined where it grows no faster than what it is given, or is below the floor.
 */
export async function growth(work: (share: Share) => Promise<unknown>): Promise<string | undefined> {
  if ((await spent(() => work(1))) < FLOOR_MS) return undefined;
  const whole = await least(() => work(1));
  if (whole < FLOOR_MS) return undefined;
  const half = await least(() => work(0.5));
  if (whole / half < MOST_TIMES && whole < MOST_MS) return undefined;
  const quarter = await least(() => work(0.25));
  if (whole / quarter < MOST_TIMES ** 2 && whole < MOST_MS) return undefined;
  return `${[quarter, half, whole].map((ms) => ms.toFixed(0)).join(', ')} ms, each of twice as much`;
}
