import type { Call } from './call.ts';
import { answered, arm, asked, chose, described, passes, placed, putRight, setUp } from './entry.ts';

/** Two lobes that differ, and a lash, as a card has them. */
const CARD = {
  cam: {
    assumedRatio: 1.6,
    intake: { lobeLift: '.348 in', lash: '.018 in', centreline: '108 deg' },
    exhaust: { lobeLift: '.361 in', lash: '.020 in', centreline: '114 deg' },
  },
};
const START = [asked('none'), described({ engine: { cylinders: 8 } }), described(CARD)];
const STAMPED = [arm('the arm', { ratioStamp: '1.6' }), placed('the arm', 1)];
const ON_THE_ARM = { armId: '$the arm' };
const COUNTED = { counted: true };
const WITHOUT_CARD = [
  asked('none'),
  described({ engine: { cylinders: 8 } }),
  setUp('bench', { lobeSource: 'indicator' }),
  ...passes('bench', 'lobe-lift', ['.350 in', '.350 in', '.350 in'], COUNTED),
  ...passes('bench', 'valve-lift', ['.595 in', '.595 in', '.595 in'], COUNTED),
];
const MARK = 'ratio:1-intake:the arm:mark';

/*
 * Bands on the light spring (within 2 %, to 4.5 % over, to 4.5 % under, beyond): common practice, no published source.
 * Each ratio is valve lift over lobe lift by hand, in the comment above its call.
 */
export const OF_RATIO: readonly Call[] = [
  {
    // .5575 / .348 = 1.602.
    said: 'Stamped one six; five fifty-seven and a half, three times, on the light spring',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...STAMPED,
      setUp('bench', ON_THE_ARM),
      ...passes('bench', 'valve-lift', ['.557 in', '.558 in', '557.5 thou'], COUNTED),
    ],
    expected: { words: { [MARK]: 'agrees' }, headline: /1\.60\d .*agrees with the 1\.6/, next: 'said' },
  },
  {
    // .457 + .100 = .557: a turn was missed.
    said: 'Card says five fifty-seven, I get four fifty-seven',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...STAMPED,
      setUp('bench', ON_THE_ARM),
      ...passes('bench', 'valve-lift', ['.457 in']),
    ],
    expected: { words: { [MARK]: undefined }, asks: ['turn-miscounted'], next: 'turn-miscounted' },
  },
  {
    // One of three by a turn: .558 .458 .557.
    said: 'Five fifty-eight, four fifty-eight, five fifty-seven',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...STAMPED,
      setUp('bench', ON_THE_ARM),
      ...passes('bench', 'valve-lift', ['.558 in', '.458 in', '.557 in']),
    ],
    expected: {
      words: { [MARK]: undefined },
      asks: ['turn-miscounted'],
      next: 'enter-again-pass-2',
      says: [/pass 2/],
    },
  },
  {
    // 557 thousandths read backwards: 5 turns, 100 − 57 = 43.
    said: 'Five turns and forty-three',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...STAMPED,
      setUp('bench', ON_THE_ARM),
      ...passes('bench', 'valve-lift', ['.543 in']),
    ],
    expected: {
      words: { [MARK]: 'cannot-tell' },
      asks: ['hand-read-backwards'],
      next: 'valve-passes',
    },
  },
  {
    // .557 − .018 = .539: the card's lash, and nobody said how it was.
    said: 'Five thirty-nine, and nobody said how the lash was',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...STAMPED,
      setUp('bench', { ...ON_THE_ARM, lash: 'not-said' }),
      ...passes('bench', 'valve-lift', ['.539 in', '.5385 in', '.539 in'], COUNTED),
    ],
    expected: {
      words: { [MARK]: undefined },
      asks: ['lash-left-in'],
      next: 'lash-left-in',
    },
  },
  {
    said: 'The same, and an hour later: it was set to eighteen',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...STAMPED,
      setUp('bench', { ...ON_THE_ARM, lash: 'not-said' }),
      ...passes('bench', 'valve-lift', ['.539 in', '.5385 in', '.539 in'], COUNTED),
      putRight('bench', { method: { lash: 'set', lashSetting: '.018 in' } }),
    ],
    expected: {
      words: { [MARK]: undefined },
      asksNot: ['lash-not-said', 'lash-left-in'],
      next: 'lash-to-zero',
    },
  },
  {
    // Read again with the lash up: .557 / .348 = 1.601.
    said: 'Set to eighteen, then taken up and read again',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...STAMPED,
      setUp('set', { ...ON_THE_ARM, lash: 'set', lashSetting: '.018 in' }),
      ...passes('set', 'valve-lift', ['.539 in', '.5385 in', '.539 in'], COUNTED),
      setUp('up', { ...ON_THE_ARM, after: ['set'] }),
      ...passes('up', 'valve-lift', ['.557 in', '.557 in', '.5575 in'], COUNTED),
    ],
    expected: { words: { [MARK]: 'agrees' }, asksNot: ['lash-not-said'], next: 'said' },
  },
  {
    said: 'The plunger leans, I can see it from the side',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...STAMPED,
      setUp('bench', ON_THE_ARM),
      ...passes('bench', 'valve-lift', ['.557 in', '.558 in', '.557 in'], COUNTED),
      putRight('bench', { method: { alignment: 'leaning' } }),
    ],
    expected: { words: { [MARK]: undefined }, next: 'align-plunger' },
  },
  {
    // .574 / .348 = 1.649: 3 % over on the light spring is ordinary.
    said: 'Five seventy-four three times: that is one sixty-five',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...STAMPED,
      setUp('bench', { ...ON_THE_ARM, lobeSource: 'indicator', lobeErrorLimit: '.002 in' }),
      ...passes('bench', 'lobe-lift', ['.348 in', '.3485 in', '.348 in']),
      ...passes('bench', 'valve-lift', ['.574 in', '.574 in', '.5735 in'], {
        counted: true,
        zeroReturn: '0 in',
      }),
      answered('read-back', false, { on: 'bench', after: ['bench valve-lift 3', 'bench lobe-lift 3'] }),
    ],
    expected: { words: { [MARK]: 'cannot-tell' }, headline: /3 % over.*ordinary/, next: 'said' },
  },
  {
    // Light .557, running .541: .016 lost to the spring, inside .015 to .040 of a stud.
    said: 'Five fifty-seven light, five forty-one on the real spring',
    goal: 'verify-ratio',
    entries: [
      ...START,
      described({ engine: { rockerMounting: 'stud' } }),
      ...STAMPED,
      setUp('light', ON_THE_ARM),
      ...passes('light', 'valve-lift', ['.557 in', '.557 in', '.5575 in'], COUNTED),
      setUp('real', { ...ON_THE_ARM, spring: 'running', after: ['light'] }),
      ...passes('real', 'valve-lift', ['.541 in', '.541 in', '.5415 in'], COUNTED),
    ],
    expected: { words: { [MARK]: 'agrees' }, says: [/\.016 in/], next: 'said' },
  },
  {
    said: 'Four seventy-eight, then seventy-one, then sixty-two',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...STAMPED,
      setUp('bench', { ...ON_THE_ARM, spring: 'running', lifter: 'hydraulic' }),
      ...passes('bench', 'valve-lift', ['.478 in', '.471 in', '.462 in'], COUNTED),
    ],
    expected: {
      words: { [MARK]: undefined },
      headline: /sink/,
      next: 'light-spring-solid-lifter',
    },
  },
  {
    // 14.15 mm = .557 in.
    said: 'Fourteen fifteen, and the dial says millimetres',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...STAMPED,
      setUp('bench', { ...ON_THE_ARM, graduation: '.01 mm', perTurn: '1 mm', errorLimit: '.06 mm' }),
      ...passes('bench', 'valve-lift', ['14.15 mm', '14.16 mm', '14.15 mm'], COUNTED),
    ],
    expected: { words: { [MARK]: 'agrees' }, next: 'said' },
  },
  {
    // .361 × 1.602 = .578: the lift of the other valve.
    said: 'Five seventy-eight on the intake; or was it the exhaust?',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...STAMPED,
      setUp('bench', ON_THE_ARM),
      ...passes('bench', 'valve-lift', ['.578 in', '.5785 in', '.578 in'], COUNTED),
    ],
    expected: { words: { [MARK]: 'cannot-tell' }, next: 'read-back' },
  },
  {
    // .577 / .348 = 1.658; 1.6 / cos 15° = 1.656.
    said: 'Five seventy-seven three times; how the plunger stood I did not look',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...STAMPED,
      setUp('bench', { ...ON_THE_ARM, alignment: 'not-said' }),
      ...passes('bench', 'valve-lift', ['.577 in', '.577 in', '.5775 in'], COUNTED),
    ],
    expected: {
      words: { [MARK]: undefined },
      headline: /Does the plunger stand parallel/,
      asks: ['alignment-not-said'],
      asksNot: ['plunger-tilted'],
      never: [/about \d+ %/, /room for flex/],
      next: 'alignment-not-said',
    },
  },
  {
    // .557 / .348 = 1.601: level with what they are sold as, and 7 % over the mark.
    said: 'It says one five on the arm, the box says one six, and I read one six',
    goal: 'verify-ratio',
    entries: [
      ...START,
      described({ rockers: { nominalRatio: 1.6 } }),
      arm('the arm', { ratioStamp: '1.5', boxLabel: 'box says 1.6' }),
      placed('the arm', 1),
      setUp('bench', ON_THE_ARM),
      ...passes('bench', 'valve-lift', ['.557 in', '.557 in', '.5575 in'], COUNTED),
    ],
    expected: {
      headline: /level with the 1\.6 it is sold as\. Is the 1\.5 on it the ratio\?/,
      asks: ['stamp-is-ratio'],
      asksNot: ['card-ratio'],
      never: [/left to be explained/, /More readings won’t tell/],
      next: 'stamp-is-ratio',
    },
  },
  {
    // .348 − .334 = .014; .5345 / .334 = 1.600.
    said: 'Lobe three thirty-four, valve five thirty-four and a half: why is my lift short?',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...STAMPED,
      setUp('bench', { ...ON_THE_ARM, lobeSource: 'indicator', lobeErrorLimit: '.002 in' }),
      ...passes('bench', 'lobe-lift', ['.334 in', '.334 in', '.3345 in']),
      ...passes('bench', 'valve-lift', ['.534 in', '.5345 in', '.535 in'], COUNTED),
    ],
    expected: {
      words: { [MARK]: 'agrees' },
      headline: /the lobe reads \.334 in, \.014 in under the \.348 in on the card/,
      says: [/Do not run it: the lobe of 1 intake/],
      next: 'lobe-siblings',
    },
  },
  {
    // .348 × 1.6 − .544 = .013.
    said: 'Hydraulic lifters, light spring: five forty-four, the same three times',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...STAMPED,
      setUp('bench', { ...ON_THE_ARM, lifter: 'hydraulic' }),
      ...passes('bench', 'valve-lift', ['.544 in', '.544 in', '.544 in'], COUNTED),
    ],
    expected: {
      words: { [MARK]: undefined },
      asks: ['lifter-sunk'],
      headline: /First: a reading on a solid or locked lifter/,
      never: [/about \d+ %/],
      next: 'light-spring-solid-lifter',
    },
  },
  {
    // Leaning 15 degrees, 1.6 / cos 15° = 1.656; upright .557 / .348 = 1.601.
    said: 'Five seventy-seven; then I stood the dial up straight, and it is five fifty-seven',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...STAMPED,
      setUp('first', { ...ON_THE_ARM, alignment: 'not-said' }),
      ...passes('first', 'valve-lift', ['.577 in', '.577 in', '.5775 in'], COUNTED),
      setUp('upright', { ...ON_THE_ARM, after: ['first valve-lift 3'] }),
      ...passes('upright', 'valve-lift', ['.557 in', '.557 in', '.5575 in'], COUNTED),
    ],
    expected: {
      words: { [MARK]: 'agrees' },
      asksNot: ['alignment-not-said', 'plunger-tilted'],
      never: [/lean/],
      next: 'said',
    },
  },
  {
    // .018 more with the lash up: what was left in the first time is settled by the second.
    said: 'Five thirty-nine; with the lash taken up it is five fifty-seven',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...STAMPED,
      setUp('first', { ...ON_THE_ARM, lash: 'not-said' }),
      ...passes('first', 'valve-lift', ['.539 in', '.5385 in', '.539 in'], COUNTED),
      setUp('up', { ...ON_THE_ARM, after: ['first valve-lift 3'] }),
      ...passes('up', 'valve-lift', ['.557 in', '.557 in', '.5575 in'], COUNTED),
    ],
    expected: {
      words: { [MARK]: 'agrees' },
      asksNot: ['lash-left-in', 'lash-not-said'],
      next: 'said',
    },
  },
  {
    // .533 / .348 = 1.533, and a rule is off by .016: names from 1.45 to 1.6 can't be told apart.
    said: 'I read it off a rule: five thirty or so',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...STAMPED,
      setUp('rule', { ...ON_THE_ARM, tool: 'rule', errorLimit: '.016 in' }),
      ...passes('rule', 'valve-lift', ['.53 in', '.54 in', '.53 in']),
    ],
    expected: {
      words: { [MARK]: 'cannot-tell' },
      headline: /What would tell: read the valve lift with a dial indicator/,
      never: [/1\.6 stamped on it: [^\n]*1\.6 stamped on it/],
      next: 'dial-indicator',
    },
  },
  {
    // 5 turns and 57 read backwards is 5 and 43; nobody read the small hand.
    said: 'Five forty-three, and again, and again',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...STAMPED,
      setUp('bench', ON_THE_ARM),
      ...passes('bench', 'valve-lift', ['.543 in', '.543 in', '.5435 in']),
    ],
    expected: {
      words: { [MARK]: 'cannot-tell' },
      headline: /What would tell: take one more pass, small hand first/,
      next: 'one-more-pass',
    },
  },
  {
    // .5743 / .348 = 1.650; .348 × 1.6 = .557.
    said: 'The box says one six, one sixty-five is stamped on it, and I get five seventy-four',
    goal: 'verify-ratio',
    entries: [
      ...START,
      described({ rockers: { nominalRatio: 1.6 } }),
      arm('the arm', { ratioStamp: '1.65', boxLabel: '1.6 roller set' }),
      placed('the arm', 1),
      setUp('bench', ON_THE_ARM),
      ...passes('bench', 'valve-lift', ['.574 in', '.5745 in', '.5745 in'], COUNTED),
    ],
    expected: {
      words: { [MARK]: 'agrees' },
      asks: ['stamp-against-sold'],
      headline: /agrees with the 1\.65 stamped on it\. But it is sold as 1\.6 and its box says 1\.6/,
      never: [/not the part/],
      next: 'stamp-against-sold',
    },
  },
  {
    // Steady passes do not show that it held: .574 less .017 of sink is .557 too.
    said: 'Five fifty-seven each time, on the hydraulic lifter that is in it',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...STAMPED,
      setUp('bench', { ...ON_THE_ARM, lifter: 'hydraulic' }),
      ...passes('bench', 'valve-lift', ['.557 in', '.557 in', '.5575 in'], COUNTED),
    ],
    expected: {
      words: { [MARK]: undefined },
      headline: /First: a reading on a solid or locked lifter/,
      next: 'light-spring-solid-lifter',
    },
  },
  {
    // .595 / .350 = 1.700; with no card nothing is set against the ratio that one assumes.
    said: 'Used engine, used cam, nobody has a card or a box: five ninety-five over three fifty',
    goal: 'verify-ratio',
    entries: [
      ...WITHOUT_CARD,
      chose('card-known', 'no-card', { ask: 'Is there a card for this cam?', after: ['bench'] }),
      chose('sold-as-known', 'not-known', {
        ask: 'Does anybody know which ratio the rockers are sold as?',
        after: ['bench'],
      }),
    ],
    expected: {
      asks: ['card-known'],
      headline: /1\.700/,
      never: [/cam card/, /Read off the card/],
      next: 'arm',
    },
  },
  {
    said: 'Five ninety-five over three fifty; I have not looked for a card yet',
    goal: 'verify-ratio',
    entries: WITHOUT_CARD,
    expected: { asks: ['card-known'], headline: /1\.700/, next: 'arm' },
  },
];
