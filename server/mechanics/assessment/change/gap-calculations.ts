import { gapAfterOf, gapBeforeOf, gapRow } from '../../consequences/gap-row.ts';
import { type Closest, closestOf } from '../../consequences/piston-gap.ts';
import type { ConsequenceInput, GapRow, KnownGap } from '../../consequences/types.ts';
import type { GapName } from '../evidence.ts';

/** The calculations of gaps, each made once for the same inputs: valves of a side often differ in nothing. */
export interface GapCalculations {
  row(input: ConsequenceInput, name: GapName): GapRow;
  after(input: ConsequenceInput, name: GapName): KnownGap | undefined;
  before(input: ConsequenceInput, name: GapName): KnownGap | undefined;
  closest(input: ConsequenceInput): Closest | undefined;
}

function once<Answer>(work: (input: ConsequenceInput, name: GapName) => Answer) {
  const known = new Map<string, { readonly answer: Answer }>();
  return (input: ConsequenceInput, name: GapName): Answer => {
    const key = `${name} ${JSON.stringify(input)}`;
    const found = known.get(key) ?? { answer: work(input, name) };
    known.set(key, found);
    return found.answer;
  };
}

/** Remembers for as long as one change is worked out. */
export function gapCalculations(): GapCalculations {
  const closest = once((input) => closestOf(input));
  return {
    row: once(gapRow),
    after: once(gapAfterOf),
    before: once(gapBeforeOf),
    closest: (input) => closest(input, 'piston-to-valve'),
  };
}
