import type { Cause } from '../../mechanics/explain-readings/types.ts';

const CAUSE_WORDS: Readonly<Record<Cause | 'no-mistake', string>> = {
  'no-mistake': 'nothing is wrong',
  'turn-too-many': 'a turn counted too many',
  'turn-too-few': 'a turn missed',
  'hand-read-backwards': 'the hand read backwards',
  'lash-left-in': 'lash left in',
  'plunger-tilted': 'the plunger leans',
  'zero-moved': 'the zero has moved',
  'wrong-card-row': 'the card’s other row was read',
  'wrong-valve': 'the other valve was read',
  'valve-lift-as-lobe': 'a valve lift stands as lobe lift',
  'card-not-this-lobe': 'the card is not this lobe’s',
  slip: 'a digit slipped',
  'unit-or-decimal': 'unit or point mixed up',
  'unlisted-fault': 'a fault not on the list',
  'passes-scatter': 'the passes scatter',
  'ratio-not-listed': 'a ratio not on the list',
};

/** What went wrong, in a table. */
export const causeText = (cause: Cause | 'no-mistake'): string => CAUSE_WORDS[cause];
