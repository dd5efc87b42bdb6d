import { availableParallelism } from 'node:os';
import { Piscina } from 'piscina';
import { defined } from '../../shared/defined.ts';
import { InputFaults } from '../../shared/problems/faults.ts';
import type { UnitSystem } from '../../shared/quantities/units.ts';
import type { Answer, Registered } from '../compute/registry.ts';
import { Failure } from '../problems/failure.ts';
import type { ComputeDone, ComputeTask } from './compute-worker.ts';
import { isLarge } from './is-large.ts';
import { UnreadBody } from './unread-body.ts';

/** So many wait for their turn; with work of at most some tenths of a second each nobody waits long. */
const QUEUE = 32;
/** A thread that nobody needs any more ends. */
const IDLE_MS = 60_000;
/** What takes longer than any computation of ours is broken off with its thread. */
const LONGEST_MS = 10_000;

/** Computations, done where they hold up nobody. */
export interface Work {
  /**
   * Answers at once what takes microseconds; what is declared heavy, or comes with long lists, is done on a thread of
   * its own. Where too many wait already it is refused as busy. `spent` is told the milliseconds of that thread, also
   * of a body that was refused. `of` an engine of a call, an answer that no engine can have is refused.
   */
  answer(
    each: Registered,
    body: unknown,
    system: UnitSystem,
    spent: (ms: number) => void,
    of?: 'engine',
  ): Promise<Answer>;
  close(): Promise<void>;
}

const busy = (): Failure =>
  new Failure('service-busy', 'too many long computations wait already; send it again in a moment', {
    headers: { 'retry-after': '2' },
  });

function answerIn(done: ComputeDone): Answer {
  if ('answer' in done) return done.answer;
  if ('faults' in done) throw new InputFaults(done.faults);
  throw new Failure(done.refusal.code, done.refusal.detail);
}

function openThreads(say: (message: string) => void): Piscina<ComputeTask, ComputeDone> {
  const threads = new Piscina<ComputeTask, ComputeDone>({
    filename: new URL('compute-thread.mjs', import.meta.url).href,
    // It sets its loader up by itself, however the process was started.
    execArgv: [],
    minThreads: 0,
    maxThreads: Math.max(1, availableParallelism() - 1),
    maxQueue: QUEUE,
    idleTimeout: IDLE_MS,
  });
  // A thread that can't be started refuses its own task; without a listener it would end the process too.
  threads.on('error', (error) => say(`a thread for long computations ended: ${String(error)}`));
  return threads;
}

/** Threads for long computations: one less than the machine runs at once, and at least one; none before it is needed. */
export function openWork(say: (message: string) => void): Work {
  let threads: Piscina<ComputeTask, ComputeDone> | undefined;
  const beside = async (task: ComputeTask): Promise<ComputeDone> => {
    threads ??= openThreads(say);
    if (threads.queueSize >= QUEUE) throw busy();
    return threads.run(task, { signal: AbortSignal.timeout(LONGEST_MS) });
  };
  return {
    async answer(each, body, system, spent, of) {
      const task = { name: each.name, system, ...defined({ of }) };
      const isUnread = body instanceof UnreadBody;
      if (!isUnread && !each.heavy && !isLarge(body)) return each.run(body, system, of);
      const done = await beside(isUnread ? { ...task, bytes: body.bytes } : { ...task, body });
      spent(done.ms);
      return answerIn(done);
    },
    async close() {
      await threads?.destroy();
    },
  };
}
