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
