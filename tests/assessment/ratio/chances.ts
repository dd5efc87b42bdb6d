import { buildOf, cleanSetUp } from '../../mechanics/assessment/plain.ts';
import { cardOf, type Row, readBoth } from './row.ts';

/** Names off the trade’s list by little: what a shop’s catalogue may hold. */
const CATALOGUE = [1.56, 1.625, 1.72, 1.73, 1.76];
const { armId: _, ...UNNAMED } = cleanSetUp;
const NO_ARM = { arms: [], seats: [], rockers: {}, card: cardOf(0.35) };

/**
 * Chances beside the headline. A reading that sinks is no ratio yet, a guess and a rule name nothing, and a reading that
 * is doubted is no 1.6 “about 60 %”: common practice, no published source. Ratios by hand.
 */
export const CHANCES: readonly Row[] = [
  {
    // (.555 + .548 + .541) / 3 / .350 = 1.566, and it says nothing.
    said: 'a lifter that sinks .007 a pass: no chance stands beside "not yet"',
    build: readBoth([0.35, 0.35, 0.35], [0.555, 0.548, 0.541], { setUp: { lifter: 'hydraulic' } }),
    headline: /First: passes that don’t sink/,
    chances: 'none',
    never: [/about \d+ %/, /A 1\.6/, /1\.59\d/],
    next: /sink/,
  },
  {
    // .5 / .350 = 1.43.
    said: 'half an inch by guess, sold as 1.6',
    build: readBoth([], [0.5], { stamp: '', soldAs: 1.6, setUp: { tool: 'guess', lobeSource: 'card' } }),
    headline: /this one is a guess/,
    chances: 'none',
    never: [/about \d+ %/, /A 1\.6/],
    next: /^lift-with-a-tool/,
  },
  {
    // 9/16 = .5625; / .350 = 1.607, within far more than 2 %.
    said: 'nine sixteenths by rule, three times, sold as 1.6',
    build: readBoth([], [0.5625, 0.5625, 0.5625], {
      stamp: '',
      soldAs: 1.6,
      setUp: { tool: 'rule', lobeSource: 'card', errorLimit: 0.0156 * 0.0254 },
    }),
    chances: 'open',
    never: [/about \d+ %/],
    next: 'dial-indicator',
  },
  {
    // .525 / .350 = 1.5: 6 % under.
    said: 'five twenty-five by caliper, sold as 1.6: doubted, and listed without a figure',
    build: readBoth([], [0.525, 0.525, 0.525], {
      stamp: '',
      soldAs: 1.6,
      setUp: { tool: 'caliper', lobeSource: 'card', errorLimit: 0.005 * 0.0254 },
    }),
    headline: /doubted/,
    chances: 'open',
    says: [/^A 1\.6, if the readings are right as they stand\.$|^A 1\.6 made|^A 1\.6 that gives/m],
    never: [/about \d+ %/],
    next: 'lobe-at-lifter',
  },
  {
    // .571 / .350 = 1.631: 2 % over.
    said: 'across the edge of 2 %: the figure is used, and no name has a chance of it',
    build: readBoth([0.35, 0.35, 0.35], [0.571, 0.5715, 0.571]),
    chances: 'open',
    never: [/about \d+ %/],
    next: 'said',
  },
  {
    said: 'agrees: the chance of its name stands',
    build: readBoth([0.35, 0.35, 0.35], [0.56, 0.56, 0.56]),
    words: { 'ratio:1-intake:arm-a:mark': 'agrees' },
    chances: 'told',
    says: [/a 1\.6, about 95 %/],
    next: 'said',
  },
  {
    // .561 / .350 = 1.603; 1.625 lies 1.4 % over.
    said: 'no mark, and a catalogue of near names: the first two are told, and what tells them apart',
    build: buildOf([0.561, 0.5605, 0.561], {
      ...NO_ARM,
      setUps: [UNNAMED],
      catalogueRatios: CATALOGUE,
    }),
    headline:
      /1\.602 ± \.016 as read: a 1\.6, about \d+ %, or a 1\.625, about \d+ %\. The part number tells which\./,
    chances: 'told',
    never: [/No name is likely enough/],
    next: 'arm',
  },
  {
    // 14.25 mm / 8.89 mm = 1.603.
    said: 'no mark, read in millimetres on a metric dial: it has its name all the same',
    build: buildOf([14.25 / 25.4, 14.24 / 25.4, 14.25 / 25.4], {
      ...NO_ARM,
      call: {
        goal: 'verify-ratio',
        contact: 'none',
        engineState: 'apart',
        closed: false,
        units: 'metric',
      },
      setUps: [{ ...UNNAMED, perTurn: 0.001, graduation: 0.00001, errorLimit: 0.00006 }],
    }),
    headline: /a 1\.6, about \d+ %/,
    next: 'arm',
  },
  {
    said: 'no mark and one pass: no name, and no chance of one',
    build: readBoth([0.35], [0.575], { stamp: '' }),
    headline: /No name is given from so little/,
    chances: 'open',
    never: [/about \d+ %/],
    next: 'sold-as',
  },
];
