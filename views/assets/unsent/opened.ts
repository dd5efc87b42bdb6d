import { memberOf } from '../../../shared/member.ts';
import { type Bench, benchOf } from './bench.ts';

/*
 * The address that the desk sent opens a page of its own, which leads to the build. So that it leads there without a
 * signal too, a fingerprint of the address is kept beside the link that it opened; the address itself is kept nowhere.
 */

/** Caches of fingerprints begin so; what follows is the link. */
export const OPENED = 'opened ';
const PRESSED = 'benchcall-opening';
/** What was pressed leads to its build at once, or was lost on the way. */
const AT_ONCE_MS = 60_000;

const isAddress = (pathname: string) => /^\/b\/[^/]+$/.test(pathname);

async function fingerprint(pathname: string): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(pathname));
  const hex = [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return `/opened/${hex}`;
}

/** On the page of the address: remembers which one was pressed. */
async function rememberPress(): Promise<void> {
  const print = await fingerprint(location.pathname);
  document.addEventListener('submit', () =>
    sessionStorage.setItem(PRESSED, JSON.stringify({ print, at: Date.now() })),
  );
}

function pressed(): string | undefined {
  const value: unknown = JSON.parse(sessionStorage.getItem(PRESSED) ?? 'null');
  sessionStorage.removeItem(PRESSED);
  const [print, at] = [memberOf(value, 'print'), memberOf(value, 'at')];
  return typeof print === 'string' && typeof at === 'number' && Date.now() - at < AT_ONCE_MS
    ? print
    : undefined;
}

async function rememberOpened({ link, keptAt }: Bench): Promise<void> {
  const print = pressed();
  if (print === undefined || link === undefined || keptAt !== undefined) return;
  await (await caches.open(`${OPENED}${link}`)).put(print, new Response(link));
}

/** Where a browser keeps pages, it keeps which address opened them. */
export function rememberOpening(): void {
  if (!('caches' in globalThis)) return;
  const bench = benchOf(document.documentElement);
  if (isAddress(location.pathname)) rememberPress().catch(() => undefined);
  else if (bench !== undefined) rememberOpened(bench).catch(() => undefined);
}

/** The link that this address opened on this device. */
export async function openedBy(pathname: string): Promise<string | undefined> {
  const print = await fingerprint(pathname);
  for (const name of await caches.keys())
    if (name.startsWith(OPENED) && (await (await caches.open(name)).match(print)) !== undefined)
      return name.slice(OPENED.length);
  return undefined;
}
