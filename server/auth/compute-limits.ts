import type { Pool } from 'pg';
import { RateLimiterMemory, RateLimiterPostgres, RateLimiterRes } from 'rate-limiter-flexible';
import { Failure } from '../problems/failure.ts';
import { addressKey } from './address-key.ts';

interface Credit {
  left: number;
  readonly until: number;
}

/** What is written at once: a twentieth, and such that the portions make up the whole exactly. */
function portionOf(perMinute: number): number {
  let portion = Math.max(1, Math.min(10_000, Math.floor(perMinute / 20)));
  while (perMinute % portion !== 0) portion -= 1;
  return portion;
}

/** Milliseconds of a thread that count as one computation more. */
const MS_OF_ONE = 2;

/** How much one address may have computed. */
export interface ComputeLimits {
  /** Counts one computation, and refuses it where the minute is used up. */
  take(address: string): Promise<void>;
  /** Counts what a long one took, once that is known: the next of that address pays for it. */
  charge(address: string, ms: number): void;
}

/**
 * Computations by one address a minute, counted in the database for all processes. An address is counted in
 * memory first and written in portions, so that a computation of microseconds does not wait for a write. Long ones
 * count by the time they took as well, so that it is the work of an address that is limited.
 */
export function computeLimits(pool: Pool, perMinute: number): ComputeLimits {
  const portion = portionOf(perMinute);
  const shared = new RateLimiterPostgres({
    storeClient: pool,
    storeType: 'pool',
    tableName: 'rate_limit',
    tableCreated: true,
    keyPrefix: 'compute',
    points: perMinute,
    duration: 60,
    insuranceLimiter: new RateLimiterMemory({ points: perMinute, duration: 60 }),
  });
  const credit = new Map<string, Credit>();
  const asked = new Map<string, Promise<void>>();
  const takePortion = async (address: string) => {
    const owed = Math.max(0, -(credit.get(address)?.left ?? 0));
    try {
      await shared.consume(addressKey(address), portion + owed);
    } catch (error) {
      if (!(error instanceof RateLimiterRes)) throw error;
      const seconds = Math.max(1, Math.ceil(error.msBeforeNext / 1000));
      throw new Failure(
        'quota-exceeded',
        `more than ${perMinute} computations a minute from one address${owed > 0 ? ', long ones counted by the time they took' : ''}`,
        {
          headers: { 'retry-after': String(seconds) },
        },
      );
    }
    if (credit.size > 10_000) credit.clear();
    credit.set(address, { left: portion, until: performance.now() + 60_000 });
  };
  // Requests that come together share one portion: each taking its own would use the minute up unspent.
  const portionFor = (address: string): Promise<void> => {
    const running = asked.get(address);
    if (running !== undefined) return running;
    const started = takePortion(address).finally(() => asked.delete(address));
    asked.set(address, started);
    return started;
  };
  return {
    async take(address) {
      for (;;) {
        const have = credit.get(address);
        if (have !== undefined && have.left > 0 && have.until >= performance.now()) {
          have.left -= 1;
          return;
        }
        await portionFor(address);
      }
    },
    charge(address, ms) {
      const more = Math.floor(ms / MS_OF_ONE);
      const have = credit.get(address);
      credit.set(address, {
        left: (have?.left ?? 0) - more,
        until: have?.until ?? performance.now() + 60_000,
      });
    },
  };
}
