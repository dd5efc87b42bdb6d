import { PAGES } from '../unsent/kept-pages.ts';
import { OPENED, openedBy } from '../unsent/opened.ts';
import { sendAll } from '../unsent/send-all.ts';
import { pagesOf } from './pages.ts';
import type { WorkerScope } from './scope.ts';

/*
 * Keeps the pages of the builder's link and what they are made with, and sends what waits when the browser says that
 * the signal is back. Everything else goes to the service untouched: pages of the desk, pictures, live streams.
 */

declare const self: WorkerScope;
/** Style sheet, script and marks, by addresses that change with their content, and the page for what is not kept. */
declare const ASSETS: readonly string[];
declare const NO_SIGNAL: string;
declare const VERSION: string;

const FILES = `files ${VERSION}`;
/** A line that carries nothing lets a page hang; what is kept is shown instead. */
const PATIENCE_MS = 3_000;
const pages = pagesOf(VERSION);

const files = () => caches.open(FILES);

async function prepare(): Promise<void> {
  await (await files()).addAll([...ASSETS, NO_SIGNAL]);
  await self.skipWaiting();
}

/** What another version kept was made with another style sheet and script. */
async function takeOver(): Promise<void> {
  const old = (await caches.keys()).filter(
    (name) => name !== FILES && !name.startsWith(`${PAGES}${VERSION} `) && !name.startsWith(OPENED),
  );
  await Promise.all(old.map((name) => caches.delete(name)));
  await self.clients.claim();
}

async function fileOf(request: Request): Promise<Response> {
  return (await (await files()).match(request.url)) ?? fetch(request);
}

async function keptPage(address: string): Promise<Response> {
  const kept = (await pages.find(address)) ?? (await (await files()).match(NO_SIGNAL));
  return kept ?? Response.error();
}

/** From the service where it answers, from this device where it does not. */
async function pageOf(request: Request, later: (work: Promise<unknown>) => void): Promise<Response> {
  const answered = fetch(request);
  later(answered.then((response) => pages.keep(request.url, response.clone())).catch(() => undefined));
  const impatient = new Promise<undefined>((done) => setTimeout(done, PATIENCE_MS));
  try {
    const response = await Promise.race([answered, impatient]);
    return response ?? (await pages.find(request.url)) ?? (await answered);
  } catch {
    return keptPage(request.url);
  }
}

/** The address that the desk sent: without an answer it leads to the pages of its link, where they are kept here. */
async function openingOf(request: Request): Promise<Response> {
  const answered = fetch(request);
  const impatient = new Promise<undefined>((done) => setTimeout(done, PATIENCE_MS));
  const response = await Promise.race([answered, impatient]).catch(() => undefined);
  if (response !== undefined) return response;
  const link = await openedBy(new URL(request.url).pathname).catch(() => undefined);
  if (link !== undefined && (await pages.isKept(link))) return Response.redirect('/bench');
  return answered.catch(() => keptPage(new URL(NO_SIGNAL, location.origin).href));
}

const isText = (each: unknown): each is string => typeof each === 'string';

function pathsIn(data: unknown): string[] {
  const keep: unknown = typeof data === 'object' && data !== null && 'keep' in data ? data.keep : undefined;
  return Array.isArray(keep) ? keep.filter(isText) : [];
}

self.addEventListener('install', (event) => event.waitUntil(prepare()));
self.addEventListener('activate', (event) => event.waitUntil(takeOver()));
self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET') return;
  const { pathname, origin } = new URL(request.url);
  if (origin !== location.origin) return;
  if (ASSETS.includes(pathname)) event.respondWith(fileOf(request));
  else if (request.mode === 'navigate' && /^\/bench(\/|$)/.test(pathname))
    event.respondWith(pageOf(request, (work) => event.waitUntil(work)));
  else if (request.mode === 'navigate' && /^\/b\//.test(pathname)) event.respondWith(openingOf(request));
});
self.addEventListener('message', (event) =>
  event.waitUntil(pages.refresh(pathsIn(event.data), location.origin).catch(() => undefined)),
);
self.addEventListener('sync', (event) =>
  event.waitUntil(
    sendAll().then(({ stopped }) => {
      // The browser wakes the worker again for work that failed.
      if (stopped?.kind === 'later') throw new Error('not sent yet');
    }),
  ),
);
