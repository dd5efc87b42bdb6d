import type { Call } from './call.ts';
import { arm, asked, described, type Entry, lashLine, passes, placed, setUp } from './entry.ts';

const units = (chosen: 'metric' | 'inch'): Entry => ({
  method: 'PUT',
  path: 'build/units',
  body: { units: chosen },
});

/* Shim wanted = fitted + found − wanted. Half-widths of a rule and a feeler: common practice, no published source. */
export const OF_OTHERS: readonly Call[] = [
  {
    // 14.15 / 8.84 = 1.601.
    said: 'All in millimetres: lobe eight eighty-four, lift fourteen fifteen',
    goal: 'verify-ratio',
    entries: [
      units('metric'),
      asked('none'),
      described({
        cam: {
          assumedRatio: 1.6,
          intake: { lobeLift: '8.84 mm', lash: '.45 mm' },
          exhaust: { lobeLift: '9.10 mm' },
        },
      }),
      arm('the arm', { ratioStamp: '1.6' }),
      placed('the arm', 1),
      setUp('bench', {
        armId: '$the arm',
        graduation: '.01 mm',
        perTurn: '1 mm',
        errorLimit: '.06 mm',
        lobeErrorLimit: '.06 mm',
      }),
      ...passes('bench', 'valve-lift', ['14.15 mm', '14.16 mm', '14.15 mm'], { counted: true }),
    ],
    expected: { headline: /1\.60\d .*agrees/, never: [/\d in\b/], next: 'said' },
  },
  {
    said: 'Overhead cam, buckets: point one four found, two ninety shim in it, point two wanted',
    goal: 'adjuster',
    entries: [
      units('metric'),
      asked('none', 'has-run'),
      described({ engine: { cylinders: 4, valveGear: 'bucket' } }),
      described({ cam: { intake: { lash: '.20 mm' } } }),
      lashLine(1, '.14 mm', { moment: 'found', engine: 'cold', shim: '2.90 mm' }),
    ],
    expected: { never: [/pushrod|preload/i], next: 'shim-figures' },
  },
  {
    // A bucket moves as its lobe does: 9.79 less 9.587 is the .20 of lash.
    said: 'Buckets, point two on the card, lift nine fifty-nine where the lobe is nine seventy-nine',
    goal: 'verify-ratio',
    entries: [
      units('metric'),
      asked('none'),
      described({ engine: { cylinders: 4, valveGear: 'bucket' } }),
      described({ cam: { intake: { lobeLift: '9.79 mm', lash: '.20 mm' } } }),
      setUp('bench', {
        graduation: '.01 mm',
        perTurn: '1 mm',
        errorLimit: '.03 mm',
        lobeErrorLimit: '.03 mm',
      }),
      ...passes('bench', 'valve-lift', ['9.58 mm', '9.59 mm', '9.59 mm'], { counted: true }),
    ],
    expected: {
      headline: /^Lift of 1 intake, 9\.59 mm: the card’s lobe is 9\.79 mm, 0\.20 mm more/m,
      asks: ['lash-left-in', 'valve-gear'],
      next: 'lash-left-in',
      never: [/ratio of|lifter|a 1\.\d|pushrod/i],
    },
  },
  {
    // .56 / .35 with a rule of ± .016: from 1.48 to 1.69 and more.
    said: 'No indicator: five sixty by a steel rule',
    goal: 'verify-ratio',
    entries: [
      asked('none'),
      described({ cam: { assumedRatio: 1.6, intake: { lobeLift: '.350 in' } } }),
      arm('the arm', { ratioStamp: '1.6' }),
      placed('the arm', 1),
      setUp('bench', { armId: '$the arm', tool: 'rule', errorLimit: '.016 in' }),
      ...passes('bench', 'valve-lift', ['.560 in', '.560 in', '.560 in']),
    ],
    expected: {
      words: { 'ratio:1-intake:the arm:mark': 'cannot-tell' },
      asksNot: ['turn-miscounted'],
      next: 'dial-indicator',
    },
  },
  {
    said: 'About five sixty, I would guess',
    goal: 'verify-ratio',
    entries: [
      asked('none'),
      described({ cam: { assumedRatio: 1.6, intake: { lobeLift: '.350 in' } } }),
      arm('the arm', { ratioStamp: '1.6' }),
      placed('the arm', 1),
      setUp('bench', { armId: '$the arm', tool: 'guess', errorLimit: '.060 in' }),
      ...passes('bench', 'valve-lift', ['.560 in']),
    ],
    expected: {
      words: { 'ratio:1-intake:the arm:mark': undefined },
      says: [/guess/],
      next: 'lift-with-a-tool',
    },
  },
  {
    // .002 by a caliper: common practice, no published source (seeds/part-tools.json).
    said: 'Pushrods are seven eight eighty in and eight two eighty out, calipered over the ends',
    goal: 'geometry',
    entries: [
      asked('none', 'apart'),
      described({
        pushrods: { intake: '7.880 in', exhaust: '8.280 in', over: 'ends', taken: 'caliper' },
      }),
    ],
    expected: {
      figures: { 'pushrod-length:intake': '7.880', 'pushrod-length:exhaust': '8.280' },
      says: [
        /The intake pushrod is 7\.880 in ± \.002, over its ends, by caliper\./,
        /The exhaust pushrod is 8\.280 in ± \.002/,
      ],
      next: 'tip-mark',
    },
  },
  {
    // Over its ends and to a gauge are about .017 in apart: a cam maker’s questions and answers.
    said: 'The box says seven eight fifty for the pushrods',
    goal: 'geometry',
    entries: [asked('none', 'apart'), described({ pushrods: { intake: '7.850 in', taken: 'told' } })],
    expected: {
      figures: { 'pushrod-length:intake': '7.850' },
      says: [
        /The intake pushrod is 7\.850 in, as it was told\. .*over the ends or to a gauge.*\.017 in apart/,
      ],
      never: [/7\.850 in ±/],
      next: 'tip-mark',
    },
  },
];
