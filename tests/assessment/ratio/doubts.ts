import { cleanSetUp, IN, passesOf } from '../../mechanics/assessment/plain.ts';
import { answered, cardOf, type Row, readBoth } from './row.ts';

const LOBE = [0.35, 0.35, 0.351];
const WITH_LASH = cardOf(0.35, 0.362, {
  intake: { lobeLift: 0.35 * IN, lash: 0.016 * IN },
  exhaust: { lobeLift: 0.362 * IN, lash: 0.016 * IN },
});

/** The same reading with lifts part of the way up, each at its lobe lift. */
function stationed(
  lifts: readonly number[],
  stations: readonly (readonly [number, number])[],
  card = WITH_LASH,
) {
  const build = readBoth(LOBE, lifts, { card });
  const more = stations.flatMap(([at, lift], index) =>
    passesOf('valve-lift-at', [lift], {
      id: `station-${index}`,
      pass: index + 1,
      atLobeLift: at * IN,
      counted: true,
    }),
  );
  return { ...build, passes: [...build.passes, ...more] };
}

/** Trade practice 7, rows 1, 3, 7, 8, 10 and 25: common practice, no published source. Sums by hand. */
export const DOUBTS: readonly Row[] = [
  {
    // .580 / .3503 = 1.656; 1.6 / cos 15° = 1.656.
    said: 'the plunger was not spoken of and 1.656 is read on a 1.6: how it stands is asked first, and once',
    build: readBoth(LOBE, [0.58, 0.58, 0.58], { setUp: { alignment: 'not-said' } }),
    headline: /First: the answer to “Does the plunger stand parallel/,
    words: { 'ratio:1-intake:arm-a:mark': undefined },
    asks: { 'alignment-not-said': /./ },
    asksNot: ['plunger-tilted'],
    chances: 'none',
    says: [/A lean of about 15 deg makes 1\.65[67] of 1\.6; so does a 1\.65 read upright/],
    never: [/room for flex/],
    next: 'alignment-not-said',
  },
  {
    said: 'and it stands parallel: told as it was read',
    build: readBoth(LOBE, [0.58, 0.58, 0.58], {
      setUp: { alignment: 'not-said' },
      more: { answers: [answered('alignment-not-said', 'parallel')] },
    }),
    headline: /3 % over the 1\.6 stamped on it: ordinary/,
    next: 'read-back',
  },
  {
    said: 'not spoken of, and 1.6 is read: nothing hangs on it',
    build: readBoth(LOBE, [0.56, 0.56, 0.56], { setUp: { alignment: 'not-said' } }),
    headline: /agrees with the 1\.6/,
    next: 'said',
  },
  {
    // 1.6 × .350 − .548 = .012 short, three level passes.
    said: 'a hydraulic lifter that is not locked, level passes .012 short: first a solid or a locked one',
    build: readBoth([0.35, 0.35, 0.35], [0.548, 0.548, 0.548], {
      setUp: { lifter: 'hydraulic' },
      box: 'box says 1.6',
    }),
    headline:
      /First: a reading on a solid or locked lifter: a hydraulic one may have sunk before the first pass\./,
    words: { 'ratio:1-intake:arm-a:mark': undefined },
    asks: { 'lifter-sunk': /It is hydraulic, and not locked/ },
    chances: 'none',
    never: [/More readings won’t tell/, /[Ss]wap test/],
    next: 'light-spring-solid-lifter',
  },
  {
    said: 'and it was locked, as was answered: then it is the reading',
    build: readBoth([0.35, 0.35, 0.35], [0.548, 0.548, 0.548], {
      setUp: { lifter: 'hydraulic' },
      box: 'box says 1.6',
      more: { answers: [answered('lifter-sunk', 'locked: spacer in it')] },
    }),
    headline:
      /2 % under the 1\.6 stamped on it: it cannot be told whether that is within 2 %\. What would tell/,
    never: [/More readings won’t tell/, /look up the box label/],
    next: 'rocker-on-another-valve',
  },
  {
    // Protocol (a), a solid or a locked lifter: a 1.65 that sank .0175 in reads the same (.350 × 1.65 − .0175 = .560).
    said: 'a hydraulic lifter that is not locked, and the lift is all there: no word',
    build: readBoth([0.35, 0.35, 0.35], [0.56, 0.56, 0.56], { setUp: { lifter: 'hydraulic' } }),
    headline: /Not yet set against the 1\.6 .*First: a reading on a solid or locked lifter/i,
    asksNot: ['lifter-sunk'],
    next: 'light-spring-solid-lifter',
  },
  {
    said: 'the engine is down with solid lifters, the reading with a hydraulic one',
    build: readBoth([0.35, 0.35, 0.35], [0.56, 0.56, 0.56], {
      setUp: { lifter: 'hydraulic' },
      more: { engine: { lifter: 'solid-flat' } },
    }),
    asks: { 'lifter-of-engine': /The engine is down with solid ones/ },
    next: 'which-lifter-was',
  },
  {
    // .560 / .350 the other way round.
    said: 'lobe .560 and valve .350: exchanged, they make 1.600',
    build: readBoth([0.56, 0.56, 0.56], [0.35, 0.35, 0.35]),
    headline: /Could lobe and valve lift be exchanged, \.560 in and \.350 in\?/,
    asks: { 'lifts-exchanged': /./ },
    asksNot: ['gross-lift-as-lobe', 'slip'],
    says: [/The other way round they make 1\.600/],
    chances: 'none',
    never: [/A 1\.1|A 1\.45|\.647|about \d+ %/],
    next: 'lifts-exchanged',
  },
  {
    said: 'lobe .560 three times beside a valve of .560: no other name is made of it',
    build: readBoth([0.56, 0.56, 0.56], [0.56, 0.561, 0.56]),
    asks: { 'gross-lift-as-lobe': /Could the lobe lift, \.560 in, be a valve lift\?/ },
    asksNot: ['slip'],
    chances: 'none',
    never: [/A 1\.1|A 1\.45|1\.01\d|about \d+ %/],
    next: 'gross-lift-as-lobe',
  },
  {
    said: 'one lobe pass of four is the valve’s',
    build: readBoth([0.35, 0.35, 0.35, 0.56], [0.56, 0.56, 0.56]),
    headline: /First: the answer to “Could lobe pass 4, \.560 in, have been read at the valve\?”/,
    asks: { 'pass-of-other-lift': /./ },
    next: 'pass-of-other-lift',
  },
  {
    said: 'one valve pass of three is the lobe’s',
    build: readBoth([0.35, 0.35, 0.35], [0.56, 0.351, 0.56]),
    headline: /“Could pass 2, \.351 in, have been read at the lobe\?”/,
    next: 'pass-of-other-lift',
  },
  {
    // (.530 − .290) / (.350 − .200) = 1.600; 1.6 × .350 − .530 = .030.
    said: 'the lift at .200 shows lash that was left in, though zero was said',
    build: stationed([0.53, 0.53, 0.53], [[0.2, 0.29]]),
    asks: { 'lash-left-in': /^Could lash of about \.02\d in be left in\?$/ },
    headline: /What would tell: take the lash out and read again\./,
    never: [/part number/, /[Ss]wap test/],
    next: 'lash-left-in',
  },
  {
    // .320 / .200 = .160 / .100 = 1.600; at the top .560 − .545 = .015 is missing.
    said: 'right at .100 and .200, and short at the top by what the card has as lash: it is not the lash',
    build: stationed(
      [0.545, 0.545, 0.545],
      [
        [0.2, 0.32],
        [0.1, 0.16],
      ],
    ),
    headline: /“It is right up to \.200 in of lobe lift and \.015 in short at the top/,
    asks: { 'short-at-top': /Did the indicator run out of travel\?/ },
    asksNot: ['lash-left-in'],
    next: 'short-at-top',
  },
  {
    // .560 − .016 = .544; .304 at .200 is 1.6 × .200 − .016.
    said: 'short by the card’s lash at the top and part of the way up: the lash is asked about',
    build: stationed([0.544, 0.544, 0.544], [[0.2, 0.304]]),
    headline: /“Could the lash of \.016 in be left in the lift\?”/,
    asksNot: ['short-at-top'],
    next: 'lash-left-in',
  },
  {
    said: 'short by the card’s lash, and nobody said how it was: asked once',
    build: readBoth(LOBE, [0.544, 0.544, 0.544], {
      card: WITH_LASH,
      setUp: { ...cleanSetUp, lash: 'not-said', lobeSource: 'card' },
    }),
    asks: { 'lash-left-in': /./ },
    asksNot: ['lash-not-said'],
    next: 'lash-left-in',
  },
];
