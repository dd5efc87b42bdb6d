import { createServer } from 'node:http';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { type Ending, endService } from '../../server/start/ending.ts';

/** How long each part of the ending may take, by a clock that the test moves. */
beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const never = () => new Promise<never>(() => undefined);
const atOnce = () => Promise.resolve();

/** A service of which some parts never come to their end, and what was done to it, in order and with the second. */
function service(parts: {
  closes?: () => Promise<unknown>;
  lets?: () => Promise<void>;
  stops?: () => Promise<void>;
}) {
  const done: string[] = [];
  const began = Date.now();
  const note = (what: string) => done.push(`${what} at ${Math.round((Date.now() - began) / 1000)} s`);
  const server = createServer();
  vi.spyOn(server, 'closeAllConnections').mockImplementation(() => void note('cut off'));
  const ending: Ending = {
    lifecycle: { draining: false },
    app: {
      server,
      close: () => {
        note(ending.lifecycle.draining ? 'closing, no longer ready' : 'closing while ready');
        return (parts.closes ?? atOnce)();
      },
    },
    hub: { drain: () => void note('streams ended'), close: parts.lets ?? atOnce },
    db: { close: parts.lets ?? atOnce },
    work: { close: parts.lets ?? atOnce },
    stopDatabase: () => {
      note('database stopping');
      return (parts.stops ?? atOnce)();
    },
  };
  return { ending, done, ended: () => endService(ending).then(() => void note('ended')) };
}

test('with nobody there it ends at once, and cuts nobody off', async () => {
  const { done, ended } = service({});
  const end = ended();
  await vi.advanceTimersByTimeAsync(20_000);
  await end;
  expect(done).toEqual([
    'streams ended at 0 s',
    'closing, no longer ready at 0 s',
    'database stopping at 0 s',
    'ended at 0 s',
  ]);
});

test('a request that never ends has 7 s, then it is cut off', async () => {
  const { done, ended } = service({ closes: never });
  const end = ended();
  await vi.advanceTimersByTimeAsync(20_000);
  await end;
  expect(done.slice(2)).toEqual(['cut off at 7 s', 'database stopping at 7 s', 'ended at 7 s']);
});

test('where nothing at all comes to its end, it has ended within 10 s', async () => {
  const { done, ended } = service({ closes: never, lets: never, stops: never });
  const end = ended();
  await vi.advanceTimersByTimeAsync(10_000);
  await end;
  expect(done.at(-1)).toBe('ended at 10 s');
});
