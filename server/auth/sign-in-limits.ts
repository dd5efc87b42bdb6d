import type { Pool } from 'pg';
import { Failure } from '../problems/failure.ts';
import { addressKey } from './address-key.ts';
import { type Slowing, slowing } from './slowing.ts';

/** Where an attempt comes from and what it is made on. */
interface Attempt {
  readonly address: string;
  /** The key of the e-mail address that was typed, whether anybody has it or not. */
  readonly account: string;
  /** The browser, where this very account has signed in with it before. */
  readonly device?: string | undefined;
}

export interface SignInLimits {
  /** Counts an attempt at signing in; refuses one that comes too early after others. */
  take(attempt: Attempt): Promise<void>;
  /** It was the right person: the attempt counts for nothing. */
  forgive(attempt: Attempt): Promise<void>;
  /** Counts an attempt at a person’s own current password, made while they are signed in. */
  takeCurrent(staffId: string): Promise<void>;
  forgiveCurrent(staffId: string): Promise<void>;
}

const A_QUARTER = 900;
const AN_HOUR = 3600;

/** Many people may come from one address, all of them where a proxy is not named: they wait, and not for long. */
const BY_ADDRESS = { free: 50, memory: A_QUARTER, first: 15, longest: 15 };
/** However many addresses try one account, they come by in turn. */
const BY_ACCOUNT = { free: 8, memory: AN_HOUR, first: 15, longest: 120 };
/** Of a browser that is known, and of a person who is signed in, their own attempts alone count. */
const BY_DEVICE = BY_ACCOUNT;

function refuse(seconds: number, what: string): never {
  const wait = seconds < 60 ? `${seconds} s` : `${Math.ceil(seconds / 60)} min`;
  throw new Failure('quota-exceeded', `too many attempts ${what}; try again in ${wait}`, {
    headers: { 'retry-after': String(seconds) },
  });
}

async function take(counter: Slowing, key: string, what: string): Promise<void> {
  const seconds = await counter.take(key);
  if (seconds !== undefined) refuse(seconds, what);
}

/**
 * Attempts by account and by address, counted in the database for all processes. A stranger who tries somebody's account
 * must not lock its owner out: further attempts are slowed down and never refused for good, and in a browser where the
 * owner has signed in before they wait for nobody else's.
 */
export function signInLimits(pool: Pool): SignInLimits {
  const byAddress = slowing(pool, 'sign-in-address', BY_ADDRESS);
  const byAccount = slowing(pool, 'sign-in-account', BY_ACCOUNT);
  const byDevice = slowing(pool, 'sign-in-device', BY_DEVICE);
  const byPerson = slowing(pool, 'current-password', BY_DEVICE);
  const TO_SIGN_IN = 'to sign in';
  return {
    async take({ address, account, device }) {
      if (device !== undefined) return take(byDevice, device, TO_SIGN_IN);
      await take(byAddress, addressKey(address), TO_SIGN_IN);
      await take(byAccount, account, TO_SIGN_IN);
    },
    async forgive({ address, account, device }) {
      if (device !== undefined) return byDevice.forget(device);
      await byAccount.forget(account);
      // Only attempts that failed are counted: a whole desk signs in from one address.
      await byAddress.reward(addressKey(address));
    },
    takeCurrent: (staffId) => take(byPerson, staffId, 'at the current password'),
    forgiveCurrent: (staffId) => byPerson.forget(staffId),
  };
}
