import { afterAll, beforeAll, expect, test } from 'vitest';
import { sendJson } from '../tools/call.ts';
import { textOf } from '../tools/page-text.ts';
import { postForm } from '../tools/post-form.ts';
import { problemIn } from '../tools/problem.ts';
import { sendRaw } from '../tools/raw-http.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/** As long a file as the schema takes gets through to it, whichever way it comes; a longer one is told how long it may be. */
const LONGEST = 900_000;

let service: TestService;
let owner: Person;
beforeAll(async () => {
  service = await testService();
  owner = await service.person();
});
afterAll(() => service.close());

/** Rows of invented families, and as many notes as make it so long. */
function fileOf(length: number): string {
  const rows = ['code,name,notes'];
  for (let row = 0; row < 2_000; row += 1) rows.push(`L-${row},Family ${row},${'n'.repeat(400)}`);
  const text = `${rows.join('\n')}\n`;
  return `${text}${'\n'.repeat(length - text.length)}`;
}

const json = (csv: string, who: { authorization?: string } = owner.bearer) =>
  sendJson(service, who, 'POST', '/api/v1/catalogue/loads', { csv, dryRun: true });
const form = (csv: string, cookies: Record<string, string> = owner.cookies) =>
  postForm(service, '/catalogue/load', { csv, do: 'try' }, { cookies });

test('the longest file is taken, as JSON and pasted into the page', async () => {
  const file = fileOf(LONGEST);
  const looked = await json(file);
  expect([looked.status, looked.json.rows, looked.json.added]).toEqual([200, 2_000, 2_000]);
  const page = await form(file);
  expect(page.statusCode).toBe(200);
  expect(textOf(page.body)).toContain('Of 2000 rows 2000 are new');
});

test('one sign more is refused at its field, with how long it may be', async () => {
  const file = fileOf(LONGEST + 1);
  const refused = await json(file);
  expect(refused.status).toBe(422);
  expect(refused.json.errors).toMatchObject([
    { pointer: '/csv', detail: `must be ${LONGEST} characters or fewer` },
  ]);
  const page = await form(file);
  expect(page.statusCode).toBe(422);
  expect(textOf(page.body)).toContain(`must be ${LONGEST} characters or fewer`);
});

test('a body that no such file has is refused whole, with how much is taken', async () => {
  const { detail } = problemIn(
    await service.request({
      method: 'POST',
      url: '/api/v1/catalogue/loads',
      headers: { ...owner.bearer, 'content-type': 'application/json' },
      payload: `{"csv":"${'n'.repeat(3_000_000)}"}`,
    }),
    413,
    'body-too-large',
  );
  expect(detail).toMatch(/^this address takes \d+ kB at the most$/);
});

test('nothing so long is read of whoever is not signed in', async () => {
  const base = await service.listen();
  const head = (url: string, type: string) =>
    `POST ${url} HTTP/1.1\r\nhost: x\r\ncontent-type: ${type}\r\ncontent-length: 2000000\r\nconnection: close\r\n\r\n`;
  // Not a byte of the body is sent: the answer waits for none.
  problemIn(
    await sendRaw(base, head('/api/v1/catalogue/loads', 'application/json')),
    401,
    'sign-in-required',
  );
  const page = await sendRaw(base, head('/catalogue/load', 'application/x-www-form-urlencoded'));
  expect(page.statusCode).toBe(401);
});
