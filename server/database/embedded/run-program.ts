import { type SpawnOptions, spawn } from 'node:child_process';
import { once } from 'node:events';
import type { Account } from './account.ts';

/** None of the service's own environment: it may hold secrets, and libpq variables would bend initdb. */
export const PLAIN_ENVIRONMENT: Readonly<Record<string, string>> = {
  PATH: process.env.PATH ?? '/usr/local/bin:/usr/bin:/bin',
  LC_ALL: 'C',
};

export interface Finished {
  readonly code: number | null;
  readonly output: string;
}

/** Runs a program to its end and keeps what it said. */
export async function runProgram(
  program: string,
  args: readonly string[],
  options: SpawnOptions,
): Promise<Finished> {
  const child = spawn(program, args, {
    ...options,
    env: PLAIN_ENVIRONMENT,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let output = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream?.setEncoding('utf8').on('data', (text: string) => {
      output += text;
    });
  }
  const [code]: unknown[] = await once(child, 'close');
  return { code: typeof code === 'number' ? code : null, output };
}

/** Tries it: path, permission, mount options and libraries all have to be right for this account. */
export async function runsAs(program: string, account: Account): Promise<boolean> {
  try {
    return (await runProgram(program, ['--version'], { ...account, cwd: '/' })).code === 0;
  } catch {
    return false;
  }
}
