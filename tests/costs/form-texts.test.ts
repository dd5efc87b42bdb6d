import { afterAll, beforeAll, expect, test } from 'vitest';
import { filledCall } from '../tools/filled-call.ts';
import { postForm } from '../tools/post-form.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';
import { type FormOnPage, formsOn, linksOn } from './forms-on-pages.ts';
import { growth } from './processor-time.ts';
import { dealer, type KindOfText, worstText } from './worst-texts.ts';

/*
 * The same for forms, found on every page that can be reached from the first ones: what is typed is read by the schema
 * that its JSON has, and then shown again on the page.
 */

/** A little less than a form may have. */
const BYTES = 250 * 1024;
/** As long as the longest text that is read for what stands in it. */
const READ = 50_000;
const FROM = [
  '/sign-in',
  '/calls',
  '/account',
  '/desk',
  '/desk/limits',
  '/catalogue',
  '/catalogue/load',
  '/reference',
];

let service: TestService;
let person: Person;
const forms = new Map<string, FormOnPage>();

/** Opens every page once and keeps the forms it has; of a form that stands on several the one with most fields. */
async function findForms(from: readonly string[]): Promise<void> {
  const open = [...from];
  const known = new Set(open);
  for (const url of open) {
    const page = await service.request({ url, cookies: person.cookies });
    const to = page.headers.location;
    for (const link of [...linksOn(page.body), ...(to === undefined ? [] : [to])]) {
      const address = link.split(/[?#]/)[0] ?? '';
      // What a link of the builder leads to is the same steps once more.
      if (known.has(address) || address.startsWith('/b/')) continue;
      known.add(address);
      open.push(address);
    }
    for (const form of formsOn(page.body)) {
      const name = `${form.action} ${form.held.form ?? ''}`;
      if (form.texts.length > (forms.get(name)?.texts.length ?? 0)) forms.set(name, form);
    }
  }
}

beforeAll(async () => {
  service = await testService({ COMPUTE_PER_MINUTE: '1000000000' });
  person = await service.person();
  const { callId } = await filledCall(service, person, 'A call with something of every kind');
  await findForms([...FROM, `/calls/${callId}`]);
}, 300_000);
afterAll(() => service.close());

const bytesOf = (text: string): number => new URLSearchParams({ a: text }).toString().length - 2;

const send = ({ action, held, buttons }: FormOnPage, typed: Readonly<Record<string, string>>) =>
  postForm(
    service,
    action,
    { ...held, ...Object.fromEntries(buttons.slice(0, 1)), ...typed, key: crypto.randomUUID() },
    { cookies: person.cookies },
  );

async function tooSteep(
  form: FormOnPage,
  fields: readonly string[],
  kinds: readonly KindOfText[],
  bytes: number,
): Promise<string[]> {
  const steep = await growth((share) =>
    send(
      form,
      Object.fromEntries(
        fields.map((name, at) => [
          name,
          worstText(kinds[at % kinds.length] ?? 'spaces', (bytes / fields.length) * share, bytesOf),
        ]),
      ),
    ),
  );
  return steep === undefined ? [] : [`${form.action} ${fields.join()} ${kinds.join()}, ${bytes}: ${steep}`];
}

test('texts in the fields of any form cost no more than in proportion to their length', async () => {
  const found: string[] = [];
  const deal = dealer();
  for (const form of forms.values()) {
    found.push(...(await tooSteep(form, form.texts, deal(form.texts.length), BYTES)));
    for (const name of form.areas)
      for (const bytes of [BYTES, READ])
        for (const kind of deal(2)) found.push(...(await tooSteep(form, [name], [kind], bytes)));
  }
  expect(found).toEqual([]);
  expect(forms.size, 'pages were read').toBeGreaterThan(50);
}, 300_000);
