import { METHOD as AS_TYPED } from '../../calls/entry.ts';
import { sendJson } from '../../tools/call.ts';
import { at } from '../../tools/numbers.ts';
import type { Person, TestService } from '../../tools/service.ts';

/** A reading of the sheet: which valve, what, as it was said, and the arm where it is typed in later than it was read. */
export interface Read {
  readonly cylinder: number;
  readonly reading: string;
  readonly kind?: 'lobe-lift' | 'valve-lift';
  readonly valve?: 'intake' | 'exhaust';
  /** The arm it was read with, by name. */
  readonly arm?: string;
}

export interface Played {
  readonly callId: string;
  readonly buildId: string;
  keep(reads: readonly Read[], how?: object): Promise<void>;
  name(arm: string): Promise<string>;
  place(arm: string, cylinder: number): Promise<void>;
  setUp(cylinder: number, arm: string | undefined, lifts: readonly string[], method?: object): Promise<void>;
  post(path: string, body: object): Promise<Record<string, unknown>>;
  assessment(): Promise<Record<string, unknown>>;
  sheet(): Promise<Record<string, unknown>>;
  next(): Promise<{ action: string; sentence: string }>;
}

export const HOW = { spring: 'light', lifter: 'solid', tool: 'indicator' };
const METHOD = { ...AS_TYPED, errorLimit: '.002 in' };

/** A call about one valve of an invented eight: lobes .353, rockers sold as 1.6, banks said. */
export async function playCall(
  service: TestService,
  person: Person,
  { goal = 'one-valve-differs', bankOrder = '1 3 5 7 / 2 4 6 8', card = true } = {},
): Promise<Played> {
  const send = async (method: 'GET' | 'POST' | 'PUT', url: string, body?: object, headers = {}) => {
    const done = await sendJson(service, person.bearer, method, `/api/v1${url}`, body, headers);
    if (done.status >= 300) throw new Error(`${url}: ${done.status} ${done.text}`);
    return done.json;
  };
  const opened = await send('POST', '/calls', {
    goal,
    buildLabel: 'One valve of an invented eight',
    callerName: 'Sam',
  });
  const [callId, buildId] = [String(opened.id), String(opened.buildId)];
  const of = `/builds/${buildId}`;
  await send('PUT', `/calls/${callId}/triage`, { engineState: 'apart', contact: 'none' });
  const cam = card
    ? { assumedRatio: 1.6, intake: { lobeLift: '.353 in' }, exhaust: { lobeLift: '.362 in' } }
    : {};
  await send(
    'PUT',
    `${of}/spec`,
    {
      spec: {
        engine: { cylinders: 8, lifter: 'solid-flat', rockerMounting: 'stud', bankOrder },
        cam,
        rockers: { nominalRatio: 1.6 },
      },
    },
    { 'if-match': '"1"' },
  );
  const arms = new Map<string, string>();
  const armId = (name: string): string => {
    const id = arms.get(name);
    if (id === undefined) throw new Error(`${name} is not on record`);
    return id;
  };
  const assessment = () => send('GET', `${of}/assessment?callId=${callId}`);
  return {
    callId,
    buildId,
    async keep(reads, how = HOW) {
      const readings = reads.map(({ cylinder, reading, kind = 'valve-lift', valve = 'intake', arm }) => ({
        cylinder,
        valve,
        kind,
        reading,
        ...(arm === undefined ? {} : { armId: armId(arm) }),
      }));
      await send('POST', `${of}/sheet`, { ...how, readings });
    },
    async name(arm) {
      const { id } = await send('POST', `${of}/arms`, { name: arm });
      arms.set(arm, String(id));
      return String(id);
    },
    async place(arm, cylinder) {
      await send('POST', `${of}/placements`, { armId: armId(arm), cylinder, valve: 'intake' });
    },
    async setUp(cylinder, arm, lifts, method = {}) {
      const { id } = await send('POST', `${of}/set-ups`, {
        cylinder,
        valve: 'intake',
        ...(arm === undefined ? {} : { armId: armId(arm) }),
        method: { ...METHOD, ...method },
      });
      for (const peak of lifts)
        await send('POST', `${of}/set-ups/${String(id)}/readings`, {
          kind: 'valve-lift',
          peak,
          counted: true,
        });
    },
    post: (path, body) => send('POST', `${of}${path}`, body),
    assessment,
    sheet: () => send('GET', `${of}/sheet`),
    async next() {
      const json = await assessment();
      return { action: String(at(json, 'next', 'action')), sentence: String(at(json, 'next', 'sentence')) };
    },
  };
}
