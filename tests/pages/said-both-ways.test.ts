import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { facesOfBuilds } from '../tools/generated-faces.ts';
import { htmlFaults } from '../tools/html-faults.ts';
import { postForm } from '../tools/post-form.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';
import { type WholeCall, wholeCall } from '../tools/whole-call.ts';

/*
 * What a form can say its JSON twin can say, and the reverse. Both sides are read: the forms from the pages of generated
 * builds and of a whole call, the bodies from the published description of the API. Needs no source.
 */

const BUILDS = 40;

/** Of the page, not of what is said: which form, which screen, the key against sending twice, what was offered. */
const OF_THE_FORM = /^(form|key|part|step|order|act|revision|words|offer-.*|was-.*|.*~as)$/;

/** Forms whose JSON twin stands elsewhere; a form of inputs of a computation is held to its schema by its own test. */
const TWINS: Readonly<Record<string, string>> = {
  '/part-readings': '/identification/readings',
  '/part-readings/:id': '/identification/readings/:id',
  '/part-marks': '/identification/readings',
  '/hand-parts': '/identification/parts',
  '/hand-parts/names': '/identification/parts/names',
  '/readings': '/set-ups/:id/readings',
  '/sheet/grid': '/sheet',
  '/share': '/share-links',
  '/arms/marks': '/arms/:id/marks',
  '/workings/adjuster/:id': '/workings/:id',
  '/workings/geometry/:id': '/workings/:id',
  '/workings/timing/:id': '/workings/:id',
  '/workings/notes/:id': '/workings/:id',
};
const COMPUTED = /^\/workings\/[a-z]+$/;
/** Nothing is said but that it is done, a way is chosen to be shown, or a picture is sent. */
const NO_BODY = ['/notes/:id/done', '/share/:id/end', '/steps/ratio', '/photographs'];

const ID = /[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}/g;
const twinOf = (path: string): string => (path.startsWith('/spec/') ? '/spec' : (TWINS[path] ?? path));

/** What a form calls otherwise than its twin: a name of the form, and what it says there. */
const SAID_AS: Readonly<Record<string, (name: string) => string[]>> = {
  '/consequences': (name) => [name === 'about' ? 'key' : name],
  // Which arm it is stands in the address.
  '/arms/marks': (name) => (name === 'armId' ? [] : [name]),
  '/sheet': (name) =>
    name.startsWith('figures.') ? ['readings.*.kind', 'readings.*.reading'] : [placedInRow(name)],
  '/sheet/grid': (name) =>
    name.startsWith('grid.')
      ? ['readings.*.kind', 'readings.*.reading', 'readings.*.cylinder', 'readings.*.valve']
      : [name],
  '/part-marks': (name) => (name.includes('.') ? ['kind', name.split('.')[1] ?? ''] : [name]),
  '/spec': (name) => [`spec.${name}`],
  // The address of the route names it.
  '/readings': (name) => (name === 'setUpId' ? [] : [name]),
};
const placedInRow = (name: string): string =>
  ['cylinder', 'valve', 'armId'].includes(name) ? `readings.*.${name}` : name;

/** A column that was read otherwise: on a page the tool of two columns is asked, and another spring is a sheet of its own. */
const OTHERWISE = /^columns\./;

/** What a form has no field for, or has it on some engines alone: why, beside each. */
const ONLY_JSON: Readonly<Record<string, readonly string[]>> = {
  // A form has the answers to choose from, and reads yes and no from them.
  '/answers': ['found'],
  // Kept on a page, a revision says by itself which step it was made in; shims and the card's heat go by the gear.
  '/spec': ['reason', 'spec.engine.shimStock', 'spec.cam.lashAt'],
  '/lash': ['shim'],
  // Passes are numbered as they come; a lift part of the way up is asked for where it would tell something.
  '/set-ups/:id/readings': ['pass', 'atLobeLift'],
  // A field that is emptied on a page; struck out is which button was pressed.
  '/set-ups/:id': ['notKnown.*', 'struck'],
  // Threads are counted of a stud alone, and the call here has none.
  '/identification/readings/:id': ['count'],
  // On a page that is which button was pressed.
  '/sheet/paste': ['keep'],
  '/gap-scans/paste': ['keep'],
  // A page is of one call.
  '/consequences': ['callId'],
};

type Fields = ReadonlyMap<string, ReadonlySet<string>>;

function formsIn(html: string, into: Map<string, Set<string>>): void {
  for (const [, action = '', inside = ''] of html.matchAll(
    /<form[^>]*\baction="([^"?]*)[^"]*"[^>]*>(.*?)<\/form>/gs,
  )) {
    const path = action
      .replace(/^\/calls\/[^/]+|^\/bench/, '')
      .replace(/\/correct$/, '')
      .replaceAll(ID, ':id');
    const names = into.get(path) ?? new Set<string>();
    into.set(path, names);
    for (const [, name = ''] of inside.matchAll(/<(?:input|select|textarea)[^>]*\bname="([^"]*)"/g))
      if (!OF_THE_FORM.test(name)) names.add(name.replaceAll(/\.\d+(?=\.|$)/g, '.*'));
  }
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The members of a described body by their dotted names; a quantity is one. */
function namesIn(schema: unknown, components: Record<string, unknown>, at = ''): string[] {
  if (!isObject(schema)) return [at];
  if (typeof schema.$ref === 'string')
    return namesIn(components[schema.$ref.split('/').at(-1) ?? ''], components, at);
  if (isObject(schema.items)) return namesIn(schema.items, components, `${at}.*`);
  if (!isObject(schema.properties) || schema.anyOf !== undefined) return [at];
  return Object.entries(schema.properties).flatMap(([name, inner]) =>
    namesIn(inner, components, at === '' ? name : `${at}.${name}`),
  );
}

function bodiesOf(document: Record<string, unknown>): Fields {
  const components = isObject(document.components) ? document.components.schemas : {};
  const found = new Map<string, Set<string>>();
  for (const [url, methods] of Object.entries(isObject(document.paths) ? document.paths : {}))
    for (const operation of Object.values(isObject(methods) ? methods : {})) {
      const body = isObject(operation) ? operation.requestBody : undefined;
      const content = isObject(body) && isObject(body.content) ? body.content['application/json'] : undefined;
      if (!isObject(content)) continue;
      const path = url
        .replace(/^\/api\/v1\/(builds|calls)\/\{[^}]+\}/, '')
        .replace(/\/corrections$/, '')
        .replaceAll(/\{[^}]+\}/g, ':id');
      found.set(path, new Set(namesIn(content.schema, isObject(components) ? components : {})));
    }
  return found;
}

let service: TestService;
let person: Person;
let forms: Map<string, Set<string>>;
let bodies: Fields;

const AT = { cylinder: '2', valve: 'intake' };
const HOW = { spring: 'light', lifter: 'solid', tool: 'indicator' };
const SET_UP = {
  'method.spring': 'light',
  'method.lifter': 'solid',
  'method.lash': 'zero',
  'method.graduation': '.001 in',
  'method.perTurn': '.100 in',
  'method.lobeSource': 'lobe',
};
/** Whole entries that take turning the engine, by the address of their form. Invented. */
const TURNING: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  '/sheet': { form: 'valve', ...AT, ...HOW, 'figures.valve-lift': '.560' },
  '/sheet/paste': {
    form: 'paste',
    ...HOW,
    unit: 'in',
    text: 'cylinder\tvalve\tvalve lift\n2\tintake\t.560',
    act: 'keep',
  },
  '/gap-scans': { form: 'scan', ...AT, ...HOW, 'readings.0.crankAngle': '8', 'readings.0.gap': '.120' },
  '/gap-scans/paste': { form: 'paste-scan', ...AT, ...HOW, unit: 'in', text: '8\t.120', act: 'keep' },
  '/tip-marks': { form: 'mark', ...AT, width: '.041', side: 'centred', found: 'fresh-ink', spring: 'light' },
  '/readings': { form: 'reading', peak: '.560', kind: 'valve-lift' },
  '/set-ups': { form: 'set-up', ...AT, ...SET_UP },
  '/lash': { form: 'lash', ...AT, lash: '.017', moment: 'found', engine: 'cold', nut: 'held' },
};

/** Forms that a stop came before, as their page has them again: there it is said that it was read before it. */
async function crawlStopped({ callId, setUpId }: WholeCall): Promise<void> {
  for (const [path, entry] of Object.entries(TURNING)) {
    const typed = path === '/readings' ? { ...entry, setUpId } : entry;
    const { body } = await postForm(service, `/calls/${callId}${path}`, typed, { cookies: person.cookies });
    expect(body, path).toContain('Not kept: a stop stands');
    expect(htmlFaults(body), path).toEqual([]);
    formsIn(body, forms);
  }
}

/** Every page of a call that its own pages lead to. */
async function crawl(callId: string): Promise<void> {
  const seen = new Set<string>();
  const open = [
    `/calls/${callId}/report`,
    ...['adjuster', 'timing', 'geometry'].map((step) => `/calls/${callId}/steps/${step}`),
  ];
  for (let url = open.pop(); url !== undefined; url = open.pop()) {
    if (seen.has(url)) continue;
    seen.add(url);
    const { statusCode, body, headers } = await service.request({ url, cookies: person.cookies });
    if (statusCode !== 200 || headers['content-type']?.toString().includes('html') !== true) continue;
    formsIn(body, forms);
    for (const [, href = ''] of body.matchAll(/href="([^"#]*)/g))
      if (href.startsWith(`/calls/${callId}/`)) open.push(href.replaceAll('&amp;', '&'));
  }
}

beforeAll(async () => {
  service = await testService();
  person = await service.person();
  forms = new Map();
  for (const { html } of facesOfBuilds(BUILDS)) formsIn(html, forms);
  const whole = await wholeCall(service, person);
  await crawl(whole.callId);
  await crawlStopped(whole);
  const described: unknown = (await service.request('/api/v1/openapi.json')).json();
  bodies = bodiesOf(isObject(described) ? described : {});
}, 300_000);
afterAll(() => service.close());

const saidBy = (path: string, name: string): string[] =>
  (SAID_AS[path] ?? SAID_AS[twinOf(path)] ?? ((same: string) => [same]))(name);

describe('what is said by a form and what is said over JSON', () => {
  test('each form has its twin', () => {
    const alone = [...forms.keys()].filter(
      (path) => !COMPUTED.test(path) && !NO_BODY.includes(path) && !bodies.has(twinOf(path)),
    );
    expect(alone.sort()).toEqual([]);
  });

  test('JSON can say whatever a form can', () => {
    const unsaid = [...forms].flatMap(([path, names]) => {
      const body = bodies.get(twinOf(path));
      return body === undefined
        ? []
        : [...names].flatMap((name) =>
            saidBy(path, name)
              .filter((said) => !body.has(said))
              .map((said) => `${path}: ${said}`),
          );
    });
    expect(unsaid).toEqual([]);
  });

  test('a form can say whatever JSON can', () => {
    const byForms = new Map<string, Set<string>>();
    for (const [path, names] of forms) {
      const twin = twinOf(path);
      const said = byForms.get(twin) ?? new Set<string>();
      byForms.set(twin, said);
      for (const name of names) for (const each of saidBy(path, name)) said.add(each);
    }
    const unsaid = [...byForms].flatMap(([path, said]) =>
      [...(bodies.get(path) ?? [])]
        .filter((name) => !said.has(name) && !OTHERWISE.test(name) && !(ONLY_JSON[path] ?? []).includes(name))
        .map((name) => `${path}: ${name}`),
    );
    expect(unsaid).toEqual([]);
  });
});
