import { follow } from './follow.ts';
import { chanceFrom } from './random.ts';
import { drawCall } from './simulated-call.ts';

export interface FollowedScore {
  readonly calls: number;
  readonly steps: number;
  readonly minutes: number;
  readonly nameRight: number;
  readonly ratioHeld: number;
  /** The median lies within 1.5 % of the true ratio. */
  readonly near: number;
  readonly settled: number;
  readonly settledRight: number;
  readonly agrees: number;
  /** Of those said to agree with the mark: truly within 2 % of it. */
  readonly agreesTrue: number;
  readonly differs: number;
  readonly differsTrue: number;
}

function run(seed: number, calls: number) {
  const chance = chanceFrom(seed);
  return Array.from({ length: calls }, () => {
    const call = drawCall(chance);
    const { result, steps, minutes } = follow(chance, call);
    const best = result.nominals.reduce((a, b) => (b.probability > a.probability ? b : a));
    const [low, high] = result.ratio.interval95;
    const mark = call.said.mark ?? Number.NaN;
    return {
      steps,
      minutes,
      right: call.listed && best.ratio === call.name,
      held: low <= call.ratio && call.ratio <= high,
      near: Math.abs(result.ratio.median / call.ratio - 1) <= 0.015,
      settled: result.settled,
      verdict: result.againstMark,
      withinMark: Math.abs(call.ratio / mark - 1) <= 0.02,
    };
  });
}

/** Follows simulated calls to the end and scores where they arrive. */
export function scoreFollowed(calls: number, seed: number): FollowedScore {
  const rows = run(seed, calls);
  type Row = (typeof rows)[number];
  const mean = (of: (row: Row) => number, among: readonly Row[] = rows) =>
    among.length === 0 ? Number.NaN : among.reduce((sum, row) => sum + of(row), 0) / among.length;
  const share = (test: (row: Row) => boolean, among: readonly Row[] = rows) =>
    mean((row) => (test(row) ? 1 : 0), among);
  const settled = rows.filter((row) => row.settled);
  const agrees = rows.filter((row) => row.verdict === 'agrees');
  const differs = rows.filter((row) => row.verdict === 'differs');
  return {
    calls,
    steps: mean((row) => row.steps),
    minutes: mean((row) => row.minutes),
    nameRight: share((row) => row.right),
    ratioHeld: share((row) => row.held),
    near: share((row) => row.near),
    settled: share((row) => row.settled),
    settledRight: share((row) => row.right, settled),
    agrees: agrees.length,
    agreesTrue: share((row) => row.withinMark, agrees),
    differs: differs.length,
    differsTrue: share((row) => !row.withinMark, differs),
  };
}
