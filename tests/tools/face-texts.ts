import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { STEP_NAMES } from '../../shared/steps.ts';
import { asWritten } from './page-text.ts';

/*
 * Writes the text of every face of the demo call into a folder, a file for each: what a reader compares before and
 * after a change. `npm start` on an empty DATA_DIR prints the addresses it wants:
 *
 *   node --import tsx tests/tools/face-texts.ts <folder> <address of the service> <e-mail> <password> <call> <link>
 */
const WHOLE = ['report', 'worksheet', 'photographs'];
const DESK_ONLY = ['takeover', 'share', 'hold', 'close', 'export.json'];

const ENTITIES: Readonly<Record<string, string>> = {
  '&amp;': '&',
  '&lt;': '<',
  '&gt;': '>',
  '&quot;': '"',
  '&#39;': '’',
};

/** The words of a page, a line for each block; moments and ids left out, since they differ from run to run. */
export function textOfPage(html: string): string {
  return asWritten(html)
    .replace(/<(script|style|template|defs)\b[\s\S]*?<\/\1>/g, '')
    .replace(
      /<\/?(p|div|li|tr|h[1-6]|section|article|dt|dd|caption|label|legend|button|summary|figcaption|text|title|desc|option)\b[^>]*>/g,
      '\n',
    )
    .replace(/<[^>]+>/g, ' ')
    .replace(/&(amp|lt|gt|quot|#39);/g, (entity) => ENTITIES[entity] ?? entity)
    .replace(/\d{1,2} [A-Z][a-z]{2,8}( \d{4})?, \d\d:\d\d/g, '(moment)')
    .replace(
      /\d{1,2} (January|February|March|April|May|June|July|August|September|October|November|December) \d{4}/g,
      '(day)',
    )
    .replace(/[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}/g, '(id)')
    .split('\n')
    .map((line) => line.replace(/\s+/g, ' ').trim())
    .filter((line) => line !== '')
    .join('\n');
}

async function get(address: string, cookie: string): Promise<string> {
  const answer = await fetch(address, { headers: { cookie } });
  const body = await answer.text();
  if (!answer.ok) return `${answer.status} ${textOfPage(body)}`;
  return answer.headers.get('content-type')?.includes('html') === true ? textOfPage(body) : body;
}

const cookiesOf = (answer: Response): string =>
  answer.headers
    .getSetCookie()
    .map((each) => each.split(';')[0] ?? '')
    .join('; ');

async function signIn(base: string, email: string, password: string): Promise<string> {
  const answer = await fetch(`${base}/sign-in`, {
    method: 'POST',
    redirect: 'manual',
    headers: { 'content-type': 'application/x-www-form-urlencoded' },
    body: new URLSearchParams({ email, password }).toString(),
  });
  return cookiesOf(answer);
}

/** The link is opened by the form of its page. */
async function openLink(base: string, link: string): Promise<string> {
  const page = await fetch(`${base}/b/${link}`);
  const opening = cookiesOf(page);
  const answer = await fetch(`${base}/b/${link}`, {
    method: 'POST',
    redirect: 'manual',
    headers: { 'content-type': 'application/x-www-form-urlencoded', cookie: opening },
    body: '',
  });
  return cookiesOf(answer);
}

async function main(): Promise<void> {
  const [folder = '', base = '', email = '', password = '', call = '', link = ''] = process.argv.slice(2);
  await mkdir(folder, { recursive: true });
  const keep = (name: string, text: string) =>
    writeFile(path.join(folder, `${name.replaceAll('/', '-')}.txt`), `${text}\n`);
  const desk = await signIn(base, email, password);
  const bench = await openLink(base, link);
  for (const step of STEP_NAMES) {
    await keep(`desk-${step}`, await get(`${base}/calls/${call}/steps/${step}`, desk));
    await keep(`bench-${step}`, await get(`${base}/bench/steps/${step}`, bench));
  }
  for (const place of WHOLE) {
    await keep(`desk-${place}`, await get(`${base}/calls/${call}/${place}`, desk));
    await keep(`bench-${place}`, await get(`${base}/bench/${place}`, bench));
  }
  for (const place of DESK_ONLY)
    await keep(`desk-${place}`, await get(`${base}/calls/${call}/${place}`, desk));
  await keep('desk-calls', await get(`${base}/calls`, desk));
}

await main();
