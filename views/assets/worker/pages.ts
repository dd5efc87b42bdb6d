import { forgetPages, PAGES } from '../unsent/kept-pages.ts';
import { knownStop, learnStop, stopIn } from '../unsent/stops.ts';

/** Pages older than this are fetched again when a page of the link is open and there is a signal. */
const FRESH_MS = 5 * 60_000;
/** So many pages of a link are kept; the steps of a call are fewer than twenty. */
const MOST = 60;
const KEPT_HEADERS = ['content-type', 'content-security-policy'] as const;
const ENDED: ReadonlySet<number> = new Set([401, 403, 410]);

/** The address without what is said of the entry just kept: the same page with and without it. */
function keyOf(address: string): string {
  const url = new URL(address);
  url.searchParams.delete('kept');
  url.hash = '';
  return url.href;
}

/** Whether this is a page of a link, and of which. */
const linkIn = (html: string): string | undefined =>
  /^\s*<!doctype html>\s*<html [^>]*data-link="([^"]+)"/i.exec(html)?.[1];

async function dropOldest(cache: Cache): Promise<void> {
  const keys = await cache.keys();
  await Promise.all(keys.slice(0, Math.max(0, keys.length - MOST)).map((key) => cache.delete(key)));
}

/** A page that is older than a stop comes with what it asks for hidden, before its script has run. */
async function underStop(page: Response): Promise<Response> {
  const html = await page.text();
  const link = linkIn(html);
  const known = link === undefined ? undefined : await knownStop(link).catch(() => undefined);
  const shut = known?.stands === true && (stopIn(html)?.seq ?? 0) < known.seq;
  const { headers } = page;
  return new Response(shut ? html.replace('<html ', '<html data-own-stop="shut" ') : html, { headers });
}

/** The pages of one link, of the one that was opened last: no other’s stay on the device beside it. */
export function pagesOf(version: string) {
  const named = `${PAGES}${version} `;

  async function keptCache(): Promise<Cache | undefined> {
    const name = (await caches.keys()).find((each) => each.startsWith(named));
    return name === undefined ? undefined : caches.open(name);
  }

  /** Keeps a page that came, marked with the moment; whatever is no page of a link is kept nowhere. */
  async function keep(address: string, response: Response): Promise<void> {
    if (ENDED.has(response.status)) return forgetPages();
    if (response.status !== 200 || response.redirected) return;
    const html = await response.text();
    const link = linkIn(html);
    if (link === undefined) return;
    const name = `${named}${link}`;
    await forgetPages({ name, link });
    const headers = new Headers();
    for (const each of KEPT_HEADERS) headers.set(each, response.headers.get(each) ?? '');
    const at = new Date();
    const now = at.toISOString();
    headers.set('date', now);
    const cache = await caches.open(name);
    const key = keyOf(address);
    // Put in again, it is the newest of the list.
    await cache.delete(key);
    await cache.put(key, new Response(html.replace('<html ', `<html data-kept="${now}" `), { headers }));
    await dropOldest(cache);
    const stop = stopIn(html);
    if (stop !== undefined) await learnStop({ link, at: at.getTime(), said: '', ...stop });
  }

  /** The page at this address, or the newest of the same step; for the start of the link, the newest page of all. */
  async function find(address: string): Promise<Response | undefined> {
    const cache = await keptCache();
    if (cache === undefined) return undefined;
    const exact = await cache.match(keyOf(address));
    if (exact !== undefined) return underStop(exact);
    const { pathname } = new URL(address);
    const keys = (await cache.keys()).toReversed();
    if (pathname === '/bench') return keys[0] === undefined ? undefined : Response.redirect(keys[0].url);
    const near = keys.find((key) => new URL(key.url).pathname === pathname);
    const match = near === undefined ? undefined : await cache.match(near);
    return match === undefined ? undefined : underStop(match);
  }

  /** Whether the pages that are kept are of this link. */
  const isKept = async (link: string): Promise<boolean> =>
    (await caches.keys()).some((name) => name === `${named}${link}`);

  /** Fetches what is not kept yet, or was a while ago; stops at the first that does not come. */
  async function refresh(paths: readonly string[], here: string): Promise<void> {
    for (const path of paths) {
      const address = new URL(path, here).href;
      const kept = await (await keptCache())?.match(keyOf(address));
      const age = Date.now() - Date.parse(kept?.headers.get('date') ?? '');
      if (age < FRESH_MS) continue;
      const response = await fetch(address, { headers: { accept: 'text/html' }, cache: 'no-store' });
      await keep(address, response);
      if (!response.ok) return;
    }
  }
  return { keep, find, isKept, refresh };
}
