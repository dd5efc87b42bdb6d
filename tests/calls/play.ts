import { sendJson } from '../tools/call.ts';
import type { Person, TestService } from '../tools/service.ts';
import type { Entry } from './entry.ts';

type Json = Record<string, unknown>;

export interface Played {
  readonly callId: string;
  readonly buildId: string;
  /** Ids of what was kept, by name. */
  readonly kept: ReadonlyMap<string, string>;
  get(path: string, by?: Headers): Promise<Json>;
}

const isObject = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Puts parts of a description into what is there; a later part goes before an earlier one. */
function merged(a: Json, b: Json): Json {
  const both = { ...a };
  for (const [key, value] of Object.entries(b)) {
    const there = both[key];
    both[key] = isObject(there) && isObject(value) ? merged(there, value) : value;
  }
  return both;
}

/** A call that was opened and is entered bit by bit, by the desk or by another who may. */
export interface Playing extends Played {
  enter(entry: Entry, by?: Headers): Promise<void>;
}

type Headers = Readonly<Record<string, string>>;

/** Opens a call over JSON. */
export async function openToPlay(service: TestService, person: Person, goal: string): Promise<Playing> {
  const send = async (
    by: Headers,
    method: 'GET' | 'POST' | 'PUT',
    url: string,
    body?: object,
    headers = {},
  ) => {
    const done = await sendJson(service, by, method, `/api/v1/${url}`, body, headers);
    if (done.status >= 300)
      throw new Error(`${method} ${url} ${JSON.stringify(body)}: ${done.status} ${done.text}`);
    return done.json;
  };
  const opened = await send(person.bearer, 'POST', 'calls', {
    goal,
    buildLabel: 'An invented build',
    callerName: 'Sam',
  });
  const [callId, buildId] = [String(opened.id), String(opened.buildId)];
  const kept = new Map<string, string>();
  const named = (text: string): string =>
    text.replaceAll(/\$([^"/$]+)/g, (_, name: string) => {
      const id = kept.get(name);
      if (id === undefined) throw new Error(`nothing was kept as ${name}`);
      return id;
    });
  const at = (path: string) =>
    path.replace(/^call/, `calls/${callId}`).replace(/^build/, `builds/${buildId}`);
  let spec: Json = {};
  let revision = 1;
  return {
    callId,
    buildId,
    kept,
    get: (path, by = person.bearer) => send(by, 'GET', at(path)),
    async enter(entry, by = person.bearer) {
      const body: unknown = JSON.parse(named(JSON.stringify(entry.body)));
      if (!isObject(body)) throw new Error('a body is an object');
      if (entry.describes === true) {
        spec = merged(spec, body);
        await send(by, 'PUT', at(entry.path), { spec }, { 'if-match': `"${revision}"` });
        revision += 1;
        return;
      }
      const { id } = await send(by, entry.method, at(named(entry.path)), body);
      if (entry.name !== undefined) kept.set(entry.name, String(id));
    },
  };
}

/** Plays a call over JSON: opens it, and sends every entry in the order given. */
export async function play(
  service: TestService,
  person: Person,
  goal: string,
  entries: readonly Entry[],
): Promise<Played> {
  const playing = await openToPlay(service, person, goal);
  for (const entry of entries) await playing.enter(entry);
  return playing;
}
