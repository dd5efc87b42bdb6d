import { clock, put } from './markup.ts';
import { isNewer, type KnownStop, knownStop, learnStop } from './stops.ts';

/*
 * What this device knows newest of the stop stands over every page of the link: a page that was kept before a stop
 * shows it, and a stop that was seen lifted stands on no page that was kept before.
 */

/** When this page, or what was merged into it, came from the service. */
const came = { at: 0 };

const mainHere = () => document.querySelector<HTMLElement>('main');

/** What this page itself says; undefined where it says nothing of the record. */
function ofPage(link: string): KnownStop | undefined {
  const main = mainHere();
  const { seq, stop } = main?.dataset ?? {};
  if (seq === undefined) return undefined;
  const shown = main?.querySelector('.hold')?.outerHTML ?? '';
  return { link, seq: Number(seq), at: came.at, stands: stop === 'stands', shown, said: '' };
}

/** Keeps what this page says, as it came from the service at that moment. */
export async function learnFromPage(link: string, at: number): Promise<void> {
  came.at = at;
  const seen = ofPage(link);
  if (seen !== undefined) await learnStop(seen);
}

/** What is known and newer than this page. A page that says nothing of the record is asked only how old it is. */
export async function newerStop(link: string | undefined, kept: boolean): Promise<KnownStop | undefined> {
  const known = link === undefined ? undefined : await knownStop(link).catch(() => undefined);
  if (known === undefined) return undefined;
  const page = ofPage(known.link);
  if (page === undefined) return kept && known.at > came.at && known.stands ? known : undefined;
  if (!isNewer(known, page)) return undefined;
  // Of the same moment the page's own box says as much.
  const differs = known.stands !== page.stands || (known.seq > page.seq && known.shown !== page.shown);
  return differs ? known : undefined;
}

/** Whether this page shows a stop that is known to be lifted. */
export const showsLifted = (known: KnownStop | undefined): boolean =>
  known?.stands === false && mainHere()?.dataset.stop === 'stands';

/** The words of the box as the service made it, without what is named once on a page. */
function wordsOf(shown: string): Element[] {
  const text = new DOMParser().parseFromString(shown, 'text/html').querySelector('.hold-text');
  for (const named of text?.querySelectorAll('[id]') ?? []) named.removeAttribute('id');
  return [...(text?.children ?? [])].map((each) => document.importNode(each, true));
}

const ONLY_HEARD = 'A stop stands. Why is not on this phone.';

/** Fills the box with what is known; the page's own gives way to it. */
export function showKnownStop(box: HTMLElement, known: KnownStop | undefined): void {
  const { dataset } = document.documentElement;
  if (known === undefined) delete dataset.newerStop;
  else dataset.newerStop = known.stands ? 'stands' : 'none';
  box.hidden = known === undefined || (!known.stands && known.shown === '');
  if (known === undefined || box.hidden) return;
  const text = box.querySelector('.hold-text');
  if (known.shown !== '') text?.replaceChildren(...wordsOf(known.shown));
  else put(box, '.hold-said', known.said === '' ? ONLY_HEARD : known.said);
  const when = `As this phone saw it last, ${clock(known.at)}`;
  if (text?.querySelector('.hold-when') === null) {
    const line = document.createElement('p');
    line.className = 'hold-when small soft';
    text.append(line);
  }
  put(box, '.hold-when', when);
}

/** Whether a stop of the service stands, by the newest that is known. */
export function stopStands(): boolean {
  const { newerStop } = document.documentElement.dataset;
  return newerStop === undefined ? document.querySelector('main .hold') !== null : newerStop === 'stands';
}
