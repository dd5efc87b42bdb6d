import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import { hasShims } from '../common/shimmed.ts';
import type { Evidence } from '../evidence.ts';
import type { NotCovered } from './detail.ts';

/** What a goal of a call may ask for, by id. */
export const GAPS_OF_A_CHANGE = 'not-covered:gaps-of-a-change';
export const PART_NAMED = 'not-covered:part-named';
export const WITHOUT_LASH: readonly string[] = [
  'not-covered:hydraulic-bucket',
  'not-covered:hydraulic-pivot',
];

const said = (code: string, sentence: string, instead: string): NotCovered => ({
  id: `not-covered:${code}`,
  sentence,
  instead,
});

const GAPS = said(
  'gaps-of-a-change',
  'What another cam or another ratio does to springs, valves and pistons is not worked out for an overhead cam.',
  'Room to coil bind, retainer to seal and piston to valve, each measured on this engine with the cam that is to go in, and entered on the sheet.',
);
const PART = said(
  'part-named',
  'A loose bucket, follower or overhead-cam rocker is not named from its sizes.',
  'Its marks word for word and a photograph, put to the part’s maker.',
);
const WEAR = said(
  'wear-of-cam-and-bore',
  'Cam bearings, the bores of buckets and the pivots of followers are not judged.',
  'A qualified shop measures them, against the engine maker’s figures.',
);

const NO_LASH: Readonly<Record<'bucket' | 'follower', NotCovered>> = {
  bucket: said(
    'hydraulic-bucket',
    'Hydraulic buckets have no lash that a shim sets, and a soft or noisy one is not judged.',
    'The engine maker’s own check for a bucket that has gone soft, in a qualified shop.',
  ),
  follower: said(
    'hydraulic-pivot',
    'A hydraulic pivot under the follower takes up the lash by itself; its preload is not worked out.',
    'The engine maker’s fitting height of the pivot, in a qualified shop.',
  ),
};

const THROUGH_LIFT = said(
  'ratio-through-lift',
  'The ratio of this valve gear changes as the contact on the cam moves. One reading at full lift is the ratio at full lift alone, and no mark on a part can be held to it closely.',
  'Valve lift read at several cam lifts; and what the lengths of the arm give, in the step on geometry.',
);

const PIVOT_SCREW = said(
  'turns-at-the-pivot',
  'What a turn of a screw at the follower’s pivot does to the lash is not worked out.',
  'Small steps with a feeler in the gap after each, and the engine maker’s procedure.',
);

const MARK_MOVED = said(
  'mark-moved',
  'What moves the mark on a stem’s tip is not worked out for an overhead-cam rocker: its pivot sets the contact on the cam and the lash as well.',
  'The engine maker’s heights of pivot and valve, in a qualified shop.',
);

/** What is not worked out for the valve gear of this engine, each with what is done instead. */
export function notCovered(evidence: Pick<Evidence, 'engine' | 'lash'>): NotCovered[] {
  const { gear = 'pushrod', lifter } = evidence.engine;
  const hydraulic = isHydraulicLifter(lifter);
  switch (gear) {
    case 'pushrod':
      return [];
    case 'bucket':
      return [GAPS, ...(hydraulic ? [NO_LASH.bucket] : []), PART, WEAR];
    case 'finger-follower':
      return [
        THROUGH_LIFT,
        GAPS,
        ...(hydraulic ? [NO_LASH.follower] : hasShims(evidence) ? [] : [PIVOT_SCREW]),
        PART,
        WEAR,
      ];
    case 'cam-rocker':
      return [THROUGH_LIFT, GAPS, ...(hydraulic ? [NO_LASH.follower] : []), MARK_MOVED, PART, WEAR];
  }
}
