/*
 * Which reading a form keeps is picked one tap away: beside its button stands what is picked, and follows the pick at
 * once. Without a script the legend of the fold says what the page began with.
 */

/** Whatever changes a pick without a finger: a form that is emptied, filled again, or merged. */
const PICKED = ['input', 'change', 'page-merged'] as const;

const plain = (text: string | null | undefined) => (text ?? '').replace(/\s+/g, ' ').trim();

/** The choices of a form by which it is said what will be kept. */
export const picksIn = (form: HTMLFormElement): HTMLInputElement[] => {
  const name = form.querySelector<HTMLElement>('[data-keeps]')?.dataset.keeps;
  if (name === undefined) return [];
  return [...form.querySelectorAll<HTMLInputElement>(`input[type=radio][name="${CSS.escape(name)}"]`)];
};

function say(line: HTMLElement): void {
  const form = line.closest('form');
  const picks = form === null ? [] : picksIn(form);
  const picked = picks.find(({ checked }) => checked);
  const said = plain(picked?.labels?.item(0)?.textContent);
  line.hidden = said === '';
  const text = `Saves: ${said}`;
  if (line.textContent !== text) line.textContent = text;
  for (const name of form?.querySelectorAll<HTMLElement>('[data-picked]') ?? [])
    if (said !== '' && name.textContent !== said) name.textContent = said;
  const summary = picks[0]?.closest('details')?.querySelector('summary');
  if (summary && said !== '' && picks.length > 1 && summary.textContent !== `${said}; change`)
    summary.textContent = `${said}; change`;
}

/** Says in every such form what it keeps. */
export function sayPicks(): void {
  for (const line of document.querySelectorAll<HTMLElement>('[data-keeps]')) say(line);
}

/** Says what will be kept, each time something else is picked. */
export function followPicks(): void {
  for (const each of PICKED) document.addEventListener(each, sayPicks);
  sayPicks();
}
