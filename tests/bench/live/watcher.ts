import { openStream, type Received, type StreamClient } from '../../tools/stream-client.ts';
import type { BenchCall } from './calls.ts';

/** One call's stream, opened again after it was cut, from the entry it had. */
export interface Watcher {
  readonly call: BenchCall;
  /** The record's newest number before anything was measured. */
  readonly before: number;
  /** Entries in the order in which they came, over all its connections. */
  entries(): Received[];
  /** Entries that came over the connection after a cut are late by the cut: they aren't timed. */
  readonly wasCut: boolean;
  cut(): void;
  open(): Promise<void>;
}

export function watcher(base: string, bearer: string, call: BenchCall, before: number): Watcher {
  const connections: StreamClient[] = [];
  let wasCut = false;
  const entries = () => connections.flatMap((each) => each.events.filter((event) => event.name === 'entry'));
  return {
    call,
    before,
    entries,
    get wasCut() {
      return wasCut;
    },
    cut() {
      wasCut = true;
      connections.at(-1)?.cut();
    },
    async open() {
      const last = entries().at(-1)?.id ?? before;
      const opened = await openStream(`${base}/api/v1/builds/${call.buildId}/live`, {
        authorization: `Bearer ${bearer}`,
        'last-event-id': String(last),
      });
      if (opened.status !== 200) throw new Error(`a stream answered ${opened.status}`);
      connections.push(opened);
    },
  };
}
