import type {
  Bounds,
  Evidence,
  ScanEvidence,
  TipMarkEvidence,
  WorkingEvidence,
} from '../../../../server/mechanics/assessment/evidence.ts';
import { DEG, IN, LBF, LBF_PER_IN } from '../../../../server/mechanics/kit/si.ts';

/* Marks on the tips, scans over the crank, and figures of the description. Engines and figures are invented. */

const EVEN = [4, 6, 8, 10, 12, 14, 16];

/** Gaps that are least at 10° after top dead centre, and rise from there as they mostly do. */
const rising =
  (least: number) =>
  (degrees: number): Bounds => ({ value: (least + 0.0002 * (degrees - 10) ** 2) * IN });

function scanOf(
  line: number,
  gap: (degrees: number) => Bounds,
  more: Partial<ScanEvidence> = {},
  degrees: readonly number[] = EVEN,
): ScanEvidence {
  return {
    ...{
      id: `scan-${line}`,
      line,
      standing: true,
      cylinder: 1,
      valve: 'intake',
      readAs: 'gaps over the crank',
    },
    points: degrees.map((each) => ({ crankAngle: each * DEG, gap: gap(each), readAs: 'as read' })),
    ...{ tool: 'indicator', spring: 'light', lifter: 'solid', lash: 'zero', arms: 'these' },
    ...more,
  };
}

/** Between two gauges everywhere. */
const between =
  (low: number | undefined, high: number | undefined) =>
  (degrees: number): Bounds => ({
    ...(low === undefined ? {} : { low: (low + 0.0002 * (degrees - 10) ** 2) * IN }),
    ...(high === undefined ? {} : { high: (high + 0.0002 * (degrees - 10) ** 2) * IN }),
  });

/** Figures, and a gauge at one angle. */
const gauged =
  (least: number, at: number, gauge: Bounds) =>
  (degrees: number): Bounds =>
    degrees === at ? gauge : rising(least)(degrees);

const lifted = (...entryIds: readonly string[]) => ({
  goal: 'verify-ratio' as const,
  ...({ contact: 'none', engineState: 'apart', closed: false } as const),
  stopsLifted: entryIds.map((entryId) => ({ stopId: 'stop:gap-short:1-intake', entryId })),
});

const solid = { cylinders: 8, lifter: 'solid-flat', mounting: 'stud' } as const;

const mark = (
  line: number,
  side: TipMarkEvidence['side'],
  inches: number,
  more: Partial<TipMarkEvidence> = {},
): TipMarkEvidence => ({
  ...{ id: `mark-${line}`, line, standing: true, cylinder: 1, valve: 'intake', readAs: 'as read' },
  ...{ width: 0.04 * IN, side, pushrod: inches * IN, off: 0.02 * IN },
  ...more,
});
const stand = (line: number, shim: number): WorkingEvidence => ({
  id: `stand-${line}`,
  line,
  computation: 'stand-height',
  set: { of: 'stand', netLift: 0.56 * IN, pivotToTip: 1.45 * IN, shim: shim * IN },
});

const SCANS: readonly Partial<Evidence>[] = [
  // The same valve twice: short, and its stop lifted to read it again.
  ...[lifted('scan-1'), lifted('scan-2'), lifted('scan-7'), lifted()].map((call) => ({
    call,
    engine: solid,
    scans: [scanOf(1, rising(0.06)), scanOf(2, rising(0.095))],
  })),
  {
    engine: solid,
    scans: [
      scanOf(1, rising(0.06)),
      scanOf(2, rising(0.095)),
      scanOf(3, rising(0.12)),
      scanOf(4, rising(0.06), { valve: 'exhaust' }),
      scanOf(5, rising(0.12), { valve: 'exhaust' }),
    ],
  },
  // A lifter that sinks reads larger than a solid one.
  ...(['hydraulic', 'locked', 'solid'] as const).map((lifter) => ({
    engine: { cylinders: 8, lifter: 'hydraulic-flat', mounting: 'stud' } as const,
    scans: [
      scanOf(1, rising(0.06), { lifter: 'hydraulic' }),
      scanOf(2, rising(0.095), { lifter, spring: 'light' }),
      scanOf(3, rising(0.1), { lifter, spring: 'running' }),
    ],
  })),
  // A column that was copied, on a valve of the same side and of the other.
  ...(['intake', 'exhaust'] as const).map((valve) => ({
    engine: solid,
    scans: [scanOf(1, rising(0.09)), scanOf(2, rising(0.09), { cylinder: 2, valve })],
  })),
  { scans: [scanOf(1, rising(0.09), {}, [8, 10]), scanOf(2, rising(0.09), { cylinder: 2 }, [8, 10])] },
  {
    scans: [scanOf(1, rising(0.09), {}, [8, 10, 12]), scanOf(2, rising(0.09), { cylinder: 2 }, [8, 10, 12])],
  },
  // Between gauges all the way, as far as they go.
  ...[between(0.08, 0.09), between(0.08, undefined), between(undefined, 0.09)].map((gap) => ({
    scans: [scanOf(1, gap)],
  })),
  { scans: [scanOf(1, between(0.08, 0.09), { lash: 'set', lashSetting: 0.016 * IN })] },
  { scans: [scanOf(1, gauged(0.09, 10, { low: 0.07 * IN, high: 0.075 * IN }))] },
  { scans: [scanOf(1, gauged(0.09, 10, { high: 0.075 * IN }), {}, [0, ...EVEN, 20])] },
  {
    scans: [
      {
        ...scanOf(1, rising(0.09)),
        points: [
          ...[0.085, 0.08].map((high) => ({
            crankAngle: 10 * DEG,
            gap: { high: high * IN },
            readAs: 'no go',
          })),
          ...scanOf(1, rising(0.09)).points,
        ],
      },
    ],
  },
  // Steps that are wide, uneven, and a least at an end.
  ...[
    [0, 9, 20],
    [0, 8, 10, 17],
    [2, 9, 10, 11, 20],
    [10, 12, 14],
    [4, 6, 8, 10],
    [9.5, 10, 16, 20],
  ].map((degrees) => ({
    engine: solid,
    scans: [scanOf(1, rising(0.09), {}, degrees), scanOf(2, rising(0.11), { valve: 'exhaust' }, degrees)],
  })),
  ...(['not-said', 'set', 'zero'] as const).map((lash) => ({
    engine: solid,
    scans: [
      scanOf(1, rising(0.09), { lash }),
      scanOf(2, rising(0.09), { cylinder: 2, lash, lashSetting: 0.016 * IN }),
    ],
  })),
  // A reading that stands apart, and one below nothing.
  { scans: [scanOf(1, (degrees) => rising(degrees === 12 ? 0.11 : 0.09)(degrees))] },
  { scans: [scanOf(1, (degrees) => rising(degrees === 10 ? 0.07 : 0.09)(degrees))] },
  { scans: [scanOf(1, (degrees) => (degrees === 8 ? { value: -0.01 * IN } : rising(0.09)(degrees)))] },
];

const MARKS: readonly Partial<Evidence>[] = [
  // Marks of one valve on both sides of the middle, two and three, and on a finger follower.
  ...([undefined, 'finger-follower', 'cam-rocker'] as const).flatMap((gear) =>
    [2, 3].map((count) => ({
      engine: { ...solid, ...(gear === undefined ? {} : { gear }) },
      tipMarks: [
        mark(1, 'valley', 7.75),
        mark(2, 'exhaust', 7.75),
        mark(3, 'valley', 7.75, { width: 0.06 * IN }),
      ].slice(0, count),
    })),
  ),
  {
    engine: solid,
    pushrods: { intake: 7.75 * IN, over: 'ends', taken: 'caliper' },
    tipMarks: [
      mark(1, 'valley', 7.75),
      mark(2, 'centred', 7.85, { pushrodOver: 'gauge', off: 0 }),
      mark(3, 'exhaust', 7.9, { cylinder: 2 }),
    ],
  },
  // A stand that is off by its heights, and marks that say so or otherwise.
  ...[0.03, -0.03, 0].map((shim) => ({
    engine: { ...solid, mounting: 'pedestal' } as const,
    rockers: { soldAs: 1.6, pivotToTip: 1.45 * IN },
    tipMarks: [
      mark(1, 'valley', 7.75, { shims: 0 }),
      mark(2, 'exhaust', 7.75, { cylinder: 2, shims: 0.03 * IN }),
      mark(3, 'centred', 7.75, { cylinder: 3, off: 0 }),
    ],
    workings: [stand(4, shim)],
  })),
  // Fresh ink and marks that have run; wide, past the stem, sideways.
  {
    engine: solid,
    card: { intake: { lobeLift: 0.35 * IN, valveLift: 0.56 * IN }, exhaust: {} },
    rockers: { soldAs: 1.6, pivotToTip: 1.45 * IN },
    tipMarks: [
      mark(1, 'valley', 7.7, { found: 'fresh-ink', stem: 0.342 * IN }),
      mark(2, 'valley', 7.75, { found: 'fresh-ink', off: 0.01 * IN }),
      mark(3, 'exhaust', 7.8, { found: 'fresh-ink', off: 0.01 * IN }),
      mark(4, 'valley', 7.75, { found: 'after-running', width: 0.12 * IN }),
      mark(5, 'sideways', 7.75, { cylinder: 2 }),
      mark(6, 'valley', 7.7, { cylinder: 3, valve: 'exhaust' }),
      mark(7, 'centred', 7.8, { cylinder: 3, valve: 'exhaust', off: 0, width: 0.09 * IN }),
    ],
  },
];

const FIGURES: readonly Partial<Evidence>[] = [
  ...([undefined, 'metric'] as const).map((units) => ({
    call: { ...lifted(), ...(units === undefined ? {} : { units }) },
    engine: { ...solid, stroke: 3.48 * IN, rodLength: 10 * IN },
    springs: {
      ...{ installedHeight: 1.8 * IN, solidHeight: 1.9 * IN },
      ...{ seatLoad: 900 * LBF, rate: 20 * LBF_PER_IN },
    },
  })),
  ...(['caliper', 'micrometer', 'rule', 'guess', 'stamped', 'told', undefined] as const).map((taken) => ({
    pushrods: {
      ...{ intake: 7.75 * IN, exhaust: 7.8 * IN },
      ...(taken === undefined ? {} : { taken }),
      ...(taken === 'rule' || taken === 'stamped' ? { over: 'gauge' as const } : {}),
    },
  })),
];

export const OF_MARKS_AND_SCANS: readonly Partial<Evidence>[] = [...SCANS, ...MARKS, ...FIGURES];
