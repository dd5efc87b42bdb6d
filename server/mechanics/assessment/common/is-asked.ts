import type { AssessedQuestion } from '../assessment.ts';

/** Doubts that are settled by asking, looking or entering again: nothing is turned for them. */
const BY_ASKING: ReadonlySet<string> = new Set([
  'spring-not-said',
  'lifter-not-said',
  'lash-not-said',
  'lash-setting-not-said',
  'alignment-not-said',
  'rests-on-not-said',
  'stated-not-read',
  'decimal-slip',
  'digits-swapped',
  'unit-mixed',
  'card-ratio',
  'card-against-itself',
  'lash-formula',
  'springs-swapped',
  'slip',
  'unit-or-decimal',
  'lobe-worn',
  'gap-short',
  'mark-at-the-edge',
  'rings-against-width',
  'same-text-twice',
  'different-numbers',
  'two-sizes',
  'hole-between-sizes',
  'size-impossible',
  'mil-said',
  'sizes-swapped',
  'reading-stands-alone',
  'crests-counted',
  'stud-against-hole',
  'stamp-without-dot',
  'lifts-exchanged',
  'pass-of-other-lift',
  'lifter-of-engine',
]);

export const isAsked = ({ code, byLooking }: Pick<AssessedQuestion, 'code' | 'byLooking'>): boolean =>
  byLooking === true || BY_ASKING.has(code);
