import { picksIn, sayPicks } from '../keeps.ts';
import { addressOf } from './form.ts';
import type { Entry } from './store.ts';

/*
 * The service numbers a pass when it keeps it. While passes wait on this phone the page would name each of them by the
 * same number: those of the same set-up and kind that wait are counted on here.
 */

const PASS = /\bpass (\d+)$/;

const entryOf = (fields: Entry['fields'], name: string) => fields.find(([each]) => each === name)?.[1];

/** How many of what this pick keeps wait, of the same set-up. */
function waitingOf(form: HTMLFormElement, pick: HTMLInputElement, entries: readonly Entry[]): number {
  const own = new Map([...new FormData(form)]);
  const address = addressOf(form);
  return entries.filter(
    ({ id, action, fields, state }) =>
      action === address &&
      (state === 'waiting' || (state === 'changing' && String(id) !== form.dataset.changes)) &&
      entryOf(fields, pick.name) === pick.value &&
      entryOf(fields, 'setUpId') === own.get('setUpId'),
  ).length;
}

function numberPick(form: HTMLFormElement, pick: HTMLInputElement, entries: readonly Entry[]): void {
  const words = pick.labels?.item(0)?.querySelector('span');
  const said = words?.textContent ?? '';
  const first = words?.dataset.pass ?? PASS.exec(said)?.[1];
  if (!words || first === undefined) return;
  words.dataset.pass = first;
  const text = said.replace(PASS, `pass ${Number(first) + waitingOf(form, pick, entries)}`);
  if (text !== said) words.textContent = text;
}

/** Each pick of a form that keeps passes says the number that the next one will most likely get. */
export function numberPasses(entries: readonly Entry[]): void {
  for (const form of document.forms) for (const pick of picksIn(form)) numberPick(form, pick, entries);
  sayPicks();
}

/** A merge brings the words of the service again: what was counted on here counts from those. */
export function forgetNumbers(): void {
  for (const words of document.querySelectorAll<HTMLElement>('[data-pass]')) delete words.dataset.pass;
}
