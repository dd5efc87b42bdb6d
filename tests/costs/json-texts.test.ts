import { afterAll, beforeAll, expect, test } from 'vitest';
import { z } from 'zod';
import { faultsOf } from '../../server/compute/faults-of.ts';
import { filledCall } from '../tools/filled-call.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';
import { growth } from './processor-time.ts';
import { type Operation, operationsOf, Schemas, type TextPlace } from './text-places.ts';
import { dealer, type KindOfText, worstText } from './worst-texts.ts';

/*
 * Whatever text a stranger sends in whichever member of whichever body: the work for twice as much is no more than
 * twice as much. Bodies and their texts are found from the OpenAPI document, so that a new one is tried by itself.
 */

/** As much as fits into a body beside what must be there. */
const BYTES = 254 * 1024;
/** A text so long may be read for what stands in it. */
const LONG = 1000;

let service: TestService;
let person: Person;
let ids: Readonly<Record<string, string>>;
let operations: readonly Operation[];
let schemas: Schemas;

beforeAll(async () => {
  service = await testService({ COMPUTE_PER_MINUTE: '1000000000' });
  person = await service.person();
  ids = await filledCall(service, person, 'A call with something of every kind');
  const document = (await service.request('/api/v1/openapi.json')).json();
  operations = operationsOf(document);
  schemas = new Schemas(document);
});
afterAll(() => service.close());

const idIn = (url: string): string => (url.includes('/calls/') ? ids.callId : ids.buildId) ?? '';

const addressOf = ({ url }: Operation): string =>
  url.replace(/\{([A-Za-z]+)\}/g, (_, name: string) =>
    name === 'id' ? idIn(url) : (ids[name] ?? crypto.randomUUID()),
  );

const bytesOf = (value: unknown): number => Buffer.byteLength(JSON.stringify(value));

/** By the schema of its route, as the route itself reads it. */
function read(operation: Operation, body: unknown): void {
  const route = service.app.declaredRoutes.find(
    ({ method, url }) =>
      method === operation.method && url.replace(/:([A-Za-z]+)/g, '{$1}') === operation.url,
  );
  if (!(route?.body instanceof z.ZodType)) throw new Error(`nothing reads ${operation.id}`);
  const parsed = route.body.safeParse(body);
  if (!parsed.success) faultsOf(parsed.error, body);
}

const send = (operation: Operation, body: unknown) =>
  service.request({
    method: operation.method,
    url: addressOf(operation),
    headers: { ...person.bearer, 'content-type': 'application/json' },
    payload: JSON.stringify(body),
  });

const bodyOf = (operation: Operation, place: TextPlace, kind: KindOfText, bytes: number) =>
  schemas.bodyWith(
    operation.body,
    place.path,
    worstText(kind, bytes, (part) => bytesOf(part) - 2),
  );

async function tooSteep(
  at: { readonly operation: Operation; readonly place: TextPlace; readonly kind: KindOfText },
  bytes: number,
  work: (operation: Operation, body: unknown) => unknown,
): Promise<string[]> {
  const { operation, place, kind } = at;
  const whole = bodyOf(operation, place, kind, bytes);
  const steep = await growth(async (share) =>
    work(operation, share === 1 ? whole : bodyOf(operation, place, kind, bytes * share)),
  );
  return steep === undefined ? [] : [`${operation.id} /${place.path.join('/')} ${kind}, ${bytes}: ${steep}`];
}

const placesOf = (wanted: (place: TextPlace) => boolean) =>
  operations.flatMap((operation) =>
    schemas
      .textPlaces(operation.body)
      .filter(wanted)
      .map((place) => ({ operation, place })),
  );

const mostOf = ({ schema: { maxLength } }: TextPlace): number =>
  typeof maxLength === 'number' ? maxLength : 0;

test('a text in any member of any body is read in proportion to its length', async () => {
  const found: string[] = [];
  const deal = dealer();
  const places = placesOf(() => true);
  for (const at of places)
    for (const kind of deal(2)) found.push(...(await tooSteep({ ...at, kind }, BYTES, read)));
  expect(found).toEqual([]);
  expect(places.length, 'the document was read').toBeGreaterThan(500);
}, 120_000);

test('a text that may be long is taken, or refused, in proportion to its length', async () => {
  const found: string[] = [];
  const deal = dealer();
  const places = placesOf((place) => mostOf(place) > LONG);
  for (const at of places)
    for (const kind of deal(4))
      for (const bytes of new Set([BYTES, Math.min(BYTES, mostOf(at.place))]))
        found.push(...(await tooSteep({ ...at, kind }, bytes, send)));
  expect(found).toEqual([]);
  expect(places.map(({ operation }) => operation.id)).toEqual(
    expect.arrayContaining(['pasteSheet', 'pasteGapScan', 'loadCatalogue']),
  );
}, 120_000);
