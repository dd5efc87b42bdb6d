import type { Call } from './call.ts';
import { asked, described, ofPart } from './entry.ts';

export const OF_STOP: readonly Call[] = [
  {
    said: 'It hit something, I felt it',
    goal: 'verify-ratio',
    entries: [asked('something', 'has-run'), described({ engine: { cylinders: 8 } })],
    expected: { stop: [/something hit/], next: 'under-contact', never: [/turn it over/i] },
  },
  {
    said: 'It hit, and the arm is here on the bench',
    goal: 'identify',
    entries: [
      asked('something', 'apart'),
      ofPart('hole-across-trunnion', { size: '.436 in', tool: 'caliper' }),
      ofPart('hole-across-trunnion', { size: '.4365 in', tool: 'caliper' }),
    ],
    expected: { stop: [/something hit/], says: [/7\/16/], next: 'under-contact' },
  },
  {
    said: 'Nothing hit; but the pushrod of number six is bent',
    goal: 'noise-or-failure',
    entries: [
      asked('none', 'has-run'),
      described({ engine: { cylinders: 8, lifter: 'solid-roller' } }),
      {
        method: 'POST',
        path: 'build/answers',
        body: { question: 'noise-pushrod', code: 'noise-pushrod', answer: 'bent' },
      },
    ],
    expected: {
      stop: [/a pushrod is bent/],
      asks: ['contact-told-otherwise'],
      headline: /^No verdict\. Found: a pushrod is bent\. Most speaks for coils that touch/m,
      next: 'under-part-damaged',
    },
  },
];
