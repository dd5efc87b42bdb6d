import { leaveChange } from './changing.ts';
import { takeToNote } from './into-note.ts';
import { stopStands } from './known-stop.ts';
import { asItWas } from './release.ts';
import { changeEntry, type Entry } from './store.ts';

/** Something of this device asks for a sending. */
export const SEND_NOW = 'send-now';

const buttonIn = (item: Element, does: string) =>
  item.querySelector<HTMLButtonElement>(`button[data-do=${does}]`);

/** As the person says of it: under a stop the service keeps what was read before it. */
const BEFORE_STOP = ['beforeStop', 'yes'] as const;

/** What it takes to send it from here: left as it was, said to be of before the stop, or again once that is gone. */
function wayOf(entry: Entry): { readonly label: string; go(): Promise<unknown> } | undefined {
  if (entry.state === 'changing') {
    const label = asItWas(entry) === 'waiting' ? 'Send as it was' : 'Leave it as it was';
    return { label, go: () => leaveChange(entry) };
  }
  if (entry.link !== document.documentElement.dataset.link) return undefined;
  if (entry.state !== 'refused' || entry.held !== true) return undefined;
  const again = { state: 'waiting', refusal: '', held: false } as const;
  if (stopStands()) {
    const fields = [...entry.fields.filter(([name]) => name !== BEFORE_STOP[0]), BEFORE_STOP];
    return {
      label: 'It was read before the stop: send it',
      go: () => changeEntry(entry.id, { ...again, fields }),
    };
  }
  return { label: 'Send again', go: () => changeEntry(entry.id, again) };
}

/** Offers to send an entry that is held back; one that a stop refused can be put into a note meanwhile. */
export function offerSending(item: Element, entry: Entry, changed: () => void): void {
  const send = buttonIn(item, 'send');
  const way = wayOf(entry);
  if (send !== null && way !== undefined) {
    send.hidden = false;
    send.textContent = way.label;
    send.addEventListener('click', () => {
      way.go().then(() => document.dispatchEvent(new Event(SEND_NOW)), changed);
    });
  }
  const note = buttonIn(item, 'note');
  if (note === null || entry.state !== 'refused' || entry.held !== true) return;
  note.hidden = false;
  note.addEventListener('click', () => takeToNote(entry));
}
