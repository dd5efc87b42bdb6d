import type { LinkState } from './bench.ts';
import type { Entry } from './store.ts';

/** The markup that the page brings along, so that what a script shows looks as the service's own parts do. */
export interface Markup {
  readonly section: HTMLElement;
  readonly entry: HTMLElement;
  readonly line: HTMLElement;
  readonly stop: HTMLElement;
  readonly strip: HTMLElement;
}

export function markupHere(): Markup | undefined {
  const made = document.querySelector<HTMLTemplateElement>('template#unsent-made')?.content;
  const section = made?.querySelector<HTMLElement>('.unsent');
  const entry = section?.querySelector<HTMLElement>('.unsent-entry');
  const line = made?.querySelector<HTMLElement>('.tape-line');
  const stop = made?.querySelector<HTMLElement>('.own-stop');
  const strip = made?.querySelector<HTMLElement>('.unsent-strip');
  if (!section || !entry || !line || !stop || !strip) return undefined;
  return { section, entry, line, stop, strip };
}

/** Puts text into the part of an element; a part that is not there is none of this markup. */
export function put(within: Element, part: string, text: string): void {
  const place = within.querySelector(part);
  if (place !== null && place.textContent !== text) place.textContent = text;
}

export const copyOf = (element: HTMLElement): HTMLElement => document.importNode(element, true);

const CLOCK = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' });

const DAY = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short' });

/** `10:41`, with the day where it is not today. */
export function clock(at: number | Date): string {
  const day = DAY.format(at);
  return day === DAY.format(new Date()) ? CLOCK.format(at) : `${day}, ${CLOCK.format(at)}`;
}

/** Nothing stands above a stop: where the page shows one of its own, the list comes after it. */
export function keepBelowStop(section: HTMLElement, newer: boolean): void {
  const hold = newer ? null : document.querySelector('main .hold');
  const main = document.querySelector('main');
  if (hold === null && section.parentElement !== document.body) main?.before(section);
  else if (hold !== null && hold.nextElementSibling !== section) hold.after(section);
}

/** Where an entry is. */
export function placeOf(entry: Entry, link: string | undefined, state: LinkState): string {
  if (entry.state === 'refused' || entry.state === 'handed') return 'not taken';
  if (entry.state === 'changing') return 'held back while you change it';
  if (link !== undefined && entry.link !== link)
    return entry.tried ? 'no answer came, may have arrived; of another link' : 'not sent, of another link';
  if (state === 'ended') return entry.tried ? 'no answer came, may have arrived' : 'not sent';
  return entry.tried ? 'no answer yet, may have arrived' : 'not sent yet';
}

/** Where an entry is, and since when. */
export const stateOf = (entry: Entry, link: string | undefined, state: LinkState): string =>
  `${placeOf(entry, link, state)}, ${clock(entry.at)}`;
