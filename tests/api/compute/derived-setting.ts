import type { Derived } from './derived.ts';
import { deg, inch } from './forms.ts';

const P7_20 = 1 / 20;
/** Turns as they are answered: 360° and six flats to one, worked out beside each. */
const turned = (turns: number, degrees: number, flats: number) => ({
  turns,
  degrees: deg(degrees),
  flats,
  direction: turns > 0 ? 'tighten' : 'loosen',
});
const screw = (more: object) => ({ thread: '7/16-20', ratio: 1.7, lifter: 'hydraulic', ...more });

/** Turns of an adjuster, lengths of a pushrod, shims and the height of a stand. */
export const SETTING: readonly Derived[] = [
  // The lever about the valve tip: the pivot's way and its seat's are as b to a + b.
  {
    name: 'adjuster',
    body: screw({ turns: 0.625, mount: 'stud-nut' }),
    result: { seatMovement: inch((0.625 * P7_20 * 2.7) / 1.7), ...turned(0.625, 225, 3.75) },
  },
  {
    name: 'adjuster',
    body: screw({ preload: inch(0.03), mount: 'cup-screw' }),
    result: { seatMovement: inch(0.03), ...turned(0.6, 216, 3.6) },
  },
  {
    name: 'adjuster',
    body: screw({ turns: -0.25, mount: 'valve-end-screw', lifter: 'solid' }),
    result: { lashChange: inch(0.25 * P7_20), ...turned(-0.25, -90, -1.5) },
  },
  {
    name: 'adjuster',
    body: screw({ turns: 0.5, mount: 'stud-nut', lifter: 'solid' }),
    result: { lashChange: inch(-0.5 * P7_20 * 2.7), ...turned(0.5, 180, 3) },
  },
  // Gap .0300 in to .0165 in: a turn of the stud nut closes .05 × 2.7 = .135, so a tenth of a turn, 36°, .6 flats.
  {
    name: 'adjuster',
    body: screw({ lashFound: inch(0.03), lashWanted: inch(0.0165), mount: 'stud-nut', lifter: 'solid' }),
    result: { lashChange: inch(-0.0135), ...turned(0.1, 36, 0.6) },
  },
  {
    name: 'adjuster',
    body: screw({
      lashFound: inch(0.01),
      lashWanted: inch(0.0225),
      mount: 'valve-end-screw',
      lifter: 'solid',
    }),
    result: { lashChange: inch(0.0125), ...turned(-0.25, -90, -1.5) },
  },
  {
    name: 'adjuster',
    body: screw({ lashFound: inch(0.01), lashWanted: inch(0.01), mount: 'cup-screw', lifter: 'solid' }),
    result: { lashChange: inch(0), turns: 0, degrees: deg(0), flats: 0 },
  },
  {
    name: 'adjuster',
    body: screw({ preloadWanted: inch(0.03), mount: 'cup-screw' }),
    result: { seatMovement: inch(0.03), ...turned(0.6, 216, 3.6) },
  },
  // .102 + .012 − .008 = .106; .105 is .001 off and .108 is .002 off, and leaves .114 − .105 = .009.
  {
    name: 'lash-shim',
    body: {
      shimFitted: inch(0.102),
      lashFound: inch(0.012),
      lashWanted: inch(0.008),
      stock: { values: [0.108, 0.105], unit: 'in' },
    },
    result: { shim: inch(0.106), nearest: { shim: inch(0.105), lash: inch(0.009) } },
  },
  // The lever about the valve tip again; 1.25 turns of 3/8-24 at 1.7 are .0827 in of a .080 in travel.
  {
    name: 'lifter-preload',
    body: {
      turns: 1.25,
      thread: '3/8-24',
      mount: 'stud-nut',
      ratio: 1.7,
      liftersTravel: inch(0.08),
      wanted: { from: inch(0.02), to: inch(0.04) },
    },
    result: {
      preload: inch((1.25 / 24) * (2.7 / 1.7)),
      inBand: 'over',
      left: inch(0.08 - (1.25 / 24) * (2.7 / 1.7)),
    },
  },
  {
    name: 'lifter-preload',
    body: { turns: 0.25, thread: '7/16-20', mount: 'cup-screw', ratio: 1.7 },
    result: { preload: inch(0.0125), inBand: 'under' },
  },
  // A page of trade practice: a checker marked 7.800, screwed apart one turn of .050, is 7.850.
  {
    name: 'pushrod-length',
    body: { checkerAtZero: inch(7.8), pitch: inch(0.05), turns: 1 },
    result: { length: inch(7.85) },
  },
  {
    name: 'pushrod-length',
    body: {
      checkerAtZero: inch(7.2),
      thread: '1/4-20',
      turns: 2.5,
      less: inch(0.01),
      convention: 'effective',
      stock: { values: [7.4, 7.3, 7.25], unit: 'in' },
    },
    result: { length: inch(7.298), nearest: { length: inch(7.3), difference: inch(0.002) } },
  },
  // Roller axis 1.2 + .25 = 1.45 over the face, pivot at 1.40: .05 below it where half of .5 in is wanted.
  {
    name: 'stand-height',
    body: {
      pivotHeight: inch(1.4),
      tipHeight: inch(1.2),
      netLift: inch(0.5),
      pivotToTip: inch(1.45),
      rollerRadius: inch(0.25),
      shims: { values: [0.015, 0.03], unit: 'in' },
    },
    result: { shim: inch(-0.2), pivotOffset: { now: inch(0.05), wanted: inch(0.25) } },
  },
  {
    name: 'stand-height',
    body: {
      pivotHeight: inch(-0.1),
      tipHeight: inch(0.25),
      netLift: inch(0.5),
      pivotToTip: inch(1.45),
      shims: { values: [0.06, 0.12, 0.09], unit: 'in' },
    },
    result: {
      shim: inch(0.1),
      pivotOffset: { now: inch(0.35), wanted: inch(0.25) },
      nearest: { shim: inch(0.09), difference: inch(-0.01), pivotOffset: inch(0.26) },
    },
  },
];
