import { setTimeout } from 'node:timers/promises';

/** How often a state that announces itself to nobody (a pid, a lock, a starting server) is looked at again. */
export const LOOK_AGAIN_MS = 40;

/** Asks until the answer is yes or the time is up; returns the last answer. */
export async function until(ask: () => boolean | Promise<boolean>, limitMs: number): Promise<boolean> {
  const end = Date.now() + limitMs;
  for (;;) {
    if (await ask()) return true;
    if (Date.now() >= end) return false;
    await setTimeout(LOOK_AGAIN_MS);
  }
}
