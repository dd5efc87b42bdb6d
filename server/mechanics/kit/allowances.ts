import table from '../../../seeds/allowances.json' with { type: 'json' };
import { UNITS } from '../../../shared/quantities/units.ts';

type AllowanceName = keyof typeof table.allowances;

const UNITS_OF_TABLE = { in: UNITS.in.toSi, deg: UNITS.deg.toSi } as const;

/** How far off an input may be, half-width in SI, from the seed table with its source. */
export function allowance(name: AllowanceName): number {
  const { value, unit } = table.allowances[name];
  return value * (unit === 'deg' ? UNITS_OF_TABLE.deg : UNITS_OF_TABLE.in);
}

/** A share of something, from the seed table with its source. */
export const share = (name: keyof typeof table.shares): number => table.shares[name].value;

/** A count, from the seed table with its source. */
export const count = (name: keyof typeof table.counts): number => table.counts[name].value;

export const allowanceSource = (name: AllowanceName): string => table.allowances[name].source;

/** Half-width of a ratio that is only stated, as a share of it. */
export const STATED_RATIO = table.statedRatio;

/** Half-width of a spring's load against the load stated for it, as a share of it. */
export const SPRING_LOAD = table.springLoad;

/** How far an arm that is not measured yet may be from the ratio it is sold as, as shares of it. */
export const PLANNED_RATIO = table.plannedRatio;

/** Open spring load up to which 3/8 studs are commonly used, in pounds. */
export const STUD_LOAD = { ...table.studLoad['3/8'], source: table.studLoad.source };

/** Where a lobe usually peaks, from top dead centre [rad]. */
export const USUAL_CENTRELINE = {
  from: table.usualCentreline.from * UNITS_OF_TABLE.deg,
  to: table.usualCentreline.to * UNITS_OF_TABLE.deg,
} as const;

/** Ratio that a lash is told at the pushrod with, where nobody said one. */
export const USUAL_RATIO = table.usualRatio.value;

const DEFLECTION = table.usualDeflection;

/** What a running spring usually takes off the lift at the valve [m]; unknown mountings have the widest band. */
export function usualDeflection(mounting: 'stud' | 'pedestal' | 'shaft' | undefined): {
  readonly from: number;
  readonly to: number;
  readonly source: string;
} {
  const { from, to } = DEFLECTION[mounting ?? 'stud'];
  return { from: from * UNITS_OF_TABLE.in, to: to * UNITS_OF_TABLE.in, source: DEFLECTION.source };
}

const OF_TOOL: Readonly<Record<string, AllowanceName>> = {
  indicator: 'tool-indicator',
  caliper: 'tool-caliper',
  feeler: 'tool-feeler',
  clay: 'tool-clay',
  rule: 'tool-rule',
  guess: 'tool-guess',
};

/** How far off one figure of a gap may be, by the tool it was read with; of one not said, as of any entry. */
export const toolAllowance = (tool: string): number => allowance(OF_TOOL[tool] ?? 'closed-gap');
