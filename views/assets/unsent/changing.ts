import { addressOf, emptyForm, fieldsIn, fillForm, isKeeping } from './form.ts';
import { stopStands } from './known-stop.ts';
import { asItWas } from './release.ts';
import { changeEntry, type Entry } from './store.ts';

const ASKED = 'benchcall-change';

/** The entry that this page was opened to change, if any. */
export function askedToChange(): number | undefined {
  const asked = Number(sessionStorage.getItem(ASKED));
  return asked > 0 ? asked : undefined;
}

const GONE = 'The form of this entry is not on the page any more. Copy its words, then delete it.';
const UNDER_STOP =
  'While the stop stands its form is not on the page. Copy its words or put them in a note; change it after the stop.';

const nameOf = (fields: Entry['fields']) => fields.find(([name]) => name === 'form')?.[1];

function formOf({ action, fields }: Entry): HTMLFormElement | undefined {
  return [...document.forms]
    .filter(isKeeping)
    .find((form) => addressOf(form) === action && nameOf(fieldsIn(new FormData(form))) === nameOf(fields));
}

/** Opens what the form is folded into, and leads the person there. */
function leadTo(form: HTMLFormElement): void {
  for (
    let fold = form.closest('details');
    fold !== null;
    fold = fold.parentElement?.closest('details') ?? null
  )
    fold.open = true;
  form.scrollIntoView({ block: 'center' });
  form.querySelector<HTMLElement>('input[type=text], textarea')?.focus({ preventScroll: true });
}

/**
 * Puts an entry back into its form. It keeps its key: had the first sending arrived without an answer, other words
 * under the same key are refused, and nothing is kept twice.
 */
async function putBack(entry: Entry, form: HTMLFormElement): Promise<void> {
  if (!(await changeEntry(entry.id, { state: 'changing' }))) return;
  fillForm(form, entry.fields);
  form.dataset.changes = String(entry.id);
  leadTo(form);
}

/** Leaves an entry as it was; what was typed over it in its form goes. */
export async function leaveChange(entry: Entry): Promise<void> {
  for (const form of document.forms) if (form.dataset.changes === String(entry.id)) emptyForm(form);
  await changeEntry(entry.id, { state: asItWas(entry) });
}

/** Changes an entry here, or on the page where it was typed. */
export async function startChange(entry: Entry): Promise<void> {
  const form = formOf(entry);
  if (form !== undefined) return putBack(entry, form);
  sessionStorage.setItem(ASKED, String(entry.id));
  location.assign(entry.page);
}

/** On the page that `startChange` led to; answers what to tell where its form is not there. */
export async function goOnChanging(entries: readonly Entry[]): Promise<string | undefined> {
  const asked = sessionStorage.getItem(ASKED);
  sessionStorage.removeItem(ASKED);
  const entry = entries.find(({ id }) => String(id) === asked);
  if (entry === undefined) return undefined;
  const form = formOf(entry);
  if (form === undefined) return stopStands() ? UNDER_STOP : GONE;
  await putBack(entry, form);
  return undefined;
}
