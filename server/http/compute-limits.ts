import type { Pool } from 'pg';
import { RateLimiterMemory, RateLimiterPostgres, RateLimiterRes } from 'rate-limiter-flexible';
import { addressKey } from '../access/address-key.ts';
import { Failure } from '../problems/failure.ts';

/**
 * Computations by one address a minute, counted in the database for all processes. An address is counted in
 * memory first and written in portions, so that a computation of microseconds does not wait for a write.
 */
export function computeLimits(pool: Pool, perMinute: number): { take(address: string): Promise<void> } {
  const portion = Math.max(1, Math.floor(perMinute / 20));
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
  const credit = new Map<string, { left: number; until: number }>();
  const takePortion = async (address: string) => {
    try {
      await shared.consume(addressKey(address), portion);
    } catch (error) {
      if (!(error instanceof RateLimiterRes)) throw error;
      const seconds = Math.max(1, Math.ceil(error.msBeforeNext / 1000));
      throw new Failure('quota-exceeded', `more than ${perMinute} computations a minute from one address`, {
        headers: { 'retry-after': String(seconds) },
      });
    }
    if (credit.size > 10_000) credit.clear();
    credit.set(address, { left: portion, until: performance.now() + 60_000 });
  };
  return {
    async take(address) {
      const have = credit.get(address);
      if (have === undefined || have.left <= 0 || have.until < performance.now()) await takePortion(address);
      const now = credit.get(address);
      if (now !== undefined) now.left -= 1;
    },
  };
}
