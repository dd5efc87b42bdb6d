import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { cleanSetUp, IN, lobe, passesOf } from '../../mechanics/assessment/plain.ts';
import { answered, cardOf, type Row, readBoth } from './row.ts';

const LOBE = [0.361, 0.361, 0.361];
const CARD = {
  assumedRatio: 1.6,
  intake: lobe(0.361, { lash: 0.016, valveLift: 0.578 }),
  exhaust: lobe(0.334, { lash: 0.018, valveLift: 0.534 }),
};
const MARK = 'ratio:1-intake:arm-a:mark';

/** A second set-up of the same arm on the same valve. */
function twice(build: Evidence, lifts: readonly number[], more: Partial<Evidence['setUps'][number]> = {}) {
  const id = 'set-up-2';
  const of = { setUpId: id, counted: true, zeroReturn: 0 };
  return {
    ...build,
    setUps: [...build.setUps, { ...cleanSetUp, id, number: 2, lobeSource: 'indicator' as const, ...more }],
    passes: [...build.passes, ...passesOf('lobe-lift', LOBE, of), ...passesOf('valve-lift', lifts, of)],
  };
}

const uncounted = (build: Evidence): Evidence => ({
  ...build,
  passes: build.passes.map((pass) => ({ ...pass, counted: false })),
});

const onShaft = (lash: number): Evidence => {
  const six = {
    card: { assumedRatio: 1.6, intake: lobe(0.361, { lash }), exhaust: lobe(0.334) },
    more: { engine: { cylinders: 6, lifter: 'solid-flat' as const, mounting: 'shaft' as const } },
  };
  return twice(
    readBoth(LOBE, [0.554, 0.554, 0.5545], { ...six, setUp: { spring: 'running' } }),
    [0.578, 0.578, 0.578],
  );
};

/** Asked of the arm, under its own id. */
function ordered(answer: string) {
  const { setUpId: _, ...kept } = answered('stamp-against-sold', answer);
  return { ...kept, question: 'A is stamped 1.65; it is sold as 1.6. Which was ordered?' };
}

/** What a word waits for, and what stands beside it: common practice, no published source. Sums by hand. */
export const WORD_WAITS: readonly Row[] = [
  {
    // .5963 / .361 = 1.652; .361 × 1.6 = .5776, and the card prints .578.
    said: 'stamped 1.65, its box and the order say 1.6: that is the finding, and the card is not the odd one',
    build: readBoth(LOBE, [0.5965, 0.596, 0.5965], {
      stamp: '1.65',
      box: '1.6 roller set',
      soldAs: 1.6,
      card: CARD,
    }),
    headline:
      /agrees with the 1\.65 stamped on it\. But it is sold as 1\.6 and its box says 1\.6: .*Which was ordered\?/,
    words: { [MARK]: 'agrees', 'ratio:1-intake:arm-a:sold-as': 'differs' },
    asks: { 'stamp-against-sold': /^A is stamped 1\.65; it is sold as 1\.6 and its box says 1\.6\./ },
    says: [/the card goes with the 1\.6 it is sold as, so it is the part, not the card/],
    never: [/card’s ratio, not the part/],
    next: 'stamp-against-sold',
  },
  {
    said: 'and 1.6 was ordered: another part was sent, and nothing more is asked',
    build: readBoth(LOBE, [0.5965, 0.596, 0.5965], {
      stamp: '1.65',
      soldAs: 1.6,
      card: CARD,
      more: { answers: [ordered('sold')] },
    }),
    headline: /The 1\.6 was ordered: another part was sent\.$/,
    next: 'said',
  },
  {
    // .561 / .361 = 1.554 on the running spring; .100 of a turn less is .461, .117 short of .578.
    said: 'on the running spring .117 short: no spring takes that, and the small hand comes before a light spring',
    build: uncounted(readBoth(LOBE, [0.461, 0.4615, 0.461], { card: CARD, setUp: { spring: 'running' } })),
    headline: /First: the answer to “Could one turn of the dial be missing/,
    never: [/on the running spring, not yet set against/],
    next: 'turn-miscounted',
  },
  {
    said: 'the same, and the count was looked at: it is said how far short it is, and not that it is ordinary',
    build: readBoth(LOBE, [0.461, 0.4615, 0.461], { card: CARD, setUp: { spring: 'running' } }),
    headline:
      /1\.277 ± \.\d{3} on the running spring, \.11[67] in short of what the 1\.6 stamped on it makes: no spring takes/,
    never: [/on the running spring, not yet set against/],
    next: /./,
  },
  {
    // .578 − .554 = .024; less .012 of lash it is .012, and .005 to .020 is usual on a shaft.
    said: 'the running spring takes .024 on a shaft: whether lash was in it is asked before it is closed',
    build: onShaft(0.012),
    asks: { 'deflection-more-than-usual': /takes \.024 in on 1 intake, more than usual\. Was the lash out/ },
    says: [/Less the \.012 in of lash on the card it is \.012 in, which is usual/],
    next: 'deflection-more-than-usual',
  },
  {
    // .5427 / .350 is a mean of passes that sink: nothing is made of it.
    said: 'passes of a hydraulic lifter that fall: their mean is set against no hand read backwards',
    build: uncounted(readBoth([0.35, 0.35, 0.35], [0.548, 0.543, 0.537], { setUp: { lifter: 'hydraulic' } })),
    headline: /passes that don’t sink/,
    asksNot: ['hand-read-backwards'],
    never: [/read backwards/],
    next: 'sinking',
  },
  {
    // .598 / .361 = 1.657; .5603 / .361 = 1.552; with .016 put back 1.597.
    said: 'a second set-up that is asked about is told beside the first',
    build: twice(readBoth(LOBE, [0.598, 0.598, 0.5985], { card: CARD }), [0.5605, 0.56, 0.5605]),
    headline:
      /1\.657 .*What would tell: ask whether the lash was out.* Set-up 2 came out 1\.552, and is asked about\./,
    never: [/part number can/],
    next: 'lash-left-in',
  },
  {
    // .5532 / .361 = 1.532, 4.2 % under ± .8 %.
    said: '4 % under, across the edge of 4.5 %: the swap test is named, and not that it is so far off',
    build: readBoth(LOBE, [0.553, 0.5535, 0.553], { card: CARD }),
    headline: /4 % under the 1\.6 stamped on it, which no spring explains; .*Then the swap test/,
    next: 'valve-lift-at-.200',
  },
  {
    said: 'the same in millimetres: half way up is 5 mm',
    build: {
      ...readBoth(LOBE, [0.5585, 0.559, 0.5585], { card: CARD }),
      call: { goal: 'verify-ratio', contact: 'none', engineState: 'apart', closed: false, units: 'metric' },
    },
    headline: /turn to 5 mm of lobe lift/,
    never: [/\.200 in/],
    next: 'valve-lift-at-.200',
    nextSays: /Turn to 5 mm of lobe lift/,
  },
  {
    said: 'a lobe that was guessed agrees with no card',
    build: readBoth([0.35], [0.56], {
      card: cardOf(0.361),
      setUp: { lobeSource: 'guess', lobeErrorLimit: 0.03 * IN },
    }),
    words: { 'card-lobe:set-up-1': 'cannot-tell' },
    next: /./,
  },
  {
    // .4778 / .361 = 1.324: the count is as it was said, and does not fit.
    said: 'an answer that begins with its code counts, whatever goes on from it',
    build: {
      ...uncounted(readBoth(LOBE, [0.478, 0.478, 0.4775], { card: CARD })),
      answers: [answered('turn-miscounted', 'not-found: the small hand says four')],
    },
    never: [/First: the answer to “Could one turn/],
    asksNot: ['hand-read-backwards'],
    next: /./,
  },
];
