import type { Call } from './call.ts';
import { arm, asked, described, onSheet, passes, placed, setUp } from './entry.ts';

const START = [
  asked('none', 'has-run'),
  described({ engine: { cylinders: 8, lifter: 'solid-flat', rockerMounting: 'stud' } }),
  described({ cam: { assumedRatio: 1.5, intake: { lobeLift: '.390 in', lash: '.018 in' } } }),
];
const planned = (ratio: number, more: object = {}) =>
  described({ rockers: { plannedRatio: ratio, ...more } });

/*
 * net lift = lobe × ratio − lash; room to bind = installed − net lift − solid; piston to valve less lobe there × change
 * of ratio; limits of the playbook (bind .060, seal .050, pistons .080 and .100): common practice, no published source.
 */
export const OF_CHANGE: readonly Call[] = [
  {
    // .390 × 1.6 − .018 = .606; 1.800 − .606 − 1.150 = .044.
    said: 'One five to one six, springs are fine, right?',
    goal: 'choose-ratio',
    entries: [
      ...START,
      planned(1.6),
      described({ springs: { installedHeight: '1.800 in', solidHeight: '1.150 in' } }),
    ],
    expected: {
      words: { 'gap:coil-bind:intake': 'short' },
      says: [/\.044 in/, /Don’t fit/],
      next: 'do-not-fit',
    },
  },
  {
    // 1.900 − .606 − 1.150 = .144.
    said: 'And at one point nine installed?',
    goal: 'choose-ratio',
    entries: [
      ...START,
      planned(1.6),
      described({ springs: { installedHeight: '1.900 in', solidHeight: '1.150 in' } }),
    ],
    expected: {
      words: { 'gap:coil-bind:intake': 'clear' },
      says: [/\.144 in/],
      never: [/Don’t fit/],
      next: 'lobe-lift-exhaust',
    },
  },
  {
    // Intake .390 × 1.6 − .018 = .606, 1.800 − .606 − 1.150 = .044; exhaust .350 × 1.5 − .020 = .505, room .145.
    said: 'One six on the intakes, one five on the exhausts',
    goal: 'choose-ratio',
    entries: [
      ...START,
      described({ cam: { exhaust: { lobeLift: '.350 in', lash: '.020 in' } } }),
      planned(1.6, { plannedExhaustRatio: 1.5 }),
      described({ springs: { installedHeight: '1.800 in', solidHeight: '1.150 in' } }),
    ],
    expected: {
      words: { 'gap:coil-bind:intake': 'short', 'gap:coil-bind:exhaust': 'clear' },
      figures: { 'change:net-lift:intake': '.606', 'change:net-lift:exhaust': '.505' },
      says: [/Don’t fit the (planned )?1\.6/],
      never: [/Don’t fit the (planned )?1\.5/],
      next: 'do-not-fit',
    },
  },
  {
    // .390 × 1.6 − .018 = .606 net. Outer 1.900 − .606 − 1.150 = .144; inner, a step higher, 1.800 − .606 − 1.150 = .044.
    // Open: outer 120 + 300 × .606 = 302 lb, inner 50 + 120 × .606 = 123 lb, together 425 lb: springs in parallel.
    said: 'It has an inner spring as well, bind of one fifty, a step higher',
    goal: 'choose-ratio',
    entries: [
      ...START,
      planned(1.6),
      described({
        springs: {
          installedHeight: '1.900 in',
          solidHeight: '1.150 in',
          seatLoad: '120 lbf',
          rate: '300 lbf/in',
          inner: {
            installedHeight: '1.800 in',
            solidHeight: '1.150 in',
            seatLoad: '50 lbf',
            rate: '120 lbf/in',
          },
        },
      }),
    ],
    expected: {
      words: { 'gap:coil-bind:intake': 'short' },
      figures: { 'change:open-load:intake': '425' },
      says: [/\.044 in/],
      next: 'do-not-fit',
    },
  },
  {
    // Seal: .700 − .606 = .094; with 1.7, .700 − (.663 − .018) = .055: close.
    said: 'One six or one seven on these seals?',
    goal: 'choose-ratio',
    entries: [
      ...START,
      planned(1.6, { alsoPlanned: [1.7] }),
      described({ springs: { retainerToSeal: '.700 in' } }),
    ],
    expected: {
      words: { 'gap:retainer-to-seal:intake': 'clear', 'gap:retainer-to-seal:intake:planned-1.7': 'close' },
      next: 'lobe-lift-exhaust',
    },
  },
  {
    // .110 − .150 × .1 = .095 against .080: said to be measured.
    said: 'I had one ten at the piston, the lobe one fifty up there',
    goal: 'clearances-after-a-change',
    entries: [
      ...START,
      planned(1.6),
      described({ clearances: { intake: { lobeLiftAtClosest: '.150 in' } } }),
      onSheet([{ cylinder: 1, valve: 'intake', kind: 'piston-to-valve', reading: '.110 in' }], {
        arms: 'before',
      }),
    ],
    expected: { says: [/\.095/, /measure/i], next: 'lobe-lift-exhaust' },
  },
  {
    // Two readings of one gap: .090 and .118 with the old arms; the less stands: .090 − .015 = .075, under .080.
    said: 'Ninety first, then one eighteen when I did it again',
    goal: 'clearances-after-a-change',
    entries: [
      ...START,
      planned(1.6),
      described({ clearances: { intake: { lobeLiftAtClosest: '.150 in' } } }),
      onSheet([{ cylinder: 1, valve: 'intake', kind: 'piston-to-valve', reading: '.090 in' }], {
        arms: 'before',
      }),
      onSheet([{ cylinder: 1, valve: 'intake', kind: 'piston-to-valve', reading: '.118 in' }], {
        arms: 'before',
      }),
    ],
    expected: { says: [/\.075/], never: [/\.103/], asks: ['gap-read-twice'], next: 'gap-read-twice' },
  },
  {
    // Scanned with the 1.5 that is on: .090 − .110 × .1 = .079 with a 1.6, .090 − .110 × .2 = .068 with a 1.7.
    said: 'I scanned ninety at the least with what is on it; now one six or one seven?',
    goal: 'clearances-after-a-change',
    entries: [
      ...START,
      planned(1.6, { alsoPlanned: [1.7] }),
      described({ clearances: { intake: { lobeLiftAtClosest: '.110 in' } } }),
      arm('old', { ratioStamp: '1.5' }),
      placed('old', 1),
      {
        method: 'POST',
        path: 'build/gap-scans',
        after: ['old on 1 intake'],
        body: {
          cylinder: 1,
          valve: 'intake',
          readings: ['.110 in', '.098 in', '.090 in', '.097 in', '.110 in'].map((gap, index) => ({
            crankAngle: `${5 * index} deg`,
            gap,
          })),
          tool: 'indicator',
          spring: 'light',
          lifter: 'solid',
          lash: 'zero',
        },
      },
    ],
    expected: {
      headline: /With the planned 1\.7.*\.068 in/,
      says: [/with the planned 1\.6: \.079 in/],
      never: [/With the planned 1\.\d[^.]*: clear, \.090/],
      next: 'lobe-lift-exhaust',
    },
  },
  {
    // .340 × 1.6 − .016 = .528: 1.750 − .528 − 1.160 = .062, close; the 1.5 that is off would leave .096.
    said: 'I put the other arm on, and it reads five forty-four',
    goal: 'clearances-after-a-change',
    entries: [
      asked('none', 'apart'),
      described({ engine: { cylinders: 8, lifter: 'solid-flat', rockerMounting: 'stud' } }),
      described({ cam: { assumedRatio: 1.5, intake: { lobeLift: '.340 in', lash: '.016 in' } } }),
      described({ springs: { installedHeight: '1.750 in', solidHeight: '1.160 in' } }),
      arm('A', { ratioStamp: '1.5' }),
      arm('B', { ratioStamp: '1.6' }),
      placed('A', 1),
      setUp('with A', { armId: '$A', after: ['A on 1 intake'] }),
      ...passes('with A', 'valve-lift', ['.510 in', '.510 in', '.5105 in'], { counted: true }),
      placed('B', 1, 'intake', ['A on 1 intake', 'with A valve-lift 3']),
      setUp('with B', { armId: '$B', after: ['B on 1 intake'] }),
      ...passes('with B', 'valve-lift', ['.544 in', '.544 in', '.5445 in'], { counted: true }),
    ],
    expected: {
      words: { 'gap:coil-bind:1-intake': 'close' },
      says: [/1 intake with the measured 1\.60\d: \.06[12] in/],
      never: [/with the measured 1\.50/],
      next: 'lobe-lift-exhaust',
    },
  },
  {
    // Sold as 1.55: .390 × 1.55 − .018 = .5865; 1.790 − .5865 − 1.150 = .0535 ± .014: close. One that reads 1.495 has .075.
    said: 'They are one fifty-fives, and I read the one intake',
    goal: 'clearances-after-a-change',
    entries: [
      ...START,
      described({ rockers: { nominalRatio: 1.55 } }),
      described({ springs: { installedHeight: '1.790 in', solidHeight: '1.150 in' } }),
      setUp('first'),
      ...passes('first', 'valve-lift', ['.583 in', '.583 in', '.5835 in'], { counted: true }),
    ],
    expected: {
      headline: /on the other intake valves/,
      words: { 'gap:coil-bind:intake': 'close' },
      next: 'lobe-lift-exhaust',
    },
  },
  {
    // Read with the lash of .018 in it: .567 is net already; 1.800 − .567 − 1.150 = .083.
    said: 'Five sixty-seven with the lash set to eighteen',
    goal: 'verify-ratio',
    entries: [
      ...START,
      described({ springs: { installedHeight: '1.800 in', solidHeight: '1.150 in' } }),
      setUp('bench', { lash: 'set', lashSetting: '.018 in' }),
      ...passes('bench', 'valve-lift', ['.567 in', '.567 in', '.5675 in'], { counted: true }),
    ],
    expected: {
      never: [/\.101\b/, /\.549\b/],
      figures: { 'net-lift-read:bench': '.567' },
      next: 'lash-to-zero',
    },
  },
  {
    // .050 against .080 with what is on it: that is said before anybody plans.
    said: 'With the old arms on I clayed fifty at the piston; I want more ratio',
    goal: 'choose-ratio',
    entries: [
      ...START,
      described({ rockers: { nominalRatio: 1.5 } }),
      onSheet([{ cylinder: 1, valve: 'intake', kind: 'piston-to-valve', reading: '.050 in' }], {
        arms: 'before',
        tool: 'clay',
      }),
    ],
    expected: { says: [/Do not run it with the arms before/], next: 'do-not-run' },
  },
  {
    // .390 − .375 = .015: over .010 down, worn or of another card.
    said: 'More ratio on it; and this lobe reads three seventy-five',
    goal: 'choose-ratio',
    entries: [
      ...START,
      described({ rockers: { nominalRatio: 1.5 } }),
      setUp('bench', { lobeSource: 'indicator', lobeErrorLimit: '.002 in' }),
      ...passes('bench', 'lobe-lift', ['.375 in', '.375 in', '.3755 in']),
      ...passes('bench', 'valve-lift', ['.562 in', '.5625 in', '.562 in'], { counted: true }),
    ],
    expected: { says: [/Do not run it: the lobe of 1 intake/], next: 'lobe-siblings' },
  },
];
