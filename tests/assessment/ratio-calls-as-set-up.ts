import { cleanSetUp, IN, passesOf, stamped } from '../mechanics/assessment/plain.ts';
import {
  CANNOT,
  CATALOGUE,
  call,
  LASH_WAS_OUT,
  NOT_READ_WRONG,
  onSetUp,
  PART_NUMBER,
  type RatioCall,
  RUNNING,
  readWell,
} from './ratio-call.ts';

/*
 * Against the mark, by its bands, and by how it was set up.
 * Bands on the light spring, within 2 %, to 4.5 % over, to 4.5 % under, beyond: common practice, no published source.
 * Each ratio is valve lift over lobe lift, by hand; the ± is checked against JCGM 100 where it is calculated.
 */
export const AS_SET_UP: readonly RatioCall[] = [
  {
    said: 'stamped 1.6, three passes of .561 on a .350 lobe: 1.602',
    build: call([0.561, 0.5605, 0.561]),
    word: 'agrees',
    headline: ['1.602 ± .016 as read: agrees with the 1.6 stamped on it.'],
    next: 'said',
  },
  {
    said: '3 % over on three clean passes, the lobe off the card: 1.648',
    build: call([0.577, 0.5765, 0.577]),
    word: 'cannot-tell',
    headline: [
      '1.648 ± .016 as read, 3 % over the 1.6 stamped on it: ordinary for an arm made with room for flex.',
      'Use 1.648 for every clearance.',
    ],
    never: new RegExp(`${CANNOT.source}|${PART_NUMBER.source}`),
    notAsked: ['plunger-tilted'],
    next: 'read-back',
  },
  {
    said: '3 % over, lobe at the lifter, counted, zero looked at, and read back: 1.647',
    build: readWell([0.577, 0.5765, 0.577], { answers: NOT_READ_WRONG }),
    word: 'cannot-tell',
    headline: ['3 % over the 1.6 stamped on it: ordinary', 'Use 1.647 for every clearance.'],
    never: new RegExp(`${CANNOT.source}|${PART_NUMBER.source}`),
    notAsked: ['plunger-tilted'],
    next: 'said',
  },
  {
    said: '3 % under, lobe at the lifter: 1.551',
    build: readWell([0.543, 0.5435, 0.543], { answers: [LASH_WAS_OUT] }),
    word: 'cannot-tell',
    // The one step that is next, then the swap: not two steps under two headings.
    headline: [
      '3 % under the 1.6 stamped on it, which no spring explains. What would tell: turn to .200 in of lobe lift',
      'Then the swap test, this rocker on another valve',
    ],
    never: PART_NUMBER,
    next: 'valve-lift-at-.200',
  },
  {
    said: '3 % under, read again at .200 and read back: the swap test is next',
    build: readWell([0.543, 0.5435, 0.543], {
      setUps: [{ ...cleanSetUp, lobeSource: 'indicator' }],
      passes: [
        ...passesOf('lobe-lift', [0.35, 0.3505, 0.35]),
        ...passesOf('valve-lift', [0.543, 0.5435, 0.543], { counted: true, zeroReturn: 0 }),
        ...passesOf('valve-lift-at', [0.31], { atLobeLift: 0.2 * IN, counted: true }),
      ],
      answers: [...NOT_READ_WRONG, LASH_WAS_OUT],
    }),
    word: 'cannot-tell',
    headline: ['What would tell: the swap test, this rocker on another valve'],
    next: 'rocker-on-another-valve',
  },
  {
    said: 'stamped 1.6 and sold as 1.65, read 1.648: two names for one arm',
    build: readWell([0.577, 0.5765, 0.577], { rockers: { soldAs: 1.65 }, answers: NOT_READ_WRONG }),
    word: 'cannot-tell',
    headline: ['3 % over the 1.6 stamped on it: ordinary'],
    told: [
      'level with the 1.65 it is sold as and 3 % over the 1.6 stamped on it: a reading cannot tell which',
    ],
    never: /agrees with the 1\.65|part number can/,
    // Stamp and order do not go together: common practice, no published source.
    next: 'stamp-against-sold',
  },
  {
    said: '2 % over, across the edge of 2 %: either way it is used as read',
    build: readWell([0.571, 0.5715, 0.571]),
    word: 'cannot-tell',
    headline: ['just inside 2 % or just past it. Either way it is ordinary', 'Use 1.631 for every clearance'],
    never: PART_NUMBER,
    next: 'said',
  },
  {
    said: '10 % under: the reading is doubted first, and calculated with nowhere',
    build: call([0.504, 0.5045, 0.504]),
    word: 'cannot-tell',
    headline: [
      '10 % under the 1.6 stamped on it, so far off that the readings are doubted before the part is.',
    ],
    also: /not calculated with yet\. First: why the lift is so far off/,
    never: /running \d+ % (over|under)|the measured 1\.44/,
    next: 'valve-lift-at-.200',
  },
  {
    said: 'no mark, a catalogue of many names: none is likelier than all others together, and the first two are told',
    build: call([0.561, 0.5605, 0.561], { arms: [stamped('16')], catalogueRatios: CATALOGUE }),
    headline: [
      '1.602 ± .016 as read: a 1.6, about 40 %, or a 1.625, about 25 %. The part number tells which.',
    ],
    never: /a (1\.1|1\.2|1\.3|1\.45|1\.7|1\.8|2),|running (?:[5-9]|\d\d) %|agrees|differs/,
    next: 'stamp-is-ratio',
  },
  {
    said: 'lash left in, how much is not said: no word, and no figure to calculate with',
    build: onSetUp([0.508, 0.508, 0.5085], { lash: 'set' }),
    headline: ['not yet set against the 1.6 stamped on it. First: a reading at zero lash'],
    also: /^The ratio read on 1 intake is not calculated with yet\. First: a reading at zero lash/m,
    never: /the (measured|calculated) 1\.45|1\.45\d ±/,
    next: 'lash-to-zero',
  },
  {
    said: 'the plunger leans',
    build: onSetUp([0.577, 0.5765, 0.577], { alignment: 'leaning' }),
    headline: ['First: a reading with the plunger parallel to the stem'],
    never: /the measured 1\.64/,
    next: 'align-plunger',
  },
  // Plunger on a flat face of the retainer, not a lock, a step or a slope: common practice, no published source.
  ...(['retainer-edge', 'spring-seat'] as const).map((restsOn) => ({
    said: `the tip rests on ${restsOn}`,
    build: onSetUp([0.56, 0.5605, 0.56], { restsOn }),
    headline: ['First: a reading with the plunger on the flat face of the retainer'],
    never: /the measured 1\.60/,
    next: 'rest-on-retainer',
  })),
  {
    said: 'a hydraulic lifter that sinks .005 a pass',
    build: onSetUp([0.549, 0.544, 0.539], { lifter: 'hydraulic' }),
    headline: ['First: passes that don’t sink'],
    never: /the measured 1\.5/,
    next: /sink/,
  },
  {
    said: 'three passes .009 apart from each other',
    build: call([0.561, 0.57, 0.552]),
    headline: ['First: one more pass of the valve lift'],
    never: /the measured/,
    next: 'one-more-pass',
  },
  {
    said: 'light, then running on the same valve: .016 of deflection',
    build: call([], {
      engine: { mounting: 'stud' },
      setUps: [cleanSetUp, RUNNING],
      passes: [
        ...passesOf('valve-lift', [0.561, 0.5605, 0.561]),
        ...passesOf('valve-lift', [0.545, 0.5455, 0.545], { setUpId: RUNNING.id }),
      ],
    }),
    word: 'agrees',
    headline: ['agrees with the 1.6 stamped on it'],
    // .561 − .545 = .0157; over .350 it is .045. .005 to .040 on studs: common practice, no published source.
    told: ['takes .016 in ± .003 off the lift, .045 of ratio; .005 to .040 in is usual on studs.'],
    notAsked: ['spring-mixed'],
    next: 'said',
  },
  {
    said: 'the running spring alone: set against no mark',
    build: onSetUp([0.545, 0.5455, 0.545], { spring: 'running' }),
    headline: ['First: a reading on a light spring with a solid lifter, at zero lash.'],
    never: /agrees with|differs from/,
    next: 'light-spring-solid-lifter',
  },
];
