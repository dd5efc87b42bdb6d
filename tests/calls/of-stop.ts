import type { Call } from './call.ts';
import { asked, described, ofPart } from './entry.ts';

export const OF_STOP: readonly Call[] = [
  {
    said: 'It hit something, I felt it',
    goal: 'verify-ratio',
    entries: [asked('something', 'has-run'), described({ engine: { cylinders: 8 } })],
    expected: { stop: [/something hit/], next: /./, never: [/turn it over/i] },
  },
  {
    said: 'It hit, and the arm is here on the bench',
    goal: 'identify',
    entries: [
      asked('something', 'apart'),
      ofPart('hole-across-trunnion', { size: '.436 in', tool: 'caliper' }),
      ofPart('hole-across-trunnion', { size: '.4365 in', tool: 'caliper' }),
    ],
    expected: { stop: [/something hit/], says: [/7\/16/], next: /./ },
  },
];
