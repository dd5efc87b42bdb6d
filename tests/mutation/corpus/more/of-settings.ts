import type {
  Evidence,
  SheetEvidence,
  WorkingEvidence,
} from '../../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../../server/mechanics/kit/si.ts';
import { gapOf, turnsOf } from './entries.ts';

/* What is set, ordered or fitted, beside a log or a card that says otherwise. Engines and figures are invented. */

const heat = (
  line: number,
  hot: number,
  cold: number,
  found?: readonly [number, number],
): WorkingEvidence => ({
  id: `heat-${line}`,
  line,
  computation: 'lash-hot-cold',
  set: {
    ...{ of: 'heat', ratio: 1.6, hot: hot * IN, cold: cold * IN },
    ...(found === undefined ? {} : { found: { cold: found[0] * IN, hot: found[1] * IN } }),
  },
});
const card = (lash: number, lashAt?: 'hot' | 'cold') => ({
  intake: { lobeLift: 0.35 * IN, lash: lash * IN },
  exhaust: { lobeLift: 0.34 * IN, lash: (lash + 0.002) * IN },
  ...(lashAt === undefined ? {} : { lashAt }),
});
const solid = { cylinders: 8, lifter: 'solid-flat', mounting: 'stud' } as const;
const hydraulic = { cylinders: 8, lifter: 'hydraulic-flat', mounting: 'stud' } as const;
const pressed = (line: number, preload: number, from: number): WorkingEvidence => ({
  id: `preload-${line}`,
  line,
  computation: 'lifter-preload',
  set: {
    ...{
      of: 'preload',
      thread: '7/16-20 UNF',
      size: '7/16',
      pitch: 0.05 * IN,
      mount: 'stud-nut',
      ratio: 1.5,
    },
    ...{ turns: preload / 0.125, preload: preload * IN, from: from * IN, to: 0.04 * IN, wanted: true },
    ...{ inBand: preload < from ? 'under' : preload > 0.04 ? 'over' : 'within', travel: 0.12 * IN },
  },
});
const lift = (line: number, inches: number, more: Partial<SheetEvidence> = {}): SheetEvidence => ({
  ...{ id: `sheet-${line}`, line, standing: true, cylinder: 1, valve: 'intake', kind: 'valve-lift' },
  ...{ reading: { value: inches * IN }, readAs: 'as read', tool: 'indicator', spring: 'light' },
  ...{ lifter: 'solid', arms: 'these' },
  ...more,
});
const stand = (line: number, netLift: number, shim = 0.03): WorkingEvidence => ({
  id: `stand-${line}`,
  line,
  computation: 'stand-height',
  set: { of: 'stand', netLift: netLift * IN, pivotToTip: 1.45 * IN, shim: shim * IN },
});
const shimmed = (line: number, difference: number): WorkingEvidence => ({
  id: `stand-${line}`,
  line,
  computation: 'stand-height',
  set: {
    ...{ of: 'stand', netLift: 0.56 * IN, pivotToTip: 1.45 * IN, shim: 0.06 * IN },
    nearest: { shim: (0.06 + difference) * IN, difference: difference * IN },
  },
});
const stocked = (line: number, difference: number): WorkingEvidence => ({
  id: `pushrod-${line}`,
  line,
  computation: 'pushrod-length',
  set: {
    ...{ of: 'pushrod', told: 'effective', length: 7.8 * IN, added: 0.03 * IN },
    nearest: { length: (7.8 + difference) * IN, difference: difference * IN },
  },
});
const pushrod = (line: number, less: number): WorkingEvidence => ({
  id: `pushrod-${line}`,
  line,
  computation: 'pushrod-length',
  set: { of: 'pushrod', told: 'overall', length: 7.8 * IN, lashOff: true, less: less * IN },
});

export const OF_SETTINGS: readonly Partial<Evidence>[] = [
  // Hot and cold, from a gap that the log has otherwise.
  {
    engine: solid,
    card: card(0.016, 'hot'),
    lash: [
      gapOf(1, { value: 0.016 }, { moment: 'set', engine: 'hot' }),
      gapOf(2, { value: 0.014 }),
      gapOf(3, { value: 0.015 }, { valve: 'exhaust', engine: 'not-said' }),
      gapOf(4, { value: 0.018 }, { cylinder: 2, engine: 'hot' }),
      gapOf(5, { low: 0.01, high: 0.012 }, { cylinder: 3 }),
    ],
    workings: [heat(6, 0.016, 0.009, [0.012, 0.019])],
  },
  {
    engine: solid,
    card: card(0.016, 'hot'),
    lash: [
      gapOf(1, { value: 0.013 }),
      gapOf(2, { value: 0.015 }, { moment: 'set' }),
      gapOf(3, { value: 0.014 }),
      gapOf(5, { value: 0.012 }, { moment: 'set' }),
      gapOf(6, { value: 0.012 }),
    ],
    workings: [heat(4, 0.016, 0.011, [0.014, 0.019])],
  },
  // The card’s lash is for a cold engine, and the sum took it for hot.
  { engine: solid, card: card(0.016, 'cold'), workings: [heat(1, 0.016, 0.009)] },
  { engine: solid, card: card(0.016, 'cold'), workings: [heat(1, 0.024, 0.016)] },
  { engine: solid, card: card(0.016, 'cold'), workings: [heat(1, 0.03, 0.025)] },
  // Sums of several metals, one of them answered.
  {
    engine: solid,
    card: card(0.016, 'hot'),
    workings: [heat(1, 0.016, 0.02), heat(2, 0.016, 0.009), heat(3, 0.016, 0.012)],
  },
  { engine: solid, workings: [heat(1, 0.01, 0), heat(2, 0.004, 0.009, [0.002, 0])] },
  // A lash taken off at the pushrod, for arms of one ratio and of two.
  {
    engine: solid,
    card: card(0.016),
    rockers: { soldAs: 1.5, planned: 1.6 },
    workings: [pushrod(1, 0.008)],
  },
  {
    engine: solid,
    card: card(0.016),
    rockers: { soldAs: 1.5, planned: 1.6 },
    workings: [pushrod(1, 0.01)],
  },
  // A turn, and what the log says was set and found since: as wanted, the other way, not there, held and not.
  {
    engine: solid,
    card: card(0.016, 'hot'),
    lash: [
      ...[1, 2, 3, 4, 5].map((cylinder) => gapOf(cylinder, { value: 0.022 }, { cylinder, engine: 'hot' })),
      gapOf(7, { value: 0.03 }, { moment: 'set', engine: 'hot' }),
      gapOf(8, { value: 0.016 }, { cylinder: 2, moment: 'set', engine: 'hot' }),
      gapOf(9, { value: 0.018 }, { cylinder: 3, engine: 'hot' }),
      gapOf(10, { value: 0.019 }, { cylinder: 4, moment: 'set', engine: 'hot' }),
      gapOf(11, { value: 0.016 }, { cylinder: 2, engine: 'hot' }),
      gapOf(12, { value: 0.021 }, { cylinder: 4, engine: 'hot' }),
    ],
    workings: [turnsOf(6, { turns: 0.08, lifter: 'solid', lashFound: 0.022 * IN, lashWanted: 0.016 * IN })],
  },
  {
    engine: solid,
    lash: [
      gapOf(1, { value: 0.012 }),
      gapOf(2, { value: 0.012 }, { valve: 'exhaust' }),
      gapOf(4, { value: 0.008 }, { moment: 'set' }),
      gapOf(5, { value: 0.014 }, { valve: 'exhaust', moment: 'set' }),
    ],
    workings: [turnsOf(3, { turns: -0.06, lifter: 'solid', lashFound: 0.012 * IN, lashWanted: 0.016 * IN })],
  },
  {
    engine: solid,
    lash: [
      gapOf(1, { low: 0.02, high: 0.024 }),
      gapOf(2, { low: 0.012 }, { valve: 'exhaust' }),
      gapOf(4, { low: 0.015, high: 0.017 }, { moment: 'set' }),
    ],
    workings: [turnsOf(3, { turns: 0.08, lifter: 'solid', lashFound: 0.022 * IN, lashWanted: 0.016 * IN })],
  },
  {
    engine: solid,
    workings: [turnsOf(1, { turns: 0.05, lifter: 'solid', lashFound: 0, lashWanted: 0.016 * IN })],
  },
  { workings: [turnsOf(1, { turns: 0, lifter: 'solid', lashFound: 0.016 * IN, lashWanted: 0.016 * IN })] },
  // Turns that close more than some gaps of the log, or than all.
  ...[0.011, 0.021, 0.027, 0.068].map((closes) => ({
    engine: solid,
    lash: [
      gapOf(1, { value: 0.022 }),
      gapOf(2, { low: 0.01, high: 0.012 }, { valve: 'exhaust' }),
      gapOf(3, { low: 0.02 }, { cylinder: 2 }),
      gapOf(4, { value: 0.026 }, { cylinder: 3 }),
      gapOf(5, { value: 0.018 }, { cylinder: 3, moment: 'set' }),
      gapOf(6, { high: 0.0015 }, { cylinder: 4 }),
    ],
    workings: [turnsOf(7, { turns: 0.5, lifter: 'solid', lashChange: -closes * IN })],
  })),
  {
    engine: solid,
    lash: [gapOf(1, { value: 0.022 }), gapOf(2, { low: 0.01, high: 0.012 }, { valve: 'exhaust' })],
    workings: [turnsOf(3, { turns: 0.5, lifter: 'solid', lashChange: -0.05 * IN })],
  },
  {
    lash: [gapOf(1, { value: 0 })],
    workings: [turnsOf(3, { turns: 0.5, lifter: 'solid', lashChange: -0.05 * IN })],
  },
  {
    lash: [gapOf(1, { high: 0.0015 })],
    workings: [turnsOf(3, { turns: 0.5, lifter: 'solid', lashChange: -0.001 * IN })],
  },
  // Turns of a plunger, each end of the band and past it.
  ...[0.01, 0.02, 0.025, 0.05, 0.06, 0.0625, 0.12, 0.25].map((preload) => ({
    engine: { cylinders: 8, lifter: 'hydraulic-flat', mounting: 'stud' } as const,
    workings: [
      turnsOf(1, {
        turns: preload / 0.125,
        lifter: 'hydraulic',
        preload: preload * IN,
        zeroFoundBy: 'up-and-down',
      }),
    ],
  })),
  // A stand for a lift that the card, or a reading, comes to or does not.
  ...[0.525, 0.56, 0.6].map((netLift) => ({
    engine: solid,
    card: card(0.016),
    rockers: { soldAs: 1.6, pivotToTip: 1.5 * IN },
    sheet: [
      lift(1, 0.525),
      lift(2, 0.6, { standing: false, cylinder: 2 }),
      lift(3, 0.6, { kind: 'lobe-lift', cylinder: 3 }),
    ],
    workings: [stand(4, netLift)],
  })),
  { card: { intake: { valveLift: 0.5 * IN }, exhaust: {} }, workings: [stand(1, 0.52)] },
  // A turn from a gap that the log has on no valve, with finds of one valve and of two.
  ...[1, 2, 3].map((valves) => ({
    engine: solid,
    lash: [
      gapOf(1, { value: 0.018 }),
      gapOf(2, { value: 0.019 }, { valve: 'exhaust' }),
      gapOf(3, { value: 0.018 }, { cylinder: 2 }),
    ].slice(0, valves),
    workings: [turnsOf(4, { turns: 0.2, lifter: 'solid', lashFound: 0.026 * IN, lashWanted: 0.016 * IN })],
  })),
  // Turns that a wanted preload needs, and such as open further than any lash.
  ...[0.03, 0.07, 0.2].map((preload) => ({
    engine: hydraulic,
    workings: [
      turnsOf(1, { turns: preload / 0.125, lifter: 'hydraulic', byPreload: true, preload: preload * IN }),
    ],
  })),
  ...[-0.01, -0.08].map((preload) => ({
    engine: hydraulic,
    workings: [turnsOf(1, { turns: preload / 0.125, lifter: 'hydraulic', preload: preload * IN })],
  })),
  ...[0.03, 0.15].map((opens) => ({
    engine: solid,
    workings: [turnsOf(1, { turns: -opens / 0.075, lifter: 'solid', lashChange: opens * IN })],
  })),
  // A plunger against a band that was asked for, from none at all and from a little.
  ...[0, 0.02].flatMap((from) =>
    [0, 0.02, 0.021, 0.039, 0.04, 0.041, 0.05, 0.12, 0.14].map((preload) => ({
      engine: hydraulic,
      workings: [pressed(1, preload, from)],
    })),
  ),
  { engine: solid, workings: [pressed(1, 0.03, 0.02), pressed(2, 0, 0.02)] },
  // What is in stock, longer, shorter and just that.
  ...[0, 0.05, -0.05].map((difference) => ({
    workings: [stocked(1, difference), shimmed(2, difference / 5)],
  })),
  { engine: { ...solid, lifter: 'solid-roller' }, workings: [stand(1, 0.56), stand(2, 0.56, -0.03)] },
];
