import { hash, verify } from '@node-rs/argon2';
import { ServiceBusy } from '../problems/failure.ts';

/** argon2id with the least parameters OWASP recommends (Password Storage Cheat Sheet, 2024: 19 MiB, t 2, p 1). */
const PARAMETERS = { memoryCost: 19_456, timeCost: 2, parallelism: 1 };
/** Each hash takes 19 MiB and a core: more at once would let a flood of sign-ins take the machine. */
const AT_ONCE = 2;
/** Of them so many are for whoever is known, so that a flood of strangers holds up nobody of the desk. */
const KEPT_FOR_KNOWN = 1;
/** Longer queues would keep everybody waiting for minutes; the next one is told to come again. */
const WAITING = 100;

/** For whom a password is hashed: somebody who is signed in, has a link or a known browser, or whoever there is. */
type AskedBy = 'known' | 'anybody';

const MOST_AT_ONCE: Readonly<Record<AskedBy, number>> = { known: AT_ONCE, anybody: AT_ONCE - KEPT_FOR_KNOWN };
const running = { known: 0, anybody: 0 };
const waiting: Readonly<Record<AskedBy, (() => void)[]>> = { known: [], anybody: [] };

const mayBegin = (by: AskedBy): boolean =>
  running.known + running.anybody < AT_ONCE && running[by] < MOST_AT_ONCE[by];

/** Lets those begin who may, the known ones first. */
function beginNext(): void {
  for (const by of ['known', 'anybody'] as const)
    while (mayBegin(by) && waiting[by].length > 0) {
      running[by] += 1;
      waiting[by].shift()?.();
    }
}

async function inTurn<T>(by: AskedBy, work: () => Promise<T>): Promise<T> {
  if (waiting[by].length >= WAITING) throw new ServiceBusy('too many passwords are being checked');
  await new Promise<void>((resolve) => {
    waiting[by].push(resolve);
    beginNext();
  });
  try {
    return await work();
  } finally {
    running[by] -= 1;
    beginNext();
  }
}

/** Passwords are kept for people who are known alone. */
export function hashPassword(password: string): Promise<string> {
  return inTurn('known', () => hash(password, PARAMETERS));
}

/** A hash of nobody's password: verified for unknown accounts, so that they take as long as known ones. */
let nobody: Promise<string> | undefined;

export async function verifyPassword(
  stored: string | null | undefined,
  password: string,
  by: AskedBy,
): Promise<boolean> {
  nobody ??= hash('nobody has this password', PARAMETERS);
  const against = stored ?? (await nobody);
  const fits = await inTurn(by, () => verify(against, password));
  return typeof stored === 'string' && fits;
}
