import { Idiomorph } from 'idiomorph';

/**
 * Keeps a page of a call as the other side sees it. The stream says only that something happened; the page
 * itself is fetched again and merged, so that what is shown is what a reload would show. Fields that somebody
 * is typing in, or has typed in, are never touched.
 */
type Control = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement;

function isControl(node: Node): node is Control {
  return (
    node instanceof HTMLInputElement ||
    node instanceof HTMLTextAreaElement ||
    node instanceof HTMLSelectElement
  );
}

function isTouched(control: Control): boolean {
  if (control instanceof HTMLSelectElement) {
    return (
      [...control.options].some((option) => option.selected !== option.defaultSelected) &&
      control.dataset.touched === 'yes'
    );
  }
  if (control instanceof HTMLInputElement && (control.type === 'radio' || control.type === 'checkbox')) {
    return control.checked !== control.defaultChecked;
  }
  return control.value !== control.defaultValue;
}

/** A form that somebody has begun is left alone whole: its fields belong together, and its key to its content. */
function isBegun(form: HTMLFormElement): boolean {
  if (
    form.contains(document.activeElement) &&
    document.activeElement !== null &&
    isControl(document.activeElement)
  )
    return true;
  return [...form.elements].some(
    (element) => isControl(element) && element.type !== 'hidden' && isTouched(element),
  );
}

function merge(html: string): void {
  const next = new DOMParser().parseFromString(html, 'text/html').querySelector('main');
  const here = document.querySelector('main');
  if (next === null || here === null) return;
  const known = new Set([...here.querySelectorAll('.tape-line')].map((line) => line.id));
  const open = new Set([...here.querySelectorAll('details[open]')].map((each) => each.id || each.className));
  Idiomorph.morph(here, next, {
    morphStyle: 'innerHTML',
    ignoreActiveValue: true,
    callbacks: {
      beforeNodeMorphed: (from: Node) => !(from instanceof HTMLFormElement && isBegun(from)),
      beforeNodeRemoved: (node: Node) => !(node instanceof HTMLFormElement && isBegun(node)),
    },
  });
  for (const each of here.querySelectorAll('details'))
    if (open.has(each.id || each.className)) each.open = true;
  for (const line of here.querySelectorAll('.tape-line')) {
    if (!known.has(line.id)) line.classList.add('is-fresh');
  }
}

function say(text: string): void {
  const status = document.querySelector('#status');
  if (status !== null) status.textContent = text;
}

interface Present {
  readonly who: string;
  readonly kind: string;
  readonly step: string;
}

function showPresence(main: HTMLElement, people: readonly Present[]): void {
  const place =
    main.querySelector<HTMLElement>('[data-presence]') ??
    document.querySelector<HTMLElement>('[data-presence]');
  if (place === null) return;
  const base = main.dataset.steps ?? '';
  place.replaceChildren(
    ...people.map((person) => {
      const item = document.createElement('span');
      item.className = 'presence-person';
      item.append(`${person.who} is here`);
      if (person.step !== '' && person.step !== main.dataset.step && base !== '') {
        const link = document.createElement('a');
        link.href = `${base}/${person.step}`;
        link.textContent = `go to their step, ${person.step}`;
        item.append(': ', link);
      }
      return item;
    }),
  );
}

function parsed(data: unknown): unknown {
  return typeof data === 'string' ? JSON.parse(data) : undefined;
}

function isPresent(value: unknown): value is Present {
  return typeof value === 'object' && value !== null && 'who' in value && 'kind' in value && 'step' in value;
}

/** Opens the stream that the page names. */
export function keepLive(): void {
  const main = document.querySelector<HTMLElement>('main[data-live]');
  const address = main?.dataset.live;
  if (main === null || address === undefined) return;
  let fetching = false;
  let again = false;
  let others: string[] = [];

  async function refresh(): Promise<void> {
    if (fetching) {
      again = true;
      return;
    }
    fetching = true;
    try {
      const response = await fetch(location.href, { headers: { accept: 'text/html' }, cache: 'no-store' });
      if (response.ok && new URL(response.url).pathname === location.pathname) merge(await response.text());
      if (others.length > 0) say(others.join('. '));
      others = [];
    } catch {
      say('The line is down. What you type stays here; the page catches up by itself.');
    } finally {
      fetching = false;
      if (again) {
        again = false;
        void refresh();
      }
    }
  }

  const source = new EventSource(address);
  const self = main.dataset.self ?? '';
  source.addEventListener('entry', (event) => {
    const entry = parsed(event.data);
    if (typeof entry !== 'object' || entry === null) return;
    const by = 'by' in entry ? String(entry.by) : '';
    if (by !== self) others = [`${by} has entered something`];
    void refresh();
  });
  source.addEventListener('presence', (event) => {
    const people = parsed(event.data);
    if (Array.isArray(people)) showPresence(main, people.filter(isPresent));
  });
  let wasDown = false;
  source.addEventListener('error', () => {
    if (!wasDown) say('The line is down. What you type stays here; the page catches up by itself.');
    wasDown = true;
  });
  source.addEventListener('open', () => {
    if (wasDown) {
      say('The line is back.');
      void refresh();
    }
    wasDown = false;
  });
  document.addEventListener('input', (event) => {
    if (event.target instanceof HTMLSelectElement) event.target.dataset.touched = 'yes';
  });
}
