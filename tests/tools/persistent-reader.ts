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

/** The service is gone, or says by itself that the same request may be sent again. */
const AGAIN = new Set([409, 502, 503]);

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

/** Signs in as the service's announcement says, opens a call with a set-up, and begins. */
export async function startReader(base: string, said: string): Promise<Reader> {
  const [, email = '', password = ''] = /with (\S+) and the password (.+)$/m.exec(said) ?? [];
  const authorization = `Bearer ${member(await post(base, '/api/v1/sessions', '', { email, password }), 'token')}`;
  const call = await post(base, '/api/v1/calls', authorization, {
    goal: 'verify-ratio',
    buildLabel: 'Killed often',
  });
  const buildId = member(call, 'buildId');
  const setUp = await post(base, `/api/v1/builds/${buildId}/set-ups`, authorization, {
    cylinder: 1,
    valve: 'intake',
    method: METHOD,
  });
  const url = `${base}/api/v1/builds/${buildId}/set-ups/${member(setUp, 'id')}/readings`;

  const acknowledged = new Set<string>();
  const refused: string[] = [];
  let lost = 0;
  let ending = false;

  /** One attempt; true when the reading is settled. */
  async function attempt(typed: string, key: string): Promise<boolean> {
    try {
      const response = await fetch(url, {
        method: 'POST',
        headers: { authorization, 'content-type': 'application/json', 'idempotency-key': key },
        body: JSON.stringify({ kind: 'valve-lift', peak: typed }),
      });
      const text = await response.text();
      if (response.status === 201) {
        acknowledged.add(typed);
        return true;
      }
      if (AGAIN.has(response.status)) {
        lost += 1;
        return false;
      }
      refused.push(`${typed}: ${response.status} ${text.slice(0, 200)}`);
      return true;
    } catch {
      lost += 1;
      return false;
    }
  }

  async function run(): Promise<void> {
    for (let number = 1; !ending; number += 1) {
      const typed = `${number} thou`;
      const key = crypto.randomUUID();
      while (!(await attempt(typed, key))) await pause(50);
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
