import { allowance } from '../../kit/allowances.ts';
import { passesApart } from '../../valve-sheet/apart.ts';
import { together } from '../../valve-sheet/figures.ts';
import type { SheetEvidence } from '../evidence.ts';
import { inches } from './said.ts';

/** What readings of one thing, taken with one arm on one spring, come to. */
export interface LotFigure {
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
  readonly passes: number;
  readonly spread?: number;
  /** Passes that stand apart from the others and are not in the figure. */
  readonly apart: readonly { readonly entryId: string; readonly off: number; readonly turns: number }[];
  /** Passes that do not go together, and nothing says which is right. */
  readonly undecided?: true;
  readonly lacks: readonly string[];
}

const rangeOf = (values: readonly number[]) => ({ low: Math.min(...values), high: Math.max(...values) });

/** A hydraulic lifter sinks from pass to pass: where its passes lie apart, no mean of them is a lift. */
function sinks(readings: readonly SheetEvidence[], spread: number, allowed: number): boolean {
  return spread > allowed && readings.some(({ lifter }) => lifter === 'hydraulic');
}

/**
 * Readings of one thing together. Figures that go together are averaged; a pass that stands apart is named and left
 * out; where nobody can say which of them is apart, or a lifter sinks, only the range is left. Bounds stay bounds.
 */
export function figureOf(readings: readonly SheetEvidence[], perTurn: number): LotFigure {
  const allowed = allowance('repeat');
  const passes = readings.map(({ reading }) => reading);
  const bounded = passes.some(({ value }) => value === undefined);
  if (bounded) {
    const { spread: _, ...bounds } = together(passes, true) ?? { passes: 0 };
    return { ...bounds, apart: [], lacks: [] };
  }
  const values = passes.flatMap(({ value }) => (value === undefined ? [] : [value]));
  const { low, high } = rangeOf(values);
  const base = { passes: values.length, ...(values.length > 1 ? { spread: high - low } : {}) };
  const found = passesApart(values, perTurn, allowed);
  if (sinks(readings, high - low, allowed + 1e-12))
    return {
      ...base,
      low,
      high,
      apart: [],
      lacks: [
        'passes on a solid lifter, or one locked solid: on this one they sink, and their mean says nothing',
      ],
    };
  if (found.undecided)
    return {
      ...base,
      low,
      high,
      apart: [],
      undecided: true,
      lacks: [`one more pass: these lie ${inches(high - low)} apart, and nothing says which is right`],
    };
  const kept = found.together.map((index) => values[index] ?? 0);
  return {
    ...base,
    value: kept.reduce((sum, each) => sum + each, 0) / kept.length,
    apart: found.apart.flatMap(({ index, off, turns }) => {
      const entry = readings[index];
      return entry === undefined ? [] : [{ entryId: entry.id, off, turns }];
    }),
    lacks: [],
  };
}
