import { type Sent, sendAll } from './send-all.ts';
import { hasSignal, onSignal, tellSignal } from './signal.ts';
import { allEntries } from './store.ts';

const FIRST_MS = 4_000;
const LAST_MS = 60_000;

/** Takes what a sending has shown of the line; answers whether it is to be tried again. */
export function heardFrom({ stopped, outcomes }: Sent): boolean {
  if (stopped?.kind === 'later') tellSignal(stopped.signal);
  else if (outcomes.size > 0) tellSignal(true);
  return stopped?.kind === 'later';
}

/** Sends what waits: when the page opens, when the signal is back, when it is looked at, and every now and then. */
export function keepSending(
  link: string,
  around: { before(): void; after(sent: Sent): void },
): { soon(): void; now(): void } {
  let wait = FIRST_MS;
  let timer: ReturnType<typeof setTimeout> | undefined;

  async function waits(): Promise<boolean> {
    return (await allEntries()).some((entry) => entry.link === link && entry.state === 'waiting');
  }
  async function run(): Promise<void> {
    clearTimeout(timer);
    if (!(await waits())) return;
    around.before();
    const sent = await sendAll(link);
    const again = heardFrom(sent);
    around.after(sent);
    if (again) soon();
  }
  function now(): void {
    // Without a store there is nothing that waits.
    run().catch(() => undefined);
  }
  function soon(): void {
    clearTimeout(timer);
    timer = setTimeout(now, wait);
    wait = Math.min(wait * 2, LAST_MS);
  }
  onSignal((up) => {
    if (!up) return;
    wait = FIRST_MS;
    now();
  });
  document.addEventListener('visibilitychange', () => {
    if (!document.hidden && hasSignal()) now();
  });
  now();
  return { soon, now };
}
