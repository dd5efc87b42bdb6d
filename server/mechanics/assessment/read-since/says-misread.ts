import { WHOSE_VALVE } from '../ratio/compared/lobe-low.ts';

/** Questions whose yes says that what was entered is not what was to be read: it is read or entered again. */
export const SAYS_MISREAD: ReadonlySet<string> = new Set([
  'turn-miscounted',
  'hand-read-backwards',
  'digits-swapped',
  'gross-lift-as-lobe',
  'unit-mixed',
  'decimal-slip',
  'lifts-exchanged',
  'pass-of-other-lift',
  'caliper-on-lobe',
  'copied-reading',
  'zero-not-returned',
  'drifting-passes',
  'pass-apart',
  'lash-left-in',
]);

/** The same of a row of the sheet, where a yes says too that it was read on the other valve. */
export const ROW_MISREAD: ReadonlySet<string> = new Set([...SAYS_MISREAD, WHOSE_VALVE]);
