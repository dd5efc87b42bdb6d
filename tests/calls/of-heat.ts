import type { Call } from './call.ts';
import { asked, described, type Entry, kept, lashLine } from './entry.ts';

const START = [
  asked('none', 'has-run'),
  described({
    engine: { cylinders: 8, lifter: 'solid-flat', rockerMounting: 'stud', studSize: '7/16' },
    cam: { assumedRatio: 1.5, lashAt: 'hot', intake: { lash: '.018 in' } },
    rockers: { nominalRatio: 1.5 },
  }),
];

const sum = (lashFound: string, lashWanted: string): Entry => ({
  name: 'sum',
  ...kept('adjuster', {
    thread: '7/16-20',
    mount: 'stud-nut',
    ratio: 1.5,
    lifter: 'solid',
    lashFound,
    lashWanted,
  }),
});

/*
 * Iron block under an aluminium head, 100 °F: .018 in hot is .018 − .006 = .012 in cold. By the expansions of the
 * materials table, with their sources there.
 */
const metals = kept('lash-hot-cold', {
  hotLash: '.018 in',
  temperatureRise: '100 F',
  ratio: 1.5,
  materials: { block: 'cast-iron', head: 'aluminium', pushrod: 'steel', valve: 'steel' },
});

const one = (lash: string, line: object): Entry => ({ name: `one at ${lash}`, ...lashLine(1, lash, line) });

const cold = (moment: 'found' | 'set', day: number) => ({
  moment,
  engine: 'cold',
  nut: 'held',
  readOn: `2026-03-0${day}`,
});

/* One gap is wider or narrower with heat: hot and cold are not set against each other, common practice, no published source. */
export const OF_HEAT: readonly Call[] = [
  {
    said: 'Cold engine, fifteen at number one, and the card says eighteen hot: how far do I back it off?',
    goal: 'adjuster',
    entries: [...START, one('.015 in', cold('found', 1)), sum('.015 in', '.018 in')],
    expected: {
      asks: ['turn-heat'],
      headline: /Nothing is told of these turns yet\. Is \.018 in wanted cold at 1 intake/,
      next: 'turn-heat',
      never: [/[Ll]oosen/, /[Tt]ighten/, /Everything is there/],
    },
  },
  {
    said: 'Fifteen at number one, I don’t know how warm it was, and eighteen hot on the card',
    goal: 'adjuster',
    entries: [...START, one('.015 in', { moment: 'found' }), sum('.015 in', '.018 in')],
    expected: {
      asks: ['turn-heat'],
      headline: /Was 1 intake found hot or cold\?/,
      next: 'turn-heat',
      never: [/[Ll]oosen/],
    },
  },
  {
    // .003 ÷ (.050 × 2.5) = .024 of a turn.
    said: 'Fifteen cold, and by your metals twelve cold makes the eighteen hot, so I tighten to twelve',
    goal: 'adjuster',
    entries: [...START, metals, one('.015 in', cold('found', 1)), sum('.015 in', '.012 in')],
    expected: {
      asksNot: ['turn-heat', 'sum-unlikely'],
      headline: /^1 intake: tighten \.024 turn/m,
      next: 'said',
    },
  },
  {
    said: 'It was twelve cold as it should be, and now I want the card’s eighteen',
    goal: 'adjuster',
    entries: [...START, metals, one('.012 in', cold('found', 1)), sum('.012 in', '.018 in')],
    expected: { asks: ['turn-heat'], next: 'turn-heat', never: [/[Ll]oosen/] },
  },
  {
    said: 'I set it to eighteen cold this morning, and it reads eighteen still',
    goal: 'adjuster',
    entries: [...START, one('.018 in', cold('set', 1)), lashLine(1, '.018 in', cold('found', 2))],
    expected: { asks: ['lash-unusual'], next: 'lash-unusual' },
  },
  {
    said: 'I set it to twelve cold, as the metals have it',
    goal: 'adjuster',
    entries: [...START, metals, one('.012 in', cold('set', 1))],
    expected: { asksNot: ['lash-unusual'], next: 'lash-again' },
  },
];
