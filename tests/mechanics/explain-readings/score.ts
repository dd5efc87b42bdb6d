import { explainReadings } from '../../../server/mechanics/explain-readings/explain.ts';
import type { ExplainInput } from '../../../server/mechanics/explain-readings/types.ts';
import { chanceFrom } from './random.ts';
import { type Asked, drawCall, NAMES, type TrueCall, takeReadings } from './simulated-call.ts';

/** The three sets of readings of the design note. */
export const READING_SETS: Readonly<Record<'1' | '5' | 'L', (call: TrueCall) => Asked[]>> = {
  1: (call) => [plain(call)],
  5: (call) => [
    plain(call),
    plain(call),
    { of: 'lobe-lift' },
    { ...plain(call), lashSet: true },
    { ...plain(call), lashSet: true, atLobeLift: 0.2 },
  ],
  L: (call) => [
    plain(call),
    { of: 'valve-lift', spring: 'light', lifter: 'solid', setUp: 1 },
    { of: 'valve-lift', spring: 'light', lifter: 'solid', setUp: 1, aligned: true, counted: true },
  ],
};

function plain(call: TrueCall): Asked {
  return { of: 'valve-lift', spring: call.spring, lifter: call.lifter };
}

export interface Score {
  readonly calls: number;
  readonly nameRight: number;
  /** The name nearest to valve lift over card: what one would say without the model. */
  readonly nearestRight: number;
  readonly ratioHeld: number;
  /** Mean half-width of the interval, share of the ratio. */
  readonly halfWidth: number;
  /** Of the calls whose best name was given .7 to .9, and .9 or more: how many, mean said, share right. */
  readonly said70: { readonly count: number; readonly said: number; readonly right: number };
  readonly said90: { readonly count: number; readonly said: number; readonly right: number };
}

function nearestName(ratio: number): number {
  return NAMES.reduce<number>(
    (best, name) => (Math.abs(name - ratio) < Math.abs(best - ratio) ? name : best),
    NAMES[0],
  );
}

function bucket(rows: readonly { said: number; right: boolean }[]) {
  const count = rows.length;
  return {
    count,
    said: rows.reduce((sum, row) => sum + row.said, 0) / count,
    right: rows.filter((row) => row.right).length / count,
  };
}

/** Simulates calls with one set of readings and scores the answers. */
export function scoreReadings(set: '1' | '5' | 'L', calls: number, seed: number): Score {
  const chance = chanceFrom(seed);
  const rows = Array.from({ length: calls }, () => {
    const call = drawCall(chance);
    const readings = takeReadings(chance, call, READING_SETS[set](call));
    const input: ExplainInput = { ...call.said, readings };
    const result = explainReadings(input);
    const best = result.nominals.reduce((a, b) => (b.probability > a.probability ? b : a));
    const lifts = readings
      .filter((r) => r.of === 'valve-lift' && r.atLobeLift === undefined)
      .map((r) => r.value);
    const mean = lifts.reduce((sum, lift) => sum + lift, 0) / lifts.length;
    const [low, high] = result.ratio.interval95;
    return {
      said: best.probability,
      right: call.listed && best.ratio === call.name,
      nearest: call.listed && nearestName(mean / (input.cardLobeLift ?? 1)) === call.name,
      held: low <= call.ratio && call.ratio <= high,
      half: (high - low) / 2 / result.ratio.median,
    };
  });
  const share = (test: (row: (typeof rows)[number]) => boolean) => rows.filter(test).length / calls;
  return {
    calls,
    nameRight: share((row) => row.right),
    nearestRight: share((row) => row.nearest),
    ratioHeld: share((row) => row.held),
    halfWidth: rows.reduce((sum, row) => sum + row.half, 0) / calls,
    said70: bucket(rows.filter((row) => row.said >= 0.7 && row.said < 0.9)),
    said90: bucket(rows.filter((row) => row.said >= 0.9)),
  };
}
