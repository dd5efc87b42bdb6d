import { hash, verify } from '@node-rs/argon2';
import { ServiceBusy } from '../problems/failure.ts';

/** argon2id with the least parameters OWASP recommends (Password Storage Cheat Sheet, 2024: 19 MiB, t 2, p 1). */
const PARAMETERS = { memoryCost: 19_456, timeCost: 2, parallelism: 1 };
/** Each hash takes 19 MiB and a core: more at once would let a flood of sign-ins take the machine. */
const AT_ONCE = 2;
/** Longer queues would keep everybody waiting for minutes; the next one is told to come again. */
const WAITING = 100;

let running = 0;
const waiting: (() => void)[] = [];

async function inTurn<T>(work: () => Promise<T>): Promise<T> {
  if (waiting.length >= WAITING) throw new ServiceBusy('too many passwords are being checked');
  while (running >= AT_ONCE) {
    await new Promise<void>((resolve) => {
      waiting.push(resolve);
    });
  }
  running += 1;
  try {
    return await work();
  } finally {
    running -= 1;
    waiting.shift()?.();
  }
}

export function hashPassword(password: string): Promise<string> {
  return inTurn(() => hash(password, PARAMETERS));
}

/** A hash of nobody's password: verified for unknown accounts, so that they take as long as known ones. */
let nobody: Promise<string> | undefined;

export async function verifyPassword(stored: string | undefined, password: string): Promise<boolean> {
  nobody ??= hash('nobody has this password', PARAMETERS);
  const against = stored ?? (await nobody);
  const fits = await inTurn(() => verify(against, password));
  return stored !== undefined && fits;
}
