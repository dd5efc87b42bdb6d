import type { StepName } from '../../../shared/steps.ts';
import type { Bench } from './bench.ts';
import { isStop } from './line-up.ts';
import { clock, copyOf, type Markup, put } from './markup.ts';
import type { Entry } from './store.ts';

/** Steps that ask for nothing on the engine: only their lines of what is next go. Of every other the whole goes. */
const OPEN: readonly StepName[] = ['triage', 'build', 'cam', 'parts', 'notes'];

const isOpen = (step: string | undefined): boolean => OPEN.some((each) => each === step);

/** What the person typed with the stop; it may be left empty. */
const reasonOf = ({ fields }: Entry): string => fields.find(([name]) => name === 'reason')?.[1].trim() ?? '';

function sentenceOf(stop: Entry): string {
  const reason = reasonOf(stop);
  return reason === '' ? 'You said stop.' : `You said stop: “${reason}”`;
}

/**
 * A stop that the desk has not heard stops this phone all the same: on every page of the link its box stands on top,
 * and what sends somebody to turn the engine is hidden.
 */
export function showOwnStop(box: HTMLElement, entries: readonly Entry[], bench: Bench): void {
  const stops = entries.filter(
    (entry) => isStop(entry) && (bench.link === undefined || entry.link === bench.link),
  );
  const [first] = stops;
  box.hidden = first === undefined;
  const { documentElement } = document;
  if (first === undefined) {
    delete documentElement.dataset.ownStop;
    return;
  }
  const step = document.querySelector<HTMLElement>('main')?.dataset.step;
  documentElement.dataset.ownStop = isOpen(step) ? 'open' : 'shut';
  put(box, '.hold-said', stops.map(sentenceOf).join(' '));
  put(box, '.hold-when', `On this phone, ${clock(first.at)}`);
}

/** The box for it, out of what the page brings along, above everything else. */
export function ownStopBox({ stop }: Markup): HTMLElement {
  const box = copyOf(stop);
  box.hidden = true;
  return box;
}
