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

/**
 * What is wrong with how `work` grows, by the processor time of this process and its threads: of all of it against half
 * of it. Undefined where it grows no faster than what it is given, or is below the floor.
 */
export async function growth(work: (share: 1 | 0.5) => Promise<unknown>): Promise<string | undefined> {
  if ((await spent(() => work(1))) < FLOOR_MS) return undefined;
  const whole = await least(() => work(1));
  if (whole < FLOOR_MS) return undefined;
  const half = await least(() => work(0.5));
  if (whole / half < MOST_TIMES && whole < MOST_MS) return undefined;
  return `${half.toFixed(0)} ms, of twice as much ${whole.toFixed(0)} ms`;
}
