import { asOwner } from './connect.ts';
import { readLockFile } from './lock-file.ts';
import { until } from './pause.ts';
import { hasCode } from './system-error.ts';

/** 57P03: starting or ending; 57P01: ended just now; 53300: all connections taken, so it is up but busy. */
const NOT_YET = ['ECONNREFUSED', 'ECONNRESET', 'ETIMEDOUT', '57P03', '57P01', '53300'] as const;
const SPEAK_UP_MS = 10_000;

/**
 * Waits until the server takes connections and returns its port, or undefined when it ended instead. There
 * is no limit of time: recovery after a crash lasts as long as it lasts, and giving up would only begin it
 * again.
 */
export async function waitUntilReady(
  cluster: string,
  password: string,
  alive: () => boolean | Promise<boolean>,
  log: (message: string) => void,
): Promise<number | undefined> {
  let speakAt = Date.now() + SPEAK_UP_MS;
  let ready: number | undefined;
  await until(async () => {
    const lock = await readLockFile(cluster);
    const port = typeof lock === 'object' ? lock.openPort : undefined;
    if (port !== undefined && (await answers(port, password))) ready = port;
    if (ready !== undefined || !(await alive())) return true;
    if (Date.now() > speakAt) {
      log('Still waiting for the database to be ready.');
      speakAt = Date.now() + SPEAK_UP_MS;
    }
    return false;
  }, Number.POSITIVE_INFINITY);
  return ready;
}

async function answers(port: number, password: string): Promise<boolean> {
  try {
    await asOwner(port, password, (client) => client.query('SELECT 1'));
    return true;
  } catch (error) {
    if (hasCode(error, ...NOT_YET) || /timeout|terminated/i.test(String(error))) return false;
    throw error;
  }
}
