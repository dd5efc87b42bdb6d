import { setTimeout as pause } from 'node:timers/promises';
import { METHOD } from './call.ts';

/** A client that keeps readings one after the other, and sends each with its key until it is acknowledged. */
export interface Reader {
  readonly buildId: string;
  readonly authorization: string;
  /** The readings, as typed, that the service has acknowledged. */
  readonly acknowledged: ReadonlySet<string>;
  /** How many answers did not come, or said to come again. */
  lost(): number;
  /** Answers that no client should get: neither kept nor to be sent again. */
  refused(): readonly string[];
  /** Settles the reading under way, then ends. */
  stop(): Promise<void>;
}

/** What says by itself that the same request may be sent again. */
const AGAIN = /"code":"(service-busy|still-running)"/;
/** A set-up takes 99 passes. */
const PASSES = 90;

async function post(base: string, path: string, authorization: string, body: object): Promise<string> {
  const response = await fetch(`${base}${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...(authorization === '' ? {} : { authorization }) },
    body: JSON.stringify(body),
  });
  const text = await response.text();
  if (!response.ok) throw new Error(`${path}: ${response.status} ${text}`);
  return text;
}

function member(text: string, name: string): string {
  const value = new RegExp(`"${name}":"([^"]+)"`).exec(text)?.[1];
  if (value === undefined) throw new Error(`no ${name} in ${text}`);
  return value;
}

/** Signs in as the service's announcement says, opens a call, and begins. */
export async function startReader(base: string, said: string): Promise<Reader> {
  const [, email = '', password = ''] = /with (\S+) and the password (.+)$/m.exec(said) ?? [];
  const authorization = `Bearer ${member(await post(base, '/api/v1/sessions', '', { email, password }), 'token')}`;
  const call = await post(base, '/api/v1/calls', authorization, {
    goal: 'verify-ratio',
    buildLabel: 'Killed often',
  });
  const buildId = member(call, 'buildId');
  const acknowledged = new Set<string>();
  const refused: string[] = [];
  let lost = 0;
  let ending = false;

  /** Sends with one key until there is an answer that settles it; undefined for a refusal. */
  async function persist(path: string, body: object): Promise<string | undefined> {
    const key = crypto.randomUUID();
    for (;;) {
      try {
        const response = await fetch(`${base}/api/v1/builds/${buildId}${path}`, {
          method: 'POST',
          headers: { authorization, 'content-type': 'application/json', 'idempotency-key': key },
          body: JSON.stringify(body),
        });
        const text = await response.text();
        if (response.status === 201) return text;
        if (!AGAIN.test(text)) {
          refused.push(`${path}: ${response.status} ${text.slice(0, 300)}`);
          return undefined;
        }
      } catch {
        // The service is gone: whether it kept the reading is not known, which is what the key is for.
      }
      lost += 1;
      await pause(50);
    }
  }

  async function run(): Promise<void> {
    let setUpId = '';
    for (let number = 0; !ending; number += 1) {
      if (number % PASSES === 0) {
        const cylinder = 1 + ((number / PASSES) % 16);
        const setUp = await persist('/set-ups', { cylinder, valve: 'intake', method: METHOD });
        if (setUp === undefined) return;
        setUpId = member(setUp, 'id');
      }
      // From .100 in on, by tenths: a lift of a thousandth is none.
      const typed = `${(1000 + number) / 10} thou`;
      const kept = await persist(`/set-ups/${setUpId}/readings`, { kind: 'valve-lift', peak: typed });
      if (kept !== undefined) acknowledged.add(typed);
    }
  }
  const running = run();

  return {
    buildId,
    authorization,
    acknowledged,
    lost: () => lost,
    refused: () => refused,
    stop() {
      ending = true;
      return running;
    },
  };
}
