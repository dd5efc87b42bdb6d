import { HOW, type Played, type Read } from './play.ts';

/** One call: eight intakes of which the fifth is unlike the rest, its arm swapped with that of the seventh. */
export interface OneValve {
  readonly title: string;
  /** Lift of 5 intake before the swap; of the others as `LIFTS` has them. */
  readonly odd: string;
  /** Other valves that were read; left out, all of them. */
  readonly others?: readonly number[];
  /** Lifts after the swap: Arm 7 sits on 5 intake and Arm 5 on 7 intake. */
  readonly on5?: string;
  readonly on7?: string;
  readonly afterHow?: object;
  /** Read in set-ups of the ratio step instead of the sheet. */
  readonly setUps?: 'before' | 'after' | 'both';
  readonly verdict: 'part' | 'position' | 'both' | 'cannot-tell';
  readonly sentence: RegExp;
  readonly cause: string | undefined;
  readonly next: string;
}

/** Invented lifts on 1.6 arms, as real ones scatter. */
const LIFTS: Readonly<Record<number, string>> = {
  1: '.565 in',
  2: '.564 in',
  3: '.566 in',
  4: '.565 in',
  6: '.564 in',
  7: '.565 in',
  8: '.566 in',
};
const LOBES = ['.3530', '.3535', '.3525', '.3530', '.3530', '.3535', '.3530', '.3525'];

export const ONE_VALVE: readonly OneValve[] = [
  {
    title: 'the low lift goes with the arm',
    odd: '.547 in',
    on5: '.565 in',
    on7: '.546 in',
    verdict: 'part',
    sentence: /the difference went with Arm 5, low on both valves\. It is the part: Arm 5\./,
    cause: 'part',
    next: 'read-lot',
  },
  {
    title: 'the high lift goes with the arm',
    odd: '.583 in',
    on5: '.565 in',
    on7: '.583 in',
    verdict: 'part',
    sentence: /the difference went with Arm 5, high on both valves/,
    cause: 'part',
    next: 'read-lot',
  },
  {
    title: 'the low lift stays on the valve',
    odd: '.547 in',
    on5: '.547 in',
    on7: '.565 in',
    verdict: 'position',
    sentence:
      /the difference stayed on 5 intake, low with both arms\. It is the position, not the arm: lifter, pushrod or set-up of 5 intake/,
    cause: 'position',
    next: 'swap-pushrods',
  },
  {
    title: 'half goes and half stays',
    odd: '.545 in',
    on5: '.555 in',
    on7: '.555 in',
    verdict: 'both',
    sentence: /the difference is split: \.010 in went with Arm 5, \.010 in stayed on 5 intake\./,
    cause: undefined,
    next: 'swap-pushrods',
  },
  {
    title: 'the difference is gone since',
    odd: '.545 in',
    on5: '.565 in',
    on7: '.565 in',
    verdict: 'cannot-tell',
    sentence: /it cannot be told: the difference is gone since the arms were moved/,
    cause: undefined,
    next: 'swap-back',
  },
  {
    title: 'swapped, and nothing read since',
    odd: '.547 in',
    verdict: 'cannot-tell',
    sentence: /it cannot be told yet.*Still to be read: 5 intake with Arm 7 and 7 intake with Arm 5\./,
    cause: undefined,
    next: 'read-swapped',
  },
  {
    title: 'one of the two read since',
    odd: '.547 in',
    on7: '.546 in',
    verdict: 'cannot-tell',
    sentence: /it cannot be told yet.*Still to be read: 5 intake with Arm 7\./,
    cause: undefined,
    next: 'read-swapped',
  },
  {
    title: 'read on another spring since',
    odd: '.547 in',
    on5: '.553 in',
    on7: '.534 in',
    afterHow: { ...HOW, spring: 'running' },
    verdict: 'cannot-tell',
    sentence: /it cannot be told yet.*5 intake with Arm 7 and 7 intake with Arm 5 was read another way\./,
    cause: undefined,
    next: 'read-swapped',
  },
  {
    title: 'both read in set-ups, before and after',
    odd: '.547 in',
    on5: '.565 in',
    on7: '.546 in',
    setUps: 'both',
    verdict: 'part',
    sentence: /the difference went with Arm 5/,
    cause: 'part',
    next: 'read-lot',
  },
  {
    title: 'the sheet before, set-ups after',
    odd: '.547 in',
    on5: '.547 in',
    on7: '.565 in',
    setUps: 'after',
    verdict: 'position',
    sentence: /the difference stayed on 5 intake/,
    cause: 'position',
    next: 'swap-pushrods',
  },
  {
    title: 'no third valve to tell which of the two arms it is',
    odd: '.547 in',
    others: [7],
    on5: '.565 in',
    on7: '.546 in',
    verdict: 'part',
    sentence: /Arm 5 is \.01[89] in low against Arm 7 on both valves.*which of the two needs a third valve/,
    cause: undefined,
    next: 'rows',
  },
];

const lobesOf = (cylinders: readonly number[]): Read[] =>
  cylinders.map((cylinder) => ({ cylinder, kind: 'lobe-lift', reading: `${LOBES[cylinder - 1]} in` }));

async function before(play: Played, call: OneValve, named: boolean): Promise<void> {
  const others = call.others ?? [1, 2, 3, 4, 6, 7, 8];
  const cylinders = [...others, 5].sort();
  const inSetUps = call.setUps === 'before' || call.setUps === 'both' ? [5, 7] : [];
  const with7 = named ? { arm: 'Arm 7' } : {};
  const lifts = cylinders
    .filter((cylinder) => !inSetUps.includes(cylinder))
    .map(
      (cylinder): Read => ({
        cylinder,
        reading: cylinder === 5 ? call.odd : (LIFTS[cylinder] ?? ''),
        ...(named && cylinder === 5 ? { arm: 'Arm 5' } : cylinder === 7 ? with7 : {}),
      }),
    );
  await play.keep(lobesOf(cylinders));
  await play.keep(named ? lifts.toReversed() : lifts);
  // A slip is ruled out before anything is moved.
  if (inSetUps.length === 0) await play.keep(lifts.filter(({ cylinder }) => cylinder === 5));
  for (const cylinder of inSetUps) {
    const lift = cylinder === 5 ? call.odd : (LIFTS[cylinder] ?? '');
    await play.setUp(cylinder, named ? `Arm ${cylinder}` : undefined, [lift, lift, lift]);
  }
}

async function after(play: Played, { on5, on7, afterHow, setUps }: OneValve, named: boolean): Promise<void> {
  const reads: Read[] = [
    ...(on5 === undefined ? [] : [{ cylinder: 5, reading: on5, arm: 'Arm 7' }]),
    ...(on7 === undefined ? [] : [{ cylinder: 7, reading: on7, arm: 'Arm 5' }]),
  ];
  if (reads.length === 0) return;
  if (setUps === 'after' || setUps === 'both') {
    for (const { cylinder, reading, arm } of named ? reads.toReversed() : reads)
      await play.setUp(cylinder, named ? arm : undefined, [reading, reading, reading]);
    return;
  }
  const plain = reads.map(({ arm: _, ...each }) => each);
  for (let pass = 0; pass < 2; pass += 1) await play.keep(named ? reads.toReversed() : plain, afterHow);
}

const name = async (play: Played) => {
  for (const cylinder of [5, 7]) await play.name(`Arm ${cylinder}`);
};
const seat = async (play: Played) => {
  for (const cylinder of [5, 7]) await play.place(`Arm ${cylinder}`, cylinder);
};
const swap = async (play: Played) => {
  await play.place('Arm 5', 7);
  await play.place('Arm 7', 5);
};

/** Three orders in which the same call is entered. */
export const ORDERS: Readonly<Record<string, (play: Played, call: OneValve) => Promise<void>>> = {
  'the arms named after they were read': async (play, call) => {
    await before(play, call, false);
    await name(play);
    await seat(play);
    await swap(play);
    await after(play, call, false);
  },
  'the arms named first': async (play, call) => {
    await name(play);
    await seat(play);
    await before(play, call, false);
    await swap(play);
    await after(play, call, false);
  },
  'typed in later, the last first, each with its arm': async (play, call) => {
    await name(play);
    await seat(play);
    await swap(play);
    await after(play, call, true);
    await before(play, call, true);
  },
};
