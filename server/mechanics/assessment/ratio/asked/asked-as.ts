import type { Cause } from '../../../explain-readings/types.ts';

/** Causes that the questions of a set-up ask about under their own word. */
const ASKED_AS: Readonly<Partial<Record<Cause, readonly string[]>>> = {
  'turn-too-many': ['turn-miscounted', 'count-does-not-fit'],
  'turn-too-few': ['turn-miscounted', 'count-does-not-fit'],
  'hand-read-backwards': ['hand-read-backwards', 'count-does-not-fit'],
  'lash-left-in': ['lash-left-in', 'lash-not-said', 'lash-setting-not-said'],
  'plunger-tilted': ['plunger-tilted', 'alignment-not-said'],
  'zero-moved': ['zero-not-returned'],
  'wrong-card-row': ['valve-swapped'],
  'wrong-valve': ['valve-swapped'],
  'valve-lift-as-lobe': ['gross-lift-as-lobe'],
  slip: ['digits-swapped', 'drifting-passes', 'lifts-exchanged', 'pass-of-other-lift', 'gross-lift-as-lobe'],
  'unit-or-decimal': ['unit-mixed', 'decimal-slip'],
};

export const isAskedAs = (cause: Cause, put: ReadonlySet<string>): boolean =>
  (ASKED_AS[cause] ?? []).some((code) => put.has(code));

/** What is ruled out where a question of a set-up was looked at and does not fit; counts go by their passes. */
const RULES_OUT: Readonly<Record<string, readonly Cause[]>> = {
  'lash-left-in': ['lash-left-in'],
  'plunger-tilted': ['plunger-tilted'],
  'valve-swapped': ['wrong-card-row', 'wrong-valve'],
  'gross-lift-as-lobe': ['valve-lift-as-lobe'],
  'unit-mixed': ['unit-or-decimal'],
  'decimal-slip': ['unit-or-decimal'],
};

export const ruledOutBy = (code: string): readonly Cause[] => RULES_OUT[code] ?? [];
