import sharp from 'sharp';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openCall } from '../tools/call.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

let service: TestService;
let person: Person;
let callId: string;

beforeAll(async () => {
  service = await testService();
  person = await service.person();
  ({ callId } = await openCall(service, person));
});
afterAll(() => service.close());

async function post(fields: Record<string, string>, picture: Buffer | undefined) {
  const form = new FormData();
  for (const [name, value] of Object.entries(fields)) form.set(name, value);
  form.set(
    'picture',
    new Blob([new Uint8Array(picture ?? Buffer.alloc(0))], { type: 'image/jpeg' }),
    'x.jpg',
  );
  const encoded = new Response(form);
  return service.request({
    method: 'POST',
    url: `/calls/${callId}/photographs`,
    headers: { 'content-type': encoded.headers.get('content-type') ?? '' },
    cookies: person.cookies,
    payload: Buffer.from(await encoded.arrayBuffer()),
  });
}

const page = () => service.request({ url: `/calls/${callId}/photographs`, cookies: person.cookies });

test('a photograph sent by the form is on the page, once however often the same form is sent', async () => {
  const picture = await sharp({ create: { width: 60, height: 40, channels: 3, background: '#456' } })
    .jpeg()
    .toBuffer();
  const fields = {
    key: crypto.randomUUID(),
    form: 'photograph',
    shows: 'tip-mark',
    caption: 'the <b>stripe</b>',
  };
  const first = await post(fields, picture);
  expect([first.statusCode, first.headers.location]).toEqual([303, `/calls/${callId}/photographs`]);
  expect((await post(fields, picture)).statusCode).toBe(303);
  const shown = (await page()).body;
  expect(shown.match(/class="photograph"/g)).toHaveLength(1);
  expect(shown).toContain('the &lt;b&gt;stripe&lt;/b&gt;');
  const source = /src="(\/calls\/[^"]+\/photographs\/[^"]+)"/.exec(shown)?.[1] ?? '';
  const image = await service.request({ url: source, cookies: person.cookies });
  expect(image.headers['content-type']).toBe('image/jpeg');
});

test.each([
  ['no file', undefined],
  ['a text under the name of a photograph', Buffer.from('not a photograph at all, only words')],
])('%s: 422, a summary, and the words typed are still there', async (_name, picture) => {
  const answer = await post(
    { key: crypto.randomUUID(), form: 'photograph', shows: 'dial', caption: 'hand at 47' },
    picture,
  );
  expect(answer.statusCode).toBe(422);
  expect(answer.body).toContain('<title>Error: ');
  expect(answer.body).toContain('class="error-summary"');
  expect(answer.body).toContain('value="hand at 47"');
});

test('another shop’s staff see none of it', async () => {
  const stranger = await service.person();
  const answer = await service.request({ url: `/calls/${callId}/photographs`, cookies: stranger.cookies });
  expect(answer.statusCode).toBe(404);
});
