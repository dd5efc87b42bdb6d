import type { Call } from './call.ts';
import { asked, described, kept, lashLine, marked } from './entry.ts';

const START = [
  asked('none', 'has-run'),
  described({ engine: { cylinders: 8, lifter: 'solid-flat', rockerMounting: 'stud' } }),
];

const NUT = { thread: '7/16-20', mount: 'stud-nut', ratio: 1.6 };

/* A gap that grew over .004 on one valve, and again after a reset, is a stop: common practice, no published source. */
export const OF_SETTING: readonly Call[] = [
  {
    said: 'Number six ticks, I’ve set it three times',
    goal: 'noise-or-failure',
    entries: [
      ...START,
      lashLine(6, '.018 in', { moment: 'set', engine: 'hot', readOn: '2026-03-01' }),
      lashLine(6, '.026 in', { moment: 'found', engine: 'hot', nut: 'held', readOn: '2026-03-08' }),
      lashLine(6, '.018 in', { moment: 'set', engine: 'hot', readOn: '2026-03-09' }),
      lashLine(6, '.025 in', { moment: 'found', engine: 'hot', nut: 'held', readOn: '2026-03-15' }),
    ],
    expected: { stop: [/grew|grow/], next: 'under-lash-grew-again' },
  },
  {
    said: 'It opened up eight, and the nut had turned',
    goal: 'noise-or-failure',
    entries: [
      ...START,
      lashLine(6, '.018 in', { moment: 'set', engine: 'hot', readOn: '2026-03-01' }),
      lashLine(6, '.026 in', { moment: 'found', engine: 'hot', nut: 'moved', readOn: '2026-03-08' }),
    ],
    expected: { says: [/nut|lock/], next: 'noise-signs' },
  },
  {
    said: 'The stripe sits thirty to the exhaust side, sixty wide',
    goal: 'geometry',
    entries: [
      ...START,
      marked(1, { width: '.060 in', side: 'exhaust', off: '.030 in', found: 'fresh-ink', spring: 'light' }),
    ],
    expected: { says: [/too long/], next: 'least-sweep' },
  },
  {
    // 2 × .050 × (1 + 1/1.6) = .1625 into .150: .0125 past, .020 at the valve.
    said: 'I gave it two full turns past zero, and now it cranks funny',
    goal: 'adjuster',
    entries: [
      asked('none', 'has-run'),
      described({ engine: { cylinders: 8, lifter: 'hydraulic-roller', rockerMounting: 'stud' } }),
      kept('lifter-preload', {
        turns: 2,
        thread: '7/16-20',
        mount: 'stud-nut',
        ratio: 1.6,
        liftersTravel: '.150 in',
      }),
    ],
    expected: {
      stop: [/Do not turn it: .*\.013 in past the plunger’s bottom/],
      headline: /\.013 in past the bottom of the plunger/,
      asks: ['plunger-bottomed'],
      next: 'under-plunger-bottomed',
    },
  },
  {
    // (62 + 148)/2 = 105; the stop 1° too much after TDC: 104 if the pointer was left.
    said: 'Degreed it at sixty-two and one forty-eight, the stop reads thirty-seven and thirty-five',
    goal: 'cam-timing',
    entries: [
      asked('none'),
      kept('centreline', { before: '62 deg', after: '148 deg', card: '108 deg', side: 'intake' }),
      kept('top-dead-centre', { stopReadings: ['37 deg', '35 deg'] }),
    ],
    expected: {
      headline:
        /peaks 105° after TDC.*If it was left so, the peak is 104° after TDC\. No word against the card before that\. If it peaks 104° after TDC, it is 4° advanced/,
      asks: ['pointer-out'],
      // Shifted 1 it reads 36 and 36; the wrong way it would read 38 and 34.
      says: [
        /shift the pointer 1°, held against the stop after TDC from 3\d° to 36°, until it reads 36° on both sides of the stop/i,
      ],
      never: [/toward the side (after|before)/],
      next: 'pointer-out',
    },
  },
  {
    // 2.30 + .05 − .15 = 2.20; what no gap wants cannot be worked out: it may be held open by any amount.
    said: 'Number two has no gap at all; I have a two-twenty and a two-twenty-five here',
    goal: 'adjuster',
    entries: [
      asked('none', 'apart'),
      described({
        engine: {
          cylinders: 4,
          valveGear: 'bucket',
          lifter: 'solid-flat',
          shimStock: '2.20 mm, 2.25 mm',
        },
        cam: { lashAt: 'cold', intake: { lash: '.15 mm' } },
      }),
      lashLine(2, '0 mm', { engine: 'cold', shim: '2.30 mm' }),
      lashLine(1, '.05 mm', { engine: 'cold', shim: '2.30 mm' }),
    ],
    expected: {
      headline: /No gap found at 2 intake/,
      says: [/Do not run it: 2 intake has no gap/, /Shims to fit: 1 intake 2\.20 mm/],
      next: 'thinner-shim',
      never: [/2\.15 mm/],
    },
  },
  {
    // 2.60 + .25 − .15 = 2.70 twice, and one piece of it: the second wants one that is to be had.
    said: 'Stock is two comma six five, two comma seven; the two seven went into number one',
    goal: 'adjuster',
    entries: [
      asked('none', 'apart'),
      described({
        engine: {
          cylinders: 4,
          valveGear: 'bucket',
          lifter: 'solid-flat',
          shimStock: '2,65 mm; 2,70 mm',
        },
        cam: { lashAt: 'cold', intake: { lash: '0,15 mm' } },
      }),
      { name: 'found', ...lashLine(1, '0,25 mm', { engine: 'cold', shim: '2,60 mm', readOn: '2026-03-01' }) },
      {
        ...lashLine(1, '0,15 mm', { moment: 'set', engine: 'cold', shim: '2,70 mm', readOn: '2026-03-02' }),
        after: ['found'],
      },
      lashLine(2, '0,25 mm', { engine: 'cold', shim: '2,60 mm' }),
    ],
    expected: {
      headline: /Shims to order: 2 intake 2\.70 mm\./,
      next: 'said',
      never: [/2\.70 mm from stock/],
    },
  },
  {
    // Two turns stop it whatever was told before: 2 × .08125 = .1625 into .150. Nothing is set after that.
    said: 'Half a turn; no, it was two turns I gave it',
    goal: 'adjuster',
    entries: [
      asked('none', 'has-run'),
      described({ engine: { cylinders: 8, lifter: 'hydraulic-roller', rockerMounting: 'stud' } }),
      {
        name: 'half a turn',
        ...kept('lifter-preload', { ...NUT, turns: 0.5, liftersTravel: '.150 in' }),
      },
      {
        ...kept('lifter-preload', { ...NUT, turns: 2, liftersTravel: '.150 in' }),
        after: ['half a turn'],
      },
    ],
    expected: {
      stop: [/\.013 in past the plunger’s bottom/],
      asks: ['plunger-bottomed'],
      headline: /\.013 in past the bottom of the plunger/,
      next: 'under-plunger-bottomed',
    },
  },
  {
    // .25 in is ten times what is usual, and the size of a 0.25 mm feeler: common practice, no published source.
    said: 'Number four is at point two five, and the card says ten thou',
    goal: 'adjuster',
    entries: [
      ...START,
      described({ cam: { intake: { lash: '.010 in' }, lashAt: 'cold' } }),
      lashLine(4, '.25 in', { engine: 'cold' }),
    ],
    expected: {
      asks: ['lash-unlikely'],
      headline: /No lash of 4 intake counts yet\. Is the lash of 4 intake really \.250 in\?/,
      next: 'lash-unlikely',
    },
  },
];
