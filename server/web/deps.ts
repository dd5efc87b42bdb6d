import type { Eta } from 'eta';
import type { ComputeLimits } from '../auth/compute-limits.ts';
import type { Principal } from '../auth/principal.ts';
import type { SignInLimits } from '../auth/sign-in-limits.ts';
import type { Registered } from '../compute/registry.ts';
import type { Config } from '../config/config.ts';
import type { Database, Tx } from '../database/database.ts';
import type { Hub } from '../events/hub.ts';
import type { Work } from '../work/work.ts';
import type { AnswerCheck } from './check-answers.ts';
import type { Assets } from './pages/assets.ts';

/** What the app is built from; the process and the tests make one each. */
export interface Deps {
  readonly config: Config;
  readonly db: Database;
  readonly computations: ReadonlyMap<string, Registered>;
  readonly views: Eta;
  readonly assets: Assets;
  readonly hub: Hub;
  readonly signInLimits: SignInLimits;
  readonly computeLimits: ComputeLimits;
  readonly work: Work;
  /** Whether cookies are for https alone. */
  readonly secure: boolean;
  readonly newestMigration: string;
  /**
   * Runs a command in its transaction, however it came, and throws where it did what such a principal may not do to a
   * build; the transaction then ends with nothing kept.
   */
  readonly guard: <T>(tx: Tx, principal: Principal, work: () => Promise<T>) => Promise<T>;
  /** Set while the process is ending: it is then no longer ready. */
  readonly lifecycle: { draining: boolean };
  /** Set by tests, which hold every JSON answer to its schema; in production reading each again would cost too much. */
  readonly checkAnswer?: AnswerCheck;
  now(): Date;
}
