import { dropDraft, keepDraft } from './drafts.ts';
import { addressOf, dataOf, emptyForNext, fieldsIn, isKeeping, renewKey } from './form.ts';
import { isStop } from './line-up.ts';
import { type Outcome, post } from './post.ts';
import { sendAll } from './send-all.ts';
import { addEntry, allEntries, changeEntry, deleteEntry, type Entry } from './store.ts';
import { STOP_SAID, tellOthers } from './tell.ts';
import { nameOf, typedIn } from './words.ts';

/** Somebody who has pressed a button waits this long to see what became of it; then the entry waits alone. */
const PATIENCE_MS = 8_000;

/** Forms that the browser is to send by itself. */
const passing = new WeakSet<HTMLFormElement>();

function passOn(form: HTMLFormElement, pressed: HTMLElement | null): void {
  passing.add(form);
  form.requestSubmit(pressed);
  passing.delete(form);
}

function goTo(address: string): void {
  const to = new URL(address, location.href);
  const isHere = to.pathname + to.search === location.pathname + location.search;
  location.assign(to);
  // To another place on the same page a browser only scrolls.
  if (isHere && to.hash !== '') location.reload();
}

const soon = <T>(work: Promise<T>): Promise<T | undefined> =>
  Promise.race([work, new Promise<undefined>((done) => setTimeout(done, PATIENCE_MS))]);

/** An address that can be fetched again: where a page answers a form, that of its step. */
const ownPage = () =>
  document.querySelector<HTMLElement>('main')?.dataset.beside ?? location.pathname + location.search;

/** On this device before it is sent; one that was changed keeps its place in the line. */
async function keep(form: HTMLFormElement, link: string, pressed: HTMLElement | null): Promise<Entry> {
  const { build } = document.documentElement.dataset;
  const entry = {
    link,
    ...(build === undefined ? {} : { build }),
    action: addressOf(form),
    page: ownPage(),
    fields: fieldsIn(dataOf(form, pressed)),
    pressed: nameOf(form, pressed ?? form.querySelector('button')),
    typed: typedIn(form),
    at: Date.now(),
    state: 'waiting',
    tried: false,
  } as const;
  const id = Number(form.dataset.changes);
  if (id > 0) {
    const { tried: _, ...change } = entry;
    if (await changeEntry(id, { ...change, refusal: '', arrived: false })) return { ...entry, id };
  }
  return addEntry(entry);
}

/** Beside the button at once, while the line may hang: whoever pressed need not press again. */
function saySending(form: HTMLFormElement): HTMLElement {
  for (const old of form.querySelectorAll('.form-told, .form-sending')) old.remove();
  const said = document.createElement('p');
  said.className = 'form-sending small';
  said.setAttribute('role', 'status');
  said.textContent = 'Sending. No need to press again.';
  form.querySelector('.form-buttons')?.after(said);
  return said;
}

/** A file is not kept here: it stays chosen in its form until it has gone through. */
async function sendFile(form: HTMLFormElement, link: string, pressed: HTMLElement | null): Promise<Outcome> {
  const outcome = await post(addressOf(form), link, dataOf(form, pressed));
  if (outcome.kind === 'kept') goTo(outcome.location);
  else if (outcome.kind === 'refused') passOn(form, pressed);
  return outcome;
}

/** What another page of this browser has made of it, where that one was sending. */
async function elsewhere({ id, page }: Entry): Promise<Outcome | undefined> {
  const left = (await allEntries()).find((entry) => entry.id === id);
  return left === undefined ? { kind: 'kept', location: page } : undefined;
}

/** What is in a form, its key aside: another press of the same is the same entry, anything else is the next one. */
const filledIn = (form: HTMLFormElement, pressed: HTMLElement | null): string =>
  JSON.stringify(fieldsIn(dataOf(form, pressed)).filter(([name]) => name !== 'key'));

async function sendEntry(form: HTMLFormElement, link: string, pressed: HTMLElement | null) {
  const own = filledIn(form, pressed);
  const entry = await keep(form, link, pressed);
  // What is entered while this one is on its way is an entry of its own.
  renewKey(form);
  // From here on it is kept as an entry.
  dropDraft(link, form);
  tellOthers();
  if (isStop(entry)) document.dispatchEvent(new Event(STOP_SAID));
  const sent = await soon(sendAll(link));
  const outcome = sent?.outcomes.get(entry.id) ?? sent?.stopped ?? (await elsewhere(entry));
  if (outcome?.kind === 'kept') goTo(outcome.location);
  else if (outcome?.kind === 'refused') {
    // The page that comes shows the faults at their fields; until it is here the entry is not let go.
    await changeEntry(entry.id, { state: 'handed' });
    passOn(form, pressed);
  } else if (outcome?.kind === 'shown') {
    await deleteEntry(entry.id);
    passOn(form, pressed);
  } else {
    if (filledIn(form, pressed) === own) {
      emptyForNext(form);
      // Opened again, the page has the pick that stays.
      keepDraft(link, form);
    }
    // As after a sending that went through, what became of it is the first thing seen.
    scrollTo(0, 0);
  }
  return outcome;
}

/**
 * Sends the forms of a builder's page by script, so that nothing typed is lost where the signal is. What was kept
 * leads on as the form itself would; what was refused is left to the form itself.
 */
export function sendByScript(
  link: string,
  done: (outcome: Outcome | undefined, file: boolean, form: HTMLFormElement) => void,
): void {
  document.addEventListener('submit', (event) => {
    const form = event.target;
    if (!(form instanceof HTMLFormElement) || !isKeeping(form) || passing.has(form)) return;
    event.preventDefault();
    const { submitter } = event;
    const own = filledIn(form, submitter);
    // A second press while the first is on its way.
    if (form.dataset.sending === own) return;
    form.dataset.sending = own;
    const said = saySending(form);
    const file = form.enctype === 'multipart/form-data';
    (file ? sendFile(form, link, submitter) : sendEntry(form, link, submitter))
      .then(
        (outcome) => done(outcome, file, form),
        // A browser that keeps nothing, in a private window for one: the form goes as it would without a script.
        () => passOn(form, submitter),
      )
      .finally(() => {
        said.remove();
        if (form.dataset.sending === own) delete form.dataset.sending;
      });
  });
}
