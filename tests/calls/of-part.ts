import type { Call } from './call.ts';
import { arm, asked, ofPart } from './entry.ts';

const START = [asked('none')];

/* Threads: ASME B1.1 and ISO 261 sizes; the bands of a hole and of a tool: common practice, no published source. */
export const OF_PART: readonly Call[] = [
  {
    said: 'Hole’s four thirty-six, and four thirty-six and a half across: is that three-eighths?',
    goal: 'identify',
    entries: [
      ...START,
      ofPart('hole-across-trunnion', { size: '.436 in', tool: 'caliper' }),
      ofPart('hole-across-trunnion', { size: '.4365 in', tool: 'caliper', place: 'turned 90 degrees' }),
    ],
    expected: { says: [/7\/16/], never: [/agrees with 3\/8/], next: 'width' },
  },
  {
    // 36.9 in of pivot to tip: millimetres.
    said: 'Thirty-six point nine from the pivot to the tip, inches I think',
    goal: 'identify',
    entries: [...START, ofPart('pivot-to-tip', { size: '36.9 in', tool: 'rule' })],
    expected: { asks: ['size-impossible'], next: 'size-impossible' },
  },
  {
    // Ten threads over 14.1 mm: 1.411 mm each, 18 to the inch.
    said: 'The stud came out: ten threads in fourteen point one',
    goal: 'identify',
    entries: [...START, ofPart('stud-pitch', { size: '14.1 mm', count: 10, tool: 'rule' })],
    expected: { says: [/pitch of the thread that came out is that of 5\/16-18/], next: 'hole' },
  },
  {
    // 1.460 / .912 = 1.601: a bench estimate.
    said: 'Fourteen sixty to the tip, nine twelve to the cup',
    goal: 'identify',
    entries: [
      ...START,
      ofPart('pivot-to-tip', { size: '1.460 in', tool: 'caliper' }),
      ofPart('pivot-to-cup', { size: '.912 in', tool: 'caliper' }),
    ],
    expected: {
      figures: { 'part:bench-ratio': '1.601' },
      says: [/about 1\.60.*bench estimate/],
      next: 'hole',
    },
  },
  {
    said: 'It says one six on the side, four seven underneath, and the box says one seven',
    goal: 'identify',
    entries: [
      ...START,
      arm('the arm', { ratioStamp: '1.6', otherNumber: '47', boxLabel: 'one seven' }),
      ofPart('roller-diameter', { size: '.500 in', tool: 'guess' }),
    ],
    expected: { next: 'hole' },
  },
  {
    // 1.25 mm and 1.06 mm (24 to the inch) cannot both be right; their middle, 22 to the inch, is no thread.
    said: 'Ten threads in twelve and a half, no, in ten point six millimetres',
    goal: 'identify',
    entries: [
      ...START,
      ofPart('stud-pitch', { size: '12.5 mm', count: 10, tool: 'rule' }),
      ofPart('stud-pitch', { size: '10.6 mm', count: 10, tool: 'rule' }),
    ],
    expected: { asks: ['two-sizes'], next: 'two-sizes', never: [/22 to the inch/] },
  },
  {
    // Outside every band that agrees: a drill shank tells, and no stud is named before.
    said: 'The hole is three ninety-five both ways',
    goal: 'identify',
    entries: [
      ...START,
      ofPart('hole-across-trunnion', { size: '.395 in', tool: 'caliper' }),
      ofPart('hole-across-trunnion', { size: '.3955 in', tool: 'caliper' }),
    ],
    expected: {
      asks: ['hole-between-sizes'],
      headline: /between 3\/8 and 7\/16: try the stud that came out, or a drill shank/,
      next: 'hole-between-sizes',
    },
  },
  {
    // No stud goes through .498; rollers are made from .40 to .60, and .436 is the usual reading of a 7/16 hole.
    said: 'Hole four ninety-eight, roller four thirty-six',
    goal: 'identify',
    entries: [
      ...START,
      ofPart('hole-across-trunnion', { size: '.498 in', tool: 'caliper' }),
      ofPart('roller-diameter', { size: '.436 in', tool: 'caliper' }),
    ],
    expected: { asks: ['sizes-swapped'], asksNot: ['hole-between-sizes'], next: 'sizes-swapped' },
  },
  {
    // Nine gaps over .450 are 20 to the inch; ten are 22.2, which is no thread.
    said: 'Ten threads over four fifty',
    goal: 'identify',
    entries: [
      ...START,
      ofPart('hole-across-trunnion', { size: '.4355 in', tool: 'caliper' }),
      ofPart('stud-pitch', { size: '.45 in', count: 10, tool: 'rule' }),
    ],
    expected: {
      headline: /The pitch, as it was counted, is that of no thread of rockers\. Count from one crest/,
      asks: ['crests-counted'],
      next: 'crests-counted',
    },
  },
  {
    // Half an inch is ten threads of 20 to the inch, and no pitch of one.
    said: 'The threads are half an inch',
    goal: 'identify',
    entries: [...START, ofPart('stud-pitch', { size: '.5 in', tool: 'rule' })],
    expected: { asks: ['size-impossible'], says: [/over how many threads/], next: 'size-impossible' },
  },
  {
    // .374 over the thread and ten in .4167, 24 to the inch: 3/8-24, in a hole for 7/16.
    said: 'The stud is three-eighths fine, and the hole four thirty-six',
    goal: 'identify',
    entries: [
      ...START,
      ofPart('hole-across-trunnion', { size: '.4355 in', tool: 'caliper' }),
      ofPart('hole-across-trunnion', { size: '.436 in', tool: 'caliper', place: 'turned 90 degrees' }),
      ofPart('stud-diameter', { size: '.374 in', tool: 'caliper' }),
      ofPart('stud-pitch', { size: '.4167 in', count: 10, tool: 'caliper' }),
    ],
    expected: {
      headline: /is 3\/8-24 UNF; the hole does not go with it/,
      asks: ['stud-against-hole'],
      next: 'stud-against-hole',
    },
  },
  {
    // 1.480 / .872 = 1.697, and 1.480 / .925 = 1.600: one arm, and it is one of them.
    said: 'Eight seventy-two to the cup; no, now I get nine twenty-five',
    goal: 'identify',
    entries: [
      ...START,
      ofPart('pivot-to-tip', { size: '1.480 in', tool: 'caliper' }),
      ofPart('pivot-to-cup', { size: '.872 in', tool: 'caliper' }),
      ofPart('pivot-to-cup', { size: '.925 in', tool: 'caliper', place: 'again' }),
      ofPart('hole-across-trunnion', { size: '.3735 in', tool: 'caliper' }),
      ofPart('hole-across-trunnion', { size: '.374 in', tool: 'caliper' }),
    ],
    expected: { asks: ['two-sizes'], never: [/stands first/], next: 'two-sizes' },
  },
  {
    // 16 over .75 is 21.3 to the inch and no thread; 15 over it is 20, as the gauge says.
    said: 'Sixteen threads in three quarters, and the gauge says twenty',
    goal: 'identify',
    entries: [
      ...START,
      ofPart('stud-pitch', { size: '.75 in', count: 16, tool: 'caliper' }),
      ofPart('stud-pitch', { size: '20 tpi', tool: 'thread-gauge' }),
    ],
    expected: {
      asks: ['crests-counted'],
      asksNot: ['two-sizes'],
      headline: /pitch of the thread that came out is that of .*7\/16-20 UNF/,
      next: 'crests-counted',
    },
  },
];
