import type { Pool } from 'pg';
import { RateLimiterPostgres, RateLimiterRes } from 'rate-limiter-flexible';
import { busyWhenUnreachable } from '../database/busy.ts';

interface HowSlow {
  /** So many attempts are free. */
  readonly free: number;
  /** Seconds for which they are remembered. */
  readonly memory: number;
  /** Seconds until the next once the free ones are used up; twice as many after each further one, up to `longest`. */
  readonly first: number;
  readonly longest: number;
}

/** Attempts that come ever more slowly; whoever tries is never shut out for good. */
export interface Slowing {
  /** Counts an attempt; answers the seconds to wait where it comes too early, and is then not to be looked at. */
  take(key: string): Promise<number | undefined>;
  /** It was no failure: it counts for nothing. */
  reward(key: string): Promise<void>;
  /** What was counted before counts for nothing any more. */
  forget(key: string): Promise<void>;
}

/** Counters in the database, shared by all processes. */
export function slowing(pool: Pool, name: string, { free, memory, first, longest }: HowSlow): Slowing {
  const shared = { storeClient: pool, storeType: 'pool', tableName: 'rate_limit', tableCreated: true };
  const tried = new RateLimiterPostgres({
    ...shared,
    keyPrefix: name,
    points: Number.MAX_SAFE_INTEGER,
    duration: memory,
  });
  // One attempt in each span: the first opens it, and whichever comes before its end is refused by the database.
  const spans = new RateLimiterPostgres({ ...shared, keyPrefix: `${name}-next`, points: 1, duration: first });
  const spanAfter = (count: number) => Math.min(longest, first * 2 ** Math.min(20, count - free));
  return {
    async take(key) {
      try {
        const { consumedPoints } = await tried.consume(key);
        if (consumedPoints >= free)
          await spans.consume(key, 1, { customDuration: spanAfter(consumedPoints) });
        return undefined;
      } catch (error) {
        if (!(error instanceof RateLimiterRes)) throw busyWhenUnreachable(error);
        return Math.max(1, Math.ceil(error.msBeforeNext / 1000));
      }
    },
    async reward(key) {
      try {
        await tried.reward(key);
      } catch (error) {
        throw busyWhenUnreachable(error);
      }
    },
    async forget(key) {
      try {
        await tried.delete(key);
        await spans.delete(key);
      } catch (error) {
        throw busyWhenUnreachable(error);
      }
    },
  };
}
