import { lastInput, textInField } from '../../../call/worked/in-field.ts';
import type { Working } from '../../../records/workings/workings.ts';
import type { FormState } from '../../../web/forms/fields.ts';

/** A word joiner keeps a thread in one line. */
export const SUCH_AS = 'Such as 7/16-\u206020, 3/8-\u206024 or M8×1.25.';

export const ADJUSTER_PLACES = {
  'stud-nut': 'Nut on the stud',
  'cup-screw': 'Screw at the pushrod, on a shaft',
  'valve-end-screw': 'Screw at the valve, on a shaft',
} as const;

/** Where it is, as the engine has it; nothing is presumed of one whose mounting nobody said. */
export const placeIn = (mount: unknown): string => textInField(mount);

/** Nothing is presumed where the mounting leaves it open. */
export const placesOf = (shown: FormState): Readonly<Record<string, string>> =>
  (shown.typed.mount ?? '') === '' ? { '': 'Not said', ...ADJUSTER_PLACES } : ADJUSTER_PLACES;

/** How zero lash was found; the first one is not said. */
export const ZERO_FOUND = {
  '': 'Not said',
  'up-and-down': 'By up-and-down play',
  spin: 'By spinning the pushrod',
  feeler: 'With a feeler',
} as const;

/** The thread that was told last, for whichever sum: an engine has one kind of adjuster. */
export const knownThread = (workings: readonly Working[]): string =>
  textInField(lastInput(workings, ['adjuster', 'lifter-preload'], 'thread'));
