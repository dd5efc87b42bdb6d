import { mkdirSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { seedDemo } from '../server/start/demo.ts';
import { testService } from './tools/service.ts';
import { wholeCall } from './tools/whole-call.ts';

const OUT = process.env.SNAP ?? '/tmp/snap/out';
const ids = new Map<string, string>();
const un = (s: string) =>
  s
    .replaceAll('&amp;', '&')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>');
function norm(html: string): string {
  return html
    .replace(/name="key" value="[^"]*"/g, 'name="key" value="K"')
    .replace(/nonce="[^"]*"/g, 'nonce="N"')
    .replace(/\/assets\/benchcall\.[0-9a-f]+/g, '/assets/A')
    .replace(/(class="call-code"[\s\S]*?<\/svg>)/g, (s) => s.replace(/ d="[^"]*"/g, ' d="D"'))
    .replace(/bcl?[a-z]*_[A-Za-z0-9_-]{20,}/g, 'SECRET')
    .replace(/Number of this request: [0-9a-f-]{36}/g, 'Number of this request: R')
    .replace(/[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}/g, (id) => {
      if (!ids.has(id)) ids.set(id, `ID${ids.size}`);
      return ids.get(id) ?? '';
    })
    .replace(/\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z/g, 'ISO')
    .replace(/\d{1,2} [A-Z][a-z]+, \d\d:\d\d/g, 'MOMENT');
}
test('snap', async () => {
  mkdirSync(OUT, { recursive: true });
  const service = await testService({ COMPUTE_PER_MINUTE: '100000' });
  await service.database.asOwner('create sequence snap_seq');
  await service.database.asOwner(
    "create function snap_uuid() returns uuid language sql volatile security definer as $$ select ('00000000-0000-4000-8000-' || lpad(to_hex(nextval('public.snap_seq')), 12, '0'))::uuid $$",
  );
  await service.database.asOwner(
    "do $$ declare r record; begin for r in select table_name, column_name from information_schema.columns where table_schema = 'public' and column_default ilike '%gen_random_uuid%' loop execute format('alter table public.%I alter column %I set default public.snap_uuid()', r.table_name, r.column_name); end loop; end $$",
  );
  let made = 0;
  crypto.randomUUID = () =>
    `11111111-0000-4000-8000-${(made++).toString(16).padStart(12, '0')}` as `${string}-${string}-${string}-${string}-${string}`;
  const person = await service.person({ name: 'Robin at the desk' });
  const goals = ['verify-ratio', 'noise-or-failure', ...(process.env.GOALS?.split(',') ?? [])];
  const wholes = [];
  for (const goal of goals) {
    try {
      wholes.push(await wholeCall(service, person, goal));
    } catch (e) {
      console.log(goal, String(e));
    }
  }
  const first = await seedDemo(service.deps);
  if (first.kind !== 'demo') throw new Error('demo');
  const rows = await service.database.asOwner('select shop_id from call where id = $1', [first.callId]);
  const demoPerson = await service.person({ shopId: String(rows.rows[0]?.shop_id), name: 'Demo looker' });
  const opened = await service.app.inject({ method: 'POST', url: `/b/${first.link}` });
  const demoBench = {
    'benchcall-bench': opened.cookies.find((c) => c.name === 'benchcall-bench')?.value ?? '',
  };
  let n = 0;
  const seenForms = new Set<string>();
  type Form = { action: string; fields: Record<string, string>; key: string };
  async function crawl(label: string, cookies: Record<string, string>, starts: string[], skip: RegExp) {
    const queue = [...starts];
    const seen = new Set(queue.map(norm));
    const forms: Form[] = [];
    let mine = 0;
    async function save(
      name: string,
      r: { statusCode: number; body: string; headers: Record<string, unknown> },
    ) {
      const type = String(r.headers['content-type'] ?? '');
      if (r.statusCode >= 300 && r.statusCode < 400) {
        writeFileSync(
          `${OUT}/${label}-${String(mine++).padStart(4, '0')}.html`,
          `${name}\n${r.statusCode} ${norm(String(r.headers.location))}`,
        );
        return;
      }
      if (!type.includes('html')) return;
      n += 1;
      const head = `${name}\n${r.statusCode} ${type} ${String(r.headers['cache-control'])} ${norm(String(r.headers['content-security-policy'])).replace(/nonce-[^']*/g, 'nonce-N')}\n`;
      writeFileSync(`${OUT}/${label}-${String(mine++).padStart(4, '0')}.html`, head + norm(r.body));
    }
    while (queue.length > 0 && mine < 1500) {
      const url = queue.shift() ?? '';
      const r = await service.app.inject({ url, cookies });
      await save(`GET ${norm(url)}`, r);
      if (r.statusCode >= 300 && r.statusCode < 400) {
        const to = String(r.headers.location);
        if (!seen.has(norm(to))) {
          seen.add(norm(to));
          queue.push(to);
        }
      }
      for (const [, raw = ''] of r.body.matchAll(/<a [^>]*href="([^"]*)"/g)) {
        let href = un(raw).split('#')[0] ?? '';
        if (href === '' || /^(https?:|mailto:|tel:|data:)/.test(href) || skip.test(href)) continue;
        if (!href.startsWith('/')) href = new URL(href, `http://x${url}`).pathname;
        if (seen.has(norm(href))) continue;
        seen.add(norm(href));
        queue.push(href);
      }
      for (const [_whole, attrs = '', inner = ''] of r.body.matchAll(/<form ([^>]*)>([\s\S]*?)<\/form>/g)) {
        if (/enctype/.test(attrs) || !/method="post"/.test(attrs)) continue;
        const action = un(/action="([^"]*)"/.exec(attrs)?.[1] ?? '');
        const fields: Record<string, string> = {};
        for (const [, a = ''] of inner.matchAll(/<(?:input|button) ([^>]*)>/g)) {
          const name = /name="([^"]*)"/.exec(a)?.[1];
          if (name === undefined) continue;
          if (/type="(radio|checkbox)"/.test(a) && !/ checked/.test(a)) {
            fields[un(name)] ??= '';
            continue;
          }
          if (/type="submit"/.test(a) && fields[un(name)] !== undefined) continue;
          fields[un(name)] = un(/ value="([^"]*)"/.exec(a)?.[1] ?? '');
        }
        for (const [, name = '', opts = ''] of inner.matchAll(
          /<select [^>]*name="([^"]*)"[^>]*>([\s\S]*?)<\/select>/g,
        ))
          fields[un(name)] = un(/value="([^"]*)" selected/.exec(opts)?.[1] ?? '');
        for (const [, name = '', text = ''] of inner.matchAll(
          /<textarea [^>]*name="([^"]*)"[^>]*>([\s\S]*?)<\/textarea>/g,
        ))
          fields[un(name)] = un(text).trim();
        const key = norm(
          `${label} ${action} ${fields.form ?? ''} ${Object.keys(fields).join(',')} ${fields.act ?? ''}`,
        );
        if (skip.test(action) || seenForms.has(key)) continue;
        seenForms.add(key);
        forms.push({ action, fields, key });
      }
    }
    const HIDDEN = new Set([
      'form',
      'part',
      'revision',
      'setUpId',
      'act',
      'of',
      'computation',
      'looked',
      'order',
    ]);
    const ways: ((name: string, value: string) => string)[] = [
      (_, v) => (v === '' ? '' : 'zz'),
      () => 'zz',
      () => '',
      (_, v) => v,
    ];
    for (const [w, way] of ways.entries()) {
      for (const { action, fields } of forms) {
        const sent = Object.fromEntries(
          Object.entries(fields).map(([name, value]) => [
            name,
            name === 'key' ? crypto.randomUUID() : HIDDEN.has(name) ? value : way(name, value),
          ]),
        );
        const r = await service.app.inject({
          method: 'POST',
          url: action,
          cookies,
          headers: { 'content-type': 'application/x-www-form-urlencoded' },
          payload: new URLSearchParams(sent).toString(),
        });
        await save(`POST${w} ${norm(action)} ${fields.form ?? ''}`, r);
        if (r.statusCode === 303) {
          const to = String(r.headers.location);
          await save(`  then ${norm(to)}`, await service.app.inject({ url: to, cookies }));
        }
      }
    }
    console.log(label, mine, 'pages', forms.length, 'forms');
  }
  const NEVER =
    /^\/(sign-out|account|sign-in|reference|problems|api)|\/photographs\/[0-9a-f-]{36}|\.csv|\/export|\/close$|^\/desk\/.*(password|revoke|end)/;
  await crawl(
    'open',
    {},
    ['/', '/reference', '/problems', '/reference/api', '/nowhere', '/sign-in'],
    /^\/(sign-in|calls|api)/,
  );
  for (const [i, whole] of wholes.entries()) await crawl(`bench${i}`, whole.bench, ['/bench'], NEVER);
  await crawl('demobench', demoBench, ['/bench'], NEVER);
  await crawl(
    'desk',
    person.cookies,
    ['/calls', '/desk', '/catalogue', '/account', ...wholes.map((w) => `/calls/${w.callId}/close`)],
    NEVER,
  );
  await crawl('demodesk', demoPerson.cookies, ['/calls', `/calls/${first.callId}/takeover`], NEVER);
  expect(n).toBeGreaterThan(50);
  await service.close();
}, 600_000);
