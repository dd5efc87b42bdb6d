import type { ValveName } from '../../../shared/schemas/words.ts';
import { sendJson } from '../../tools/call.ts';
import { linesOf } from '../../tools/call-faces.ts';
import { makeLink } from '../../tools/filled-call.ts';
import type { Person, TestService } from '../../tools/service.ts';

/** Something that was told or read on a call, as a person would enter it. */
export type Entry =
  | {
      readonly ask: string;
      readonly answer: string;
      readonly cylinder?: number;
      readonly valve?: ValveName;
    }
  | { readonly lash: object }
  | { readonly gaps: Readonly<Record<string, string>>; readonly cylinder: number }
  | { readonly lobes: Readonly<Record<number, string>> };

export interface Played {
  readonly callId: string;
  readonly buildId: string;
  enter(entry: Entry): Promise<void>;
  get(path: string): Promise<Record<string, unknown>>;
  /** The text of every face: the step on both sides, report, takeover card and export. */
  faces(): Promise<ReadonlyMap<string, string>>;
}

/** What is told of the engine before anything else; left out, it has run and has solid lifters and studs. */
export interface EngineTold {
  readonly state?: string;
  /** Empty: nobody said. */
  readonly lifter?: string;
  /** Empty: nobody said. */
  readonly mounting?: string;
}

/** A call about an engine that stands, of which nothing but its first question was answered. */
export async function playNoise(
  service: TestService,
  desk: Person,
  goal: string,
  engine: EngineTold = {},
): Promise<Played> {
  const send = async (method: 'GET' | 'POST' | 'PUT', url: string, body?: object, revision?: number) => {
    const match = revision === undefined ? {} : { 'if-match': `"${revision}"` };
    const done = await sendJson(service, desk.bearer, method, `/api/v1${url}`, body, match);
    if (done.status >= 300) throw new Error(`${url}: ${done.status} ${done.text}`);
    return done.json;
  };
  const opened = await send('POST', '/calls', { goal, buildLabel: 'An invented eight', callerName: 'Sam' });
  const [callId, buildId] = [String(opened.id), String(opened.buildId)];
  const of = `/builds/${buildId}`;
  await send('PUT', `/calls/${callId}/triage`, { engineState: engine.state ?? 'has-run', contact: 'none' });
  const said = (name: string, told: string) => (told === '' ? {} : { [name]: told });
  const about = {
    ...said('lifter', engine.lifter ?? 'solid-flat'),
    ...said('rockerMounting', engine.mounting ?? 'stud'),
  };
  if (Object.keys(about).length > 0) await send('PUT', `${of}/spec`, { spec: { engine: about } }, 1);
  return {
    callId,
    buildId,
    async enter(entry) {
      if ('lash' in entry) await send('POST', `${of}/lash`, entry.lash);
      else if ('gaps' in entry)
        await send('POST', `${of}/sheet`, {
          spring: 'light',
          lifter: 'solid',
          tool: 'indicator',
          readings: Object.entries(entry.gaps).map(([kind, reading]) => ({
            cylinder: entry.cylinder,
            valve: 'intake',
            kind,
            reading,
          })),
        });
      else if ('lobes' in entry)
        await send('POST', `${of}/sheet`, {
          spring: 'light',
          lifter: 'solid',
          tool: 'indicator',
          readings: Object.entries(entry.lobes).map(([cylinder, inches]) => ({
            cylinder: Number(cylinder),
            valve: 'intake',
            kind: 'lobe-lift',
            reading: `${inches} in`,
          })),
        });
      else {
        const { ask, ...said } = entry;
        await send('POST', `${of}/answers`, { question: ask, code: ask, ...said });
      }
    },
    get: (path) => send('GET', `${of}${path}`),
    async faces() {
      const { bench } = await makeLink(service, desk, callId);
      const pages = [
        ...['steps/noise', 'report', 'takeover'].map(
          (path) => [`/calls/${callId}/${path}`, desk.cookies] as const,
        ),
        ...['steps/noise', 'report'].map((path) => [`/bench/${path}`, { 'benchcall-bench': bench }] as const),
      ];
      const found = new Map<string, string>();
      for (const [url, cookies] of pages) {
        const got = await service.request({ url, cookies });
        if (got.statusCode !== 200) throw new Error(`${url}: ${got.statusCode}`);
        found.set(url.replace(callId, ''), linesOf(got.body).join(' '));
      }
      return found;
    },
  };
}

const BY_CHANCE = new Set(['restsOn', 'entryId', 'line', 'since']);

/** An answer without what is another one in every record: ids of entries, and their lines. */
export function withoutIds(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutIds);
  if (typeof value === 'string')
    return value.replace(/[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}/g, '(an entry)');
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, each]) => (BY_CHANCE.has(key) ? [] : [[key, withoutIds(each)]])),
  );
}
