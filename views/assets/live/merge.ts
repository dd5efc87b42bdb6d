import { Idiomorph } from 'idiomorph';
import { keepFocus } from '../focus.ts';
import { rememberField } from './at-field.ts';
import { holdsFormInUse, isBegunForm, saysElseAtHand } from './begun.ts';
import { leaveAnswer, putFirstLinesFirst, showNewStop } from './first-lines.ts';

/** The stop of the service; one that was said on this phone and waits stands before the page. */
const HOLD = 'main .hold';

/** What is beside the form of a page; on a page that answers a form only this is brought up to date. */
const BESIDE = ['.tape', '.missing', HOLD, '.bar-next', '.bar-answer'] as const;

const isPresence = (node: Node) => node instanceof HTMLElement && node.dataset.presence !== undefined;

/** What waits on this phone stands within the page where a stop does; the service knows nothing of it. */
const isOfScript = (node: Node) => node instanceof HTMLElement && node.classList.contains('unsent');

function morph(here: Element, next: Element): void {
  // Only a morph of a head answers a promise worth waiting for.
  void Idiomorph.morph(here, next, {
    morphStyle: 'outerHTML',
    ignoreActiveValue: true,
    callbacks: {
      beforeNodeMorphed: (from: Node, to: Node) =>
        !isBegunForm(from) && !saysElseAtHand(from, to) && !isPresence(from),
      beforeNodeRemoved: (node: Node) => !holdsFormInUse(node) && !isOfScript(node),
      // What somebody has opened or closed stays so.
      beforeAttributeUpdated: (name: string, node: Element) =>
        !(name === 'open' && node instanceof HTMLDetailsElement),
    },
  });
}

function lines(): Map<string, Element> {
  return new Map([...document.querySelectorAll('.tape-line')].map((line) => [line.id, line]));
}

const plain = (element: Element | null) => (element?.textContent ?? '').replace(/\s+/g, ' ').trim();

/** What a line of the tape says, its figure set off. */
function entrySaid(line: Element): string {
  const value = plain(line.querySelector('.tape-value'));
  const whole = plain(line.querySelector('.tape-entry'));
  return value === '' ? whole : `${whole.slice(0, -value.length).trim()}: ${value}`;
}

/** What the new lines of the tape say, save one's own. */
function said(fresh: readonly Element[], self: string): string[] {
  // A result's line has the number of an entry with a letter: nobody entered it.
  const others = fresh.filter((line) => /^line-\d+$/.test(line.id) && line.getAttribute('data-by') !== self);
  const last = others.at(-1);
  if (last === undefined) return [];
  const what = `${last.getAttribute('data-by')}: ${entrySaid(last).replace(/\.$/, '')}.`;
  return others.length === 1 ? [what] : [`${others.length} new lines. The last, ${what}`];
}

/** Of which moment the page is now, and whether a stop stood then; also where only what is beside a form was merged. */
function takeMoment(here: HTMLElement | null, next: HTMLElement | null): void {
  for (const name of ['seq', 'stop'])
    if (here !== null && next?.dataset[name] !== undefined) here.dataset[name] = next.dataset[name];
}

/**
 * Makes the page as the fetched one, without touching what somebody has begun, opened or points at.
 * Answers what others have entered, in words.
 */
export function mergePage(html: string, self: string, besideOnly: boolean): string[] {
  const next = new DOMParser().parseFromString(html, 'text/html');
  const known = lines();
  const main = document.querySelector<HTMLElement>('main');
  const isStopNew =
    main?.dataset.stop !== 'stands' && next.querySelector<HTMLElement>('main')?.dataset.stop === 'stands';
  if (isStopNew) leaveAnswer();
  const hadFocus = document.activeElement !== document.body;
  const backToField = rememberField();
  for (const part of besideOnly ? BESIDE : ['main']) {
    const from = document.querySelector(part);
    const to = next.querySelector(part);
    if (from !== null && to !== null) morph(from, to);
    else if (from === null && to !== null) {
      // Only the stop may come to stand where nothing stood.
      if (!besideOnly || part === HOLD) document.querySelector('main')?.prepend(to);
    } else from?.remove();
  }
  putFirstLinesFirst();
  backToField();
  if (isStopNew) showNewStop();
  if (hadFocus && document.activeElement === document.body) keepFocus();
  takeMoment(document.querySelector('main'), next.querySelector('main'));
  const fresh = [...lines()].filter(([id]) => !known.has(id)).map(([, line]) => line);
  for (const line of fresh) line.classList.add('is-fresh');
  return said(fresh, self);
}
