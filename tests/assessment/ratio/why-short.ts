import { IN, lobe, passesOf } from '../../mechanics/assessment/plain.ts';
import { lobeOn, swapped, twice } from './read-again.ts';
import { answered, cardOf, type Row, readBoth } from './row.ts';

const LOBE = [0.35, 0.35, 0.35];

/** Why the lift is not what the caller expects: playbook calls 2, 7 and 8, common practice, no published source. */
export const WHY_SHORT: readonly Row[] = [
  {
    // .350 − .336 = .014; × 1.6 = .022 at the valve.
    said: 'the lobe is .014 under its card, and the ratio is right: the lobe is told, and others are read before it is run',
    build: readBoth([0.336, 0.336, 0.337], [0.538, 0.538, 0.538]),
    words: { 'ratio:1-intake:arm-a:mark': 'agrees', 'card-lobe:set-up-1': 'differs' },
    says: [
      /1 intake: the lobe reads \.336 in, \.014 in under the \.350 in on the card: which lobe, which card, or wear\? That takes \.022 in off the valve lift\./,
    ],
    asks: { 'card-not-this-lobe': /./ },
    never: [/Read the lobe at the lifter\./],
    notToRun: /Do not run it: the lobe of 1 intake reads \.336 in, \.014 in under the card\./,
    next: 'lobe-siblings',
    nextSays: /read the lobes of two more intake valves at the lifter/,
  },
  {
    said: 'two other lobes read as low: the card is the odd one, and nothing is held up',
    build: readBoth([0.336, 0.336, 0.337], [0.538, 0.538, 0.538], {
      more: { sheet: [lobeOn(3, 0.336), lobeOn(5, 0.337)] },
    }),
    says: [/as do the other intake lobes: another cam, or another card\./],
    next: /^(?!lobe-siblings)/,
  },
  {
    said: 'another lobe reads as the card has it: it is this lobe',
    build: readBoth([0.336, 0.336, 0.337], [0.538, 0.538, 0.538], { more: { sheet: [lobeOn(3, 0.35)] } }),
    says: [/and the others read as the card has it: worn, or read short\./],
    notToRun: /under the card and the others of its side/,
    next: /^(?!lobe-siblings)/,
  },
  {
    // .006 under: told, and no limit of wear is reached.
    said: 'the lobe is .006 under its card: told, and run all the same',
    build: readBoth([0.344, 0.344, 0.344], [0.55, 0.55, 0.55]),
    says: [/1 intake: the lobe reads \.344 in, \.006 in under the \.350 in on the card/],
    next: 'said',
  },
  {
    // .350 × 1.5 = .525 on the card; .560 read.
    said: 'the card works with 1.5 and the arms are 1.6: why the lift is not the card’s is told at once',
    build: readBoth(LOBE, [0.56, 0.56, 0.56], {
      card: cardOf(0.35, 0.362, { assumedRatio: 1.5, intake: lobe(0.35, { valveLift: 0.525 }) }),
    }),
    says: [
      /^1 intake: the lift is \.035 in over the card’s because the card works with 1\.5: it is the card’s ratio, not the part\.$/m,
    ],
    next: 'said',
  },
  {
    // .560 / .350 = 1.600, and the card says 1.5.
    said: 'a card that contradicts itself: asked, and told',
    build: readBoth(LOBE, [0.525, 0.525, 0.525], {
      stamp: '1.5',
      card: cardOf(0.35, 0.362, { assumedRatio: 1.5, intake: lobe(0.35, { valveLift: 0.56 }) }),
    }),
    words: { 'ratio:1-intake:arm-a:mark': 'agrees' },
    asks: {
      'card-against-itself': /^Which is right on the card\? It says 1\.5, and its lifts make 1\.600\.$/,
    },
    says: [/the lift is \.035 in under the card’s because the card works with 1\.6/],
    next: 'card-against-itself',
  },
  {
    // .340 × 1.5 − .016 = .494.
    said: 'the card prints the net lift: what lies between is its lash',
    build: readBoth([0.34, 0.34, 0.34], [0.51, 0.51, 0.51], {
      stamp: '1.5',
      card: cardOf(0.34, 0.35, {
        assumedRatio: 1.5,
        intake: lobe(0.34, { valveLift: 0.494, lash: 0.016 }),
        exhaust: lobe(0.35, { valveLift: 0.507, lash: 0.018 }),
      }),
    }),
    says: [
      /1 intake: the \.494 in on the card is net of its \.016 in of lash: at zero lash that is \.510 in\./,
    ],
    asksNot: ['card-ratio', 'card-against-itself'],
    next: 'said',
  },
  {
    // .345 × 1.6 = .552; .552 − .016 = .536.
    said: 'lash was left in, then taken up and read again: why it was short is told',
    build: twice({
      first: [{ lash: 'set', lashSetting: 0.016 * IN }, [0.536, 0.536, 0.536]],
      again: [{}, [0.552, 0.552, 0.552]],
    }),
    headline: /agrees with the 1\.6/,
    says: [
      /1 intake: the lift was short by the \.016 in of lash that was left in; at zero lash it reads \.552 in\./,
    ],
    next: 'said',
  },
  {
    said: 'the lifter was found to sink, then a locked one was read: what was found is said, nothing is entered again',
    build: twice({
      first: [{ lifter: 'hydraulic' }, [0.555, 0.548, 0.541]],
      again: [{ lifter: 'locked' }, [0.552, 0.552, 0.5525]],
      more: { answers: [answered('falling-passes', 'found', { found: true })] },
    }),
    headline: /agrees with the 1\.6/,
    next: 'said',
  },
  {
    // .570 / .345 = 1.652 leaning; .552 / .345 = 1.600.
    said: 'the plunger leaned, then stood parallel and was read again: nobody is sent back to it',
    build: twice({
      first: [{ alignment: 'leaning' }, [0.57, 0.57, 0.57]],
      again: [{}, [0.552, 0.552, 0.552]],
    }),
    headline: /agrees with the 1\.6/,
    next: 'said',
  },
  {
    // .536 / .350 = 1.531 with A on both valves, .561 with B.
    said: 'a swap that was read: the arm reads low on two valves, and no hand was read backwards',
    build: swapped([0.536, 0.536, 0.536], [0.561, 0.561, 0.561]),
    asksNot: ['hand-read-backwards', 'turn-miscounted', 'digits-swapped', 'slip'],
    says: [/It is the part/],
    next: 'read-lot',
  },
  {
    // .350, .345, .340: no slip makes the second of them.
    said: 'lobe passes that fall: the base is looked at before more are taken',
    build: readBoth([0.35, 0.345, 0.34], [0.56, 0.56, 0.56]),
    headline:
      /First: the answer to “Could the indicator base be slipping\? Every lobe pass is under the last\.”/,
    asksNot: ['slip'],
    chances: 'none',
    next: 'drifting-passes',
  },
  {
    said: 'valve passes that rise',
    build: readBoth(LOBE, [0.551, 0.556, 0.562]),
    headline: /Could the indicator base be slipping\? Every pass is over the last\./,
    next: 'drifting-passes',
  },
  {
    // .543 / .350 = 1.551.
    said: 'the running spring alone: its ratio is told as that, and set against nothing',
    build: readBoth(LOBE, [0.543, 0.543, 0.543], { setUp: { spring: 'running' } }),
    headline:
      /1\.551 ± \.\d{3} on the running spring, not yet set against the 1\.6 stamped on it\. First: a reading on a light spring/,
    words: { 'ratio:1-intake:arm-a:mark': undefined },
    next: 'light-spring-solid-lifter',
  },
  {
    said: 'and it is set up on a light spring: only the passes are lacking',
    build: twice({ first: [{ spring: 'running' }, [0.535, 0.535, 0.535]], again: [{}, []] }),
    next: 'valve-passes',
  },
  {
    // .480 / .320 = .300 / .200 = 1.500.
    said: 'far under its stamp: what it reads as by itself is told',
    build: readBoth([0.32, 0.32, 0.32], [0.48, 0.48, 0.48], { card: cardOf(0.32, 0.34) }),
    headline: /6 % under the 1\.6 stamped on it, so far off .* By itself it reads as a 1\.5\./,
    chances: 'open',
    says: [/by a second dial at the lifter/],
    next: 'valve-lift-at-.200',
  },
  {
    // One turn of .100 fits to the thousandth, and the turns were counted and looked at again: one more pass with the
    // small hand is what was just answered, while .320 in or .263 in at .200 in of lobe needs no count at all.
    said: 'the count was looked at and does not fit: what can be answered is asked',
    build: readBoth(LOBE, [0.46, 0.46, 0.46], {
      more: { answers: [answered('turn-miscounted', 'not found', { found: false })] },
    }),
    asks: { 'count-does-not-fit': /Was the small hand read at zero too\?$/ },
    never: [/about \d+ %/, /What else is it/],
    next: 'valve-lift-at-.200',
  },
  {
    // .577 / .350 = 1.649.
    said: 'stamped 1.6, sold as 1.65, and it reads 1.649: both are told',
    build: readBoth(LOBE, [0.577, 0.577, 0.5775], {
      soldAs: 1.65,
      box: '1.65 set',
      card: cardOf(0.35, 0.362, { assumedRatio: 1.65 }),
    }),
    headline:
      /3 % over the 1\.6 stamped on it: ordinary .*, and level with the 1\.65 it is sold as\. Use 1\.649/,
    asksNot: ['card-ratio'],
    says: [/The lift as read is the card’s/],
    never: [/left to be explained/, /look up the box label/],
    next: 'stamp-against-sold',
  },
  {
    // .4942 + .016 = .5102; / .3402 = 1.4997.
    said: 'lash of .016 in it, said with the readings: what it comes to with that put back',
    build: readBoth([0.3402, 0.3402, 0.3402], [0.4942, 0.4942, 0.4942], {
      stamp: '1.5',
      card: cardOf(0.34, 0.362, { assumedRatio: 1.5 }),
      setUp: { lash: 'set', lashSetting: 0.016 * IN },
    }),
    headline: /First: a reading at zero lash.* With the \.016 in put back it comes to 1\.500\.$/,
    words: { 'ratio:1-intake:arm-a:mark': undefined },
    chances: 'none',
    next: 'lash-to-zero',
  },
  {
    // 9.79 mm = .3854 in.
    said: 'the lobe lift is only stated, and there is no card: it is asked where it is from, not asked for again',
    build: readBoth([], [0.56, 0.56, 0.56], {
      card: { intake: {}, exhaust: {} },
      setUp: { lobeSource: 'card' },
      more: {
        passes: [
          ...passesOf('valve-lift', [0.56, 0.56, 0.56], { counted: true }),
          ...passesOf('stated-lobe-lift', [0.35]),
        ],
      },
    }),
    headline:
      /First: where the lobe lift of \.350 in is from: put in with the cam card, or read at the lifter\./,
    next: 'lobe-lift-from',
  },
];
