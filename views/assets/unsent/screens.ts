import { hasSignal } from './signal.ts';

const NEEDS_SIGNAL =
  'The next part comes from the desk, and there is no signal. What you typed stays here; press again when the signal is back.';

/** A part of a form that only leads to the next one stays where it is while that can't come. */
export function holdScreens(say: (form: HTMLFormElement, text: string) => void): void {
  document.addEventListener('submit', (event) => {
    const form = event.target;
    if (!(form instanceof HTMLFormElement) || form.method !== 'get' || hasSignal()) return;
    event.preventDefault();
    say(form, NEEDS_SIGNAL);
  });
}
