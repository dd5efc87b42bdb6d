import type { StepName } from '../../../shared/steps.ts';
import type { Bench } from './bench.ts';
import { isStop } from './line-up.ts';
import { clock, copyOf, type Markup, put } from './markup.ts';
import { sentenceOf } from './stop-words.ts';
import type { KnownStop } from './stops.ts';
import type { Entry } from './store.ts';

/** Steps that ask for nothing on the engine: only their lines of what is next go. Of every other the whole goes. */
const OPEN: readonly StepName[] = ['triage', 'build', 'cam', 'parts', 'notes'];

const isOpen = (step: string | undefined): boolean => OPEN.some((each) => each === step);

/**
 * A stop that the desk has not heard stops this phone all the same, and so does one that is known and that this page
 * was made before: on every page of the link a box stands on top, and what sends somebody to turn the engine is hidden.
 */
export function showOwnStop(
  box: HTMLElement,
  entries: readonly Entry[],
  bench: Bench,
  known: KnownStop | undefined,
): void {
  const stops = entries.filter(
    (entry) => isStop(entry) && (bench.link === undefined || entry.link === bench.link),
  );
  const [first] = stops;
  box.hidden = first === undefined;
  const { dataset } = document.documentElement;
  if (first === undefined && known?.stands !== true) delete dataset.ownStop;
  else dataset.ownStop = isOpen(document.querySelector<HTMLElement>('main')?.dataset.step) ? 'open' : 'shut';
  if (first === undefined) return;
  put(box, '.hold-said', stops.map(sentenceOf).join(' '));
  put(box, '.hold-when', `On this phone, ${clock(first.at)}`);
}

/** The box for it, out of what the page brings along, above everything else. */
export function ownStopBox({ stop }: Markup): HTMLElement {
  const box = copyOf(stop);
  box.hidden = true;
  return box;
}

/** The same for a stop that the desk has: nobody need be phoned about it. */
export function knownStopBox(made: Markup): HTMLElement {
  const box = ownStopBox(made);
  box.classList.add('known-stop');
  box.querySelector('[role=alert]')?.remove();
  return box;
}
