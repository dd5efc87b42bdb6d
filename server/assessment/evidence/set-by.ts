import { defined } from '../../../shared/defined.ts';
import type { SetEvidence } from '../../mechanics/assessment/evidence/kept-sums.ts';
import { computation as adjuster } from '../../mechanics/computations/adjuster.ts';
import { computation as followerRatio } from '../../mechanics/computations/follower-ratio.ts';
import { computation as lashHotCold } from '../../mechanics/computations/lash-hot-cold.ts';
import { computation as lifterPreload } from '../../mechanics/computations/lifter-preload.ts';
import { computation as pushrodLength } from '../../mechanics/computations/pushrod-length.ts';
import { computation as standHeight } from '../../mechanics/computations/stand-height.ts';
import { USUAL_PRELOADS } from '../../mechanics/setting/setting-table.ts';
import type { AdjusterThread } from '../../mechanics/threads/adjuster-thread.ts';
import type { Working } from '../../records/workings/workings.ts';

const threaded = ({ designation, size, pitch }: AdjusterThread) => ({
  thread: designation,
  pitch,
  ...defined({ size }),
});

function preloadOf(inputs: unknown): SetEvidence | undefined {
  const { data } = lifterPreload.input.safeParse(inputs);
  if (data === undefined) return undefined;
  const { turns, thread, mount, ratio, zeroFoundBy, liftersTravel, plunger = 'usual', wanted } = data;
  const { preload, inBand } = lifterPreload.compute(data);
  const { from, to } = wanted ?? USUAL_PRELOADS[plunger];
  return {
    of: 'preload',
    ...threaded(thread),
    mount,
    ratio,
    turns,
    preload,
    inBand,
    from,
    to,
    wanted: wanted !== undefined,
    ...defined({ zeroFoundBy, travel: liftersTravel }),
  };
}

function turnsOf(inputs: unknown): SetEvidence | undefined {
  const { data } = adjuster.input.safeParse(inputs);
  if (data === undefined) return undefined;
  const { thread, mount, ratio, zeroFoundBy, lifter, lashFound, lashWanted } = data;
  const { turns, seatMovement, lashChange } = adjuster.compute(data);
  return {
    of: 'turns',
    ...threaded(thread),
    mount,
    ratio,
    turns,
    lifter,
    ...((data.preload ?? data.preloadWanted) === undefined ? {} : { byPreload: true as const }),
    ...defined({ zeroFoundBy, preload: seatMovement, lashChange, lashFound, lashWanted }),
  };
}

function heatOf(inputs: unknown): SetEvidence | undefined {
  const { data } = lashHotCold.input.safeParse(inputs);
  if (data === undefined) return undefined;
  const { coldLash, hotAsFound } = lashHotCold.compute(data);
  const { hotLash, coldFound } = data;
  return {
    of: 'heat',
    ratio: data.ratio,
    hot: hotLash,
    cold: coldLash,
    ...(coldFound === undefined || hotAsFound === undefined
      ? {}
      : { found: { cold: coldFound, hot: hotAsFound } }),
  };
}

function pushrodOf(inputs: unknown): SetEvidence | undefined {
  const { data } = pushrodLength.input.safeParse(inputs);
  if (data === undefined) return undefined;
  const { length, nearest } = pushrodLength.compute(data);
  const { add, convention, lash = 0, less = 0, ratio } = data;
  return {
    of: 'pushrod',
    told: convention ?? 'as-read',
    length,
    ...(lash > 0 || less > 0 ? { lashOff: true as const } : {}),
    ...(lash > 0 ? { lash, ...defined({ ratio }) } : {}),
    ...(less > 0 ? { less } : {}),
    ...defined({ added: add, nearest }),
  };
}

function standOf(inputs: unknown): SetEvidence | undefined {
  const { data } = standHeight.input.safeParse(inputs);
  if (data === undefined) return undefined;
  const { shim, nearest } = standHeight.compute(data);
  return {
    of: 'stand',
    netLift: data.netLift,
    pivotToTip: data.pivotToTip,
    shim,
    ...defined({
      nearest: nearest === undefined ? undefined : { shim: nearest.shim, difference: nearest.difference },
    }),
  };
}

const ofArms = ({ ratio, interval95: [low, high] }: { ratio: number; interval95: [number, number] }) => ({
  ratio,
  low,
  high,
});

function followerOf(inputs: unknown): SetEvidence | undefined {
  const { data } = followerRatio.input.safeParse(inputs);
  if (data === undefined) return undefined;
  const { shut, open } = followerRatio.compute(data);
  return {
    of: 'follower',
    shut: ofArms(shut),
    ...defined({ open: open === undefined ? undefined : ofArms(open) }),
  };
}

/** What is set, ordered or fitted by a computation that was kept, computed again in SI. */
export function setBy({ computation, inputs }: Working): SetEvidence | undefined {
  switch (computation) {
    case lifterPreload.name:
      return preloadOf(inputs);
    case adjuster.name:
      return turnsOf(inputs);
    case pushrodLength.name:
      return pushrodOf(inputs);
    case standHeight.name:
      return standOf(inputs);
    case lashHotCold.name:
      return heatOf(inputs);
    case followerRatio.name:
      return followerOf(inputs);
    default:
      return undefined;
  }
}
