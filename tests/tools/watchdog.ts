import { spawn } from 'node:child_process';
import { Socket } from 'node:net';
import { fileURLToPath } from 'node:url';

/**
 * A process beside this one that clears up when this one has ended, however it ended: nothing that runs in a process
 * survives its SIGKILL. It reads from a pipe what there is to clear up; the system closes the pipe with this process.
 */
let pipe: Socket | undefined;

/** `folder`: a data folder with its server. `process`: a process that would start such a server again. */
export type Entry = `folder ${string}` | `process ${number}`;

export function watch(entry: Entry): void {
  pipe ??= startWatchdog();
  pipe.write(`+${entry}\n`);
}

export function forget(entry: Entry): void {
  pipe?.write(`-${entry}\n`);
}

function startWatchdog(): Socket {
  // A worker of the tests outlives its runner until it next has something to tell it, which may be a minute.
  if (process.connected) process.once('disconnect', () => process.kill(process.pid, 'SIGKILL'));
  const child = spawn(
    process.execPath,
    ['--import', 'tsx', fileURLToPath(new URL('watchdog-process.ts', import.meta.url))],
    // A process group of its own: Ctrl-C in the terminal must not end it.
    { detached: true, stdio: ['pipe', 'ignore', 'inherit'] },
  );
  child.unref();
  if (!(child.stdin instanceof Socket)) throw new Error('no pipe to the watchdog');
  child.stdin.unref();
  return child.stdin;
}
