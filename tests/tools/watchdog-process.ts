import { createInterface } from 'node:readline';
import { signal } from '../../server/database/embedded/server-process.ts';
import { discard } from './throwaway-postgres.ts';

/** The other end of `watchdog.ts`: hears what there is until the pipe closes, then clears up what is left. */
const left = new Set<string>();
for await (const line of createInterface({ input: process.stdin })) {
  if (line.startsWith('+')) left.add(line.slice(1));
  else left.delete(line.slice(1));
}
const all = (kind: string) =>
  [...left].filter((entry) => entry.startsWith(kind)).map((entry) => entry.slice(kind.length));
// First whoever would start a server again.
for (const pid of all('process ')) signal(Number(pid), 'SIGKILL');
for (const folder of all('folder ')) await discard(folder);
