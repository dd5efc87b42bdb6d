import type { Explained } from '../../assessment/ratio/explain.ts';

export type Action = NonNullable<Explained['nextReading']>['action'];

/** Each action as the sentence that asks for it. */
export const ASK: Readonly<Record<Action, string>> = {
  'read-back': 'Read the entries back: which valve is it, and is it lobe lift or valve lift?',
  'one-more-pass': 'Take one more pass, small hand first, and say which way the hand ran.',
  'lash-to-zero': 'Take the lash up to zero and read again.',
  'align-plunger': 'Set the plunger parallel to the stem, seen from front and side, and read again.',
  'valve-lift-at-.200': 'Turn to .200 in of lobe lift and read the valve there.',
  'lobe-at-lifter': 'Read the lobe lift at the lifter body.',
  'light-spring-solid-lifter':
    'Fit a light checking spring and a solid lifter, set the dial up again, and read.',
  'rocker-on-another-valve': 'Move this rocker to another valve and read it there.',
};

const CAUSE_WORDS: Readonly<Record<string, string>> = {
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

export const causeText = (cause: string): string => CAUSE_WORDS[cause] ?? cause;
