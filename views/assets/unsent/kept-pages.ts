import { OPENED } from './opened.ts';
import { forgetStops } from './stops.ts';

/** Caches of pages begin so; what follows is the version of the worker, and the link. */
export const PAGES = 'pages ';

const isOfOther = (name: string, but?: { readonly name: string; readonly link: string }) =>
  (name.startsWith(PAGES) && name !== but?.name) ||
  (name.startsWith(OPENED) && name !== `${OPENED}${but?.link}`);

/** Nothing of a link that has ended stays on this device but what its holder typed. */
export async function forgetPages(but?: { readonly name: string; readonly link: string }): Promise<void> {
  await forgetStops(but?.link).catch(() => undefined);
  if (!('caches' in globalThis)) return;
  const names = await caches.keys();
  await Promise.all(names.filter((name) => isOfOther(name, but)).map((name) => caches.delete(name)));
}

function isSync(value: unknown): value is { register(tag: string): Promise<void> } {
  return (
    typeof value === 'object' && value !== null && 'register' in value && typeof value.register === 'function'
  );
}

/** The steps that this page leads to. */
function stepsHere(): string[] {
  const steps = `${document.querySelector<HTMLElement>('main')?.dataset.steps ?? ''}/`;
  if (steps === '/') return [];
  const links = [...document.querySelectorAll<HTMLAnchorElement>('a[href]')];
  const paths = links.map((link) => new URL(link.href)).filter((to) => to.pathname.startsWith(steps));
  return [...new Set(paths.map((to) => to.pathname))];
}

/** Has the worker keep the pages of the link on this device, so that they open without a signal. */
export async function keepPages(worker: string): Promise<void> {
  if (!('serviceWorker' in navigator)) return;
  await navigator.serviceWorker.register(worker, { scope: '/bench' });
  // The address that the desk sent leads to what is kept, too.
  await navigator.serviceWorker.register(worker, { scope: '/b/' });
  const { active } = await navigator.serviceWorker.ready;
  active?.postMessage({ keep: [location.pathname, ...stepsHere()] });
}

/** Has the browser wake the worker when the signal is back, also after the page was closed, where it can. */
export async function askForWaking(): Promise<void> {
  if (!('serviceWorker' in navigator)) return;
  const registration = await navigator.serviceWorker.getRegistration('/bench');
  if (registration === undefined || !('sync' in registration)) return;
  if (isSync(registration.sync)) await registration.sync.register('send');
}
