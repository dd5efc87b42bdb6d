import { clock } from './markup.ts';
import type { Entry } from './store.ts';

const TAKEN = 'benchcall-note';
const NOTES = '/bench/steps/notes';

/** Leads to the note with the words of an entry and when it was entered; nothing is kept until it is pressed there. */
export function takeToNote({ at, typed }: Entry): void {
  sessionStorage.setItem(TAKEN, `Entered ${clock(at)}, before the stop was heard: ${typed}`);
  location.assign(NOTES);
}

/** On the page of notes: the words that were taken there. */
export function fillNote(): void {
  const taken = sessionStorage.getItem(TAKEN);
  const body = document.querySelector<HTMLTextAreaElement>('form#note textarea[name=body]');
  if (taken === null || body === null || body.value !== '') return;
  sessionStorage.removeItem(TAKEN);
  body.value = taken;
  body.scrollIntoView({ block: 'center' });
  body.focus({ preventScroll: true });
}
