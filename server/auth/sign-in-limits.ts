import type { Pool } from 'pg';
import { RateLimiterPostgres, RateLimiterRes } from 'rate-limiter-flexible';
import { busyWhenUnreachable } from '../database/busy.ts';
import { Failure } from '../problems/failure.ts';
import { addressKey } from './address-key.ts';
import { hashOf } from './secrets.ts';

export interface SignInLimits {
  /** Counts an attempt; refuses when the address, or the address with this account, has made too many. */
  take(address: string, account: string): Promise<void>;
  /** It was the right person: the attempt counts for nothing. */
  forgive(address: string, account: string): Promise<void>;
}

/** Attempts by one address on any account, and by one address on one account. */
const BY_ADDRESS = { points: 50, duration: 900 };
const BY_PAIR = { points: 8, duration: 900 };

/**
 * Counters in the database, shared by all processes. Nothing is counted by account alone: a stranger who tries
 * somebody's account from elsewhere must not lock its owner out.
 */
export function signInLimits(pool: Pool): SignInLimits {
  const shared = { storeClient: pool, storeType: 'pool', tableName: 'rate_limit', tableCreated: true };
  const byAddress = new RateLimiterPostgres({ ...shared, ...BY_ADDRESS, keyPrefix: 'sign-in-address' });
  const byPair = new RateLimiterPostgres({ ...shared, ...BY_PAIR, keyPrefix: 'sign-in-pair' });
  const pairKey = (address: string, account: string) => hashOf(`${addressKey(address)} ${account}`);
  return {
    async take(address, account) {
      try {
        await byAddress.consume(addressKey(address));
        await byPair.consume(pairKey(address, account));
      } catch (error) {
        if (!(error instanceof RateLimiterRes)) throw busyWhenUnreachable(error);
        const seconds = Math.max(1, Math.ceil(error.msBeforeNext / 1000));
        throw new Failure(
          'quota-exceeded',
          `too many attempts to sign in; try again in ${Math.ceil(seconds / 60)} min`,
          {
            headers: { 'retry-after': String(seconds) },
          },
        );
      }
    },
    async forgive(address, account) {
      try {
        await byPair.delete(pairKey(address, account));
        // Only attempts that failed are counted: a whole desk signs in from one address.
        await byAddress.reward(addressKey(address));
      } catch (error) {
        throw busyWhenUnreachable(error);
      }
    },
  };
}
