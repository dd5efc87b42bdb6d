import type { Bench, LinkState } from './bench.ts';
import { startChange } from './changing.ts';
import { headlineOf, hintOf, type Standing } from './headline.ts';
import { stopStands } from './known-stop.ts';
import { clock, copyOf, type Markup, placeOf, put, stateOf } from './markup.ts';
import { offerSending } from './send-again.ts';
import { deleteEntry, type Entry } from './store.ts';
import { tellOthers } from './tell.ts';
import { isOfBuild, offerThisLink } from './under-this-link.ts';

/** What the whole page knows beside the entries. */
export type Now = Pick<Standing, 'signal' | 'state' | 'sending'> & {
  /** This page was kept under a stop that is lifted since. */
  readonly lifted: boolean;
};

const LIFTED = 'Its stop was lifted since; what it held back comes with the signal.';
const SURE = 'Delete for good';
const MAY_BE_THERE = 'It may have arrived: if so it is struck out there, not here.';

function button(within: Element, does: string): HTMLButtonElement | null {
  return within.querySelector<HTMLButtonElement>(`button[data-do=${does}]`);
}

/** The first press asks, the second deletes: a thumb in a glove hits what it did not mean to. */
function offerDeleting(entry: Entry, item: Element, changed: () => void): void {
  const press = button(item, 'delete');
  press?.addEventListener('click', () => {
    if (press.textContent !== SURE) {
      press.textContent = SURE;
      if (entry.tried && entry.state !== 'refused') put(item, '.unsent-why', MAY_BE_THERE);
      return;
    }
    deleteEntry(entry.id).then(() => {
      tellOthers();
      changed();
    }, changed);
  });
}

/** Where a refusal is about a line of the tape, and this page has it, it leads there. */
function leadToLine(item: Element, { state, line }: Entry): void {
  const why = item.querySelector('.unsent-why');
  if (why === null || state !== 'refused' || line === undefined) return;
  if (document.querySelector(`#line-${line}`) === null) return;
  const link = document.createElement('a');
  link.href = `#line-${line}`;
  link.textContent = `Show line ${line}`;
  why.append(' ', link);
}

function itemOf(entry: Entry, made: Markup, bench: Bench, now: Now, changed: () => void): HTMLElement {
  const item = copyOf(made.entry);
  item.dataset.entry = String(entry.id);
  put(item, '.unsent-pressed', entry.pressed);
  put(item, '.unsent-typed', entry.typed);
  put(item, '.unsent-state', stateOf(entry, bench.link, now.state));
  put(item, '.unsent-why', entry.state === 'refused' ? (entry.refusal ?? '') : '');
  leadToLine(item, entry);
  const change = button(item, 'change');
  if (change !== null) change.hidden = now.state !== 'open' || entry.link !== bench.link;
  change?.addEventListener('click', () => void startChange(entry).finally(changed));
  offerSending(item, entry, changed);
  if (now.state === 'open') offerThisLink(item, entry, bench, changed);
  offerDeleting(entry, item, changed);
  return item;
}

/** An item that shows the same stays in its place, with the focus and a press that was half meant. */
function fillList(
  list: Element,
  entries: readonly Entry[],
  item: (entry: Entry) => HTMLElement,
  state: string,
): void {
  const here = new Map([...list.children].map((each) => [each.getAttribute('data-shows'), each]));
  const next = entries.map((entry) => {
    const shows = JSON.stringify([entry, state, stopStands()]);
    const made = here.get(shows) ?? item(entry);
    made.setAttribute('data-shows', shows);
    return made;
  });
  const same = next.length === list.children.length && next.every((each, at) => each === list.children[at]);
  if (same) return;
  list.replaceChildren(...next);
}

const standingOf = (entries: readonly Entry[], bench: Bench, now: Now): Standing => {
  const own = entries.filter((entry) => bench.link === undefined || entry.link === bench.link);
  const refused = own.filter(({ state }) => state === 'refused').length;
  const arrived = own.filter((entry) => entry.state === 'refused' && entry.arrived === true).length;
  const others = entries.filter((entry) => !own.includes(entry));
  return {
    ...now,
    refused,
    arrived,
    waiting: own.length - refused,
    tried: own.filter((entry) => entry.tried && entry.state !== 'refused').length,
    ofOthers: others.length,
    ofBuild: others.filter((entry) => isOfBuild(entry, bench)).length,
  };
};

/** The words of every entry, for a message to the desk. */
export const wordsOfAll = (entries: readonly Entry[]): string =>
  entries.map(({ pressed, typed, at }) => `${clock(at)} ${pressed}: ${typed}`).join('\n');

/** Shows at the top of the page how things are, and every entry that has not gone through. */
export function showUnsent(
  section: HTMLElement,
  made: Markup,
  entries: readonly Entry[],
  bench: Bench,
  now: Now,
  changed: () => void,
): void {
  const standing = standingOf(entries, bench, now);
  const title = headlineOf(standing);
  const from =
    bench.keptAt === undefined || now.signal || now.state !== 'open'
      ? ''
      : ` This page is from ${clock(bench.keptAt)}.`;
  const lifted = now.lifted ? ` ${LIFTED}` : '';
  // A page that stands in the place of an ended link says so itself.
  section.hidden = (title === '' && lifted === '') || (bench.state !== 'open' && entries.length === 0);
  put(section, '.unsent-title', title);
  put(section, '.unsent-hint', `${hintOf(standing)}${from}${lifted}`.trim());
  const list = section.querySelector('.unsent-list');
  if (list !== null) fillList(list, entries, (entry) => itemOf(entry, made, bench, now, changed), now.state);
  const copy = button(section, 'copy');
  const toTake = now.state !== 'open' || standing.ofOthers > 0 || standing.refused > 0;
  if (copy !== null) copy.hidden = !toTake || entries.length === 0 || !('clipboard' in navigator);
}

/** Each entry also where it will be seen once it is kept: at the end of the tape. */
export function showOnTape(made: Markup, entries: readonly Entry[], bench: Bench, state: LinkState): void {
  for (const old of document.querySelectorAll('.tape-unsent')) old.remove();
  const strip = document.querySelector('.tape-window');
  if (strip === null) return;
  const lines = entries
    .filter((entry) => entry.link === bench.link)
    .map((entry) => {
      const line = copyOf(made.line);
      line.id = `line-unsent-${entry.id}`;
      put(line, '.tape-entry > span', `${entry.pressed}: ${entry.typed}`);
      put(line, '.tape-place', placeOf(entry, bench.link, state));
      put(line, '.tape-who', clock(entry.at));
      return line;
    });
  if (lines.length === 0) return;
  const roll = strip.querySelector('ol') ?? strip.appendChild(document.createElement('ol'));
  roll.classList.add('tape-roll');
  roll.append(...lines);
}
