import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openCall } from '../tools/call.ts';
import { htmlFaults } from '../tools/html-faults.ts';
import { postForm } from '../tools/post-form.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/** A form that was refused, asked for by its address: HTTP answers to a GET what a browser sends on going back. */
let service: TestService;
let person: Person;
let colleague: Person;
let callId: string;
beforeAll(async () => {
  service = await testService();
  person = await service.person();
  colleague = await service.person({ shopId: person.shopId });
  ({ callId } = await openCall(service, person, 'Blue block'));
});
afterAll(() => service.close());

const address = () => `/calls/${callId}/spec/cam`;
const get = (url: string, who: Person = person) => service.request({ url, cookies: who.cookies });
const post = (fields: Record<string, string>, who: Person = person) =>
  postForm(
    service,
    address(),
    { form: 'cam', key: crypto.randomUUID(), ...fields },
    { cookies: who.cookies },
  );
/** The form as the page has it, so that what else it carries goes along. */
async function hiddenOf(): Promise<Record<string, string>> {
  const { body } = await get(`/calls/${callId}/steps/cam`);
  const form = new RegExp(`<form[^>]*action="${address()}"[\\s\\S]*?</form>`).exec(body)?.[0] ?? '';
  return Object.fromEntries(
    Array.from(
      form.matchAll(/type="hidden" name="([^"]+)" value="([^"]*)"/g),
      ([, name = '', value = '']) => [name, value],
    ),
  );
}

describe('a form that was refused', () => {
  test('stands at its address as it was typed, with what was wrong, for the person who typed it', async () => {
    const hidden = await hiddenOf();
    const refused = await post({
      ...hidden,
      'cam.intake.lobeLift': 'round about so',
      'cam.card': 'Card <7>',
    });
    expect(refused.statusCode).toBe(422);
    const again = await get(address());
    expect(again.statusCode).toBe(200);
    expect(htmlFaults(again.body)).toEqual([]);
    expect(again.body).toContain('<title>Error: ');
    expect(again.body).toContain('value="round about so"');
    expect(again.body).toContain('value="Card &lt;7&gt;"');
    const summary = (html: string) => /class="error-summary"[\s\S]*?<\/(?:section|div)>/.exec(html)?.[0];
    expect(summary(again.body)).toBe(summary(refused.body));
    // Nothing was kept of the build by any of this.
    expect((await get(`/calls/${callId}/steps/cam`)).body).not.toContain('round about so');
  });

  test('is nobody else’s', async () => {
    const other = await get(address(), colleague);
    expect(other.statusCode).toBe(303);
    expect(other.headers.location).toBe(`/calls/${callId}`);
  });

  test('is taken the place of by the next one, and by one that was taken', async () => {
    const hidden = await hiddenOf();
    await post({ ...hidden, 'cam.intake.lobeLift': 'so and so' });
    const again = await get(address());
    expect(again.body).toContain('value="so and so"');
    expect(again.body).not.toContain('round about so');
    const taken = await post({ ...hidden, 'cam.intake.lobeLift': '.482 in' });
    expect(taken.statusCode).toBe(303);
    expect((await get(address())).headers.location).toBe(`/calls/${callId}`);
  });

  test('is over after an hour', async () => {
    const hidden = await hiddenOf();
    await post({ ...hidden, 'cam.intake.lobeLift': 'long ago' });
    expect((await get(address())).statusCode).toBe(200);
    await service.database.asOwner(
      "update idempotency set created_at = created_at - interval '61 minutes' where key = 'refused form'",
    );
    expect((await get(address())).statusCode).toBe(303);
    // The next that is refused lets go of it.
    await post({ ...hidden, 'cam.intake.lobeLift': 'just now' });
    const { rows } = await service.database.asOwner(
      "select body::text as row from idempotency where key = 'refused form'",
    );
    expect(rows.map(({ row }) => String(row)).join()).not.toContain('"long ago"');
  });
});

test('a call that was refused stands at its own address, and a new call begins empty', async () => {
  const refused = await postForm(
    service,
    '/calls/new/open',
    { form: 'new-call', key: crypto.randomUUID(), callerName: 'Lin Marsh', buildLabel: '' },
    { cookies: person.cookies },
  );
  expect(refused.statusCode).toBe(422);
  expect((await get('/calls/new/open')).body).toContain('value="Lin Marsh"');
  expect((await get('/calls/new')).body).not.toContain('Lin Marsh');
  expect((await get('/calls/new/open', colleague)).headers.location).toBe('/calls/new');
});

test('a password is never kept with it', async () => {
  const secret = 'seven wet grey geese';
  const refused = await postForm(
    service,
    '/desk/staff',
    { key: crypto.randomUUID(), name: '', email: 'x', role: 'desk', password: secret },
    { cookies: person.cookies },
  );
  expect(refused.statusCode).toBe(422);
  const { rows } = await service.database.asOwner(
    "select body::text as row from idempotency where key = 'refused form'",
  );
  expect(rows.length).toBeGreaterThan(0);
  expect(rows.map(({ row }) => String(row)).join()).not.toContain(secret);
  expect((await get('/desk/staff')).body).not.toContain(secret);
});

test('a form of a page without an address of its own leads to the one above, and in no circle', async () => {
  const lost = await get(`/calls/${callId}/hold/lift`);
  expect([lost.statusCode, lost.headers.location]).toEqual([303, `/calls/${callId}`]);
  expect((await get('/account/password')).headers.location).toBe('/account');
});
