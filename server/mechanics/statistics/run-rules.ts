import type { ControlChart, Limits } from './control-limits.ts';

/** What a chart can show that chance alone seldom does. */
export const RULES = [
  'beyond-limits',
  'two-of-three-beyond-two-sigma',
  'four-of-five-beyond-one-sigma',
  'eight-on-one-side',
  'range-beyond-limits',
] as const;

type Rule = (typeof RULES)[number];

/** The point that completes a pattern, and which. */
interface Signal {
  readonly index: number;
  readonly rule: Rule;
}

interface RunRule {
  readonly rule: Rule;
  /** This many of the last so many are past so many sigma on one side. */
  readonly enough: number;
  readonly ofLast: number;
  readonly past: number;
}

const RUN_RULES: readonly RunRule[] = [
  { rule: 'two-of-three-beyond-two-sigma', enough: 2, ofLast: 3, past: 2 },
  { rule: 'four-of-five-beyond-one-sigma', enough: 4, ofLast: 5, past: 1 },
  { rule: 'eight-on-one-side', enough: 8, ofLast: 8, past: 0 },
];

/** A rounding in the last digits puts nothing past a line. */
const slackOf = ({ lower, upper }: Limits): number => 1e-12 * Math.max(Math.abs(lower), Math.abs(upper));

const isBeyond = (value: number, limits: Limits): boolean =>
  value < limits.lower - slackOf(limits) || value > limits.upper + slackOf(limits);

/** On which side of the centre a value is past the line: 1 above, −1 below, 0 on neither. */
function sideOf(value: number, centre: number, line: number, slack: number): number {
  if (value > centre + line + slack) return 1;
  return value < centre - line - slack ? -1 : 0;
}

function completing(
  { means, centre, limits }: ControlChart,
  { rule, enough, ofLast, past }: RunRule,
): Signal[] {
  const line = (past * (limits.mean.upper - centre.mean)) / 3;
  const sides = means.map((value) => sideOf(value, centre.mean, line, slackOf(limits.mean)));
  const found: Signal[] = [];
  let above = 0;
  let below = 0;
  for (const [index, side] of sides.entries()) {
    const left = sides[index - ofLast] ?? 0;
    above += Number(side === 1) - Number(left === 1);
    below += Number(side === -1) - Number(left === -1);
    if (side !== 0 && (side === 1 ? above : below) >= enough) found.push({ index, rule });
  }
  return found;
}

/**
 * Points of a chart that call for a look, each with the pattern it completes.
 *
 * Equation: beyond ±3σ; two of three beyond 2σ, four of five beyond 1σ or eight in a row on one side; σ a third of
 * the way from centre to limit; a range beyond its limits
 *
 * @param chart [any] means, ranges, centre lines and limits
 * @returns signals [1] in the order of their points
 *
 * Validity: about one false call in ninety points with all four rules on normal values.
 * Source: NIST/SEMATECH e-Handbook, 6.3.2 (the four zone rules and their run length 91.75; from memory).
 */
export function signalsOf(chart: ControlChart): Signal[] {
  const beyond = chart.means.flatMap((value, index): Signal[] =>
    isBeyond(value, chart.limits.mean) ? [{ index, rule: 'beyond-limits' }] : [],
  );
  const ranges = chart.ranges.flatMap((value, index): Signal[] =>
    isBeyond(value, chart.limits.range)
      ? [{ index: index + chart.firstRange, rule: 'range-beyond-limits' }]
      : [],
  );
  const runs = RUN_RULES.flatMap((rule) => completing(chart, rule));
  return [...beyond, ...runs, ...ranges].toSorted(
    (a, b) => a.index - b.index || RULES.indexOf(a.rule) - RULES.indexOf(b.rule),
  );
}
