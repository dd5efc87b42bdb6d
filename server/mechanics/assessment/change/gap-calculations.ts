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

type TextOf = (input: ConsequenceInput) => string;

/** The text of inputs, which are asked for every gap: each is written once. */
function textsOf(): TextOf {
  const texts = new WeakMap<ConsequenceInput, string>();
  return (input) => {
    const text = texts.get(input) ?? JSON.stringify(input);
    texts.set(input, text);
    return text;
  };
}

function onceAlike<Answer>(textOf: TextOf, work: (input: ConsequenceInput, name: GapName) => Answer) {
  const known = new Map<string, { readonly answer: Answer }>();
  return (input: ConsequenceInput, name: GapName): Answer => {
    const key = `${name} ${textOf(input)}`;
    const found = known.get(key) ?? { answer: work(input, name) };
    known.set(key, found);
    return found.answer;
  };
}

/** Remembers for as long as one change is worked out. */
export function gapCalculations(): GapCalculations {
  const textOf = textsOf();
  const closest = onceAlike(textOf, (input) => closestOf(input));
  return {
    row: onceAlike(textOf, gapRow),
    after: onceAlike(textOf, gapAfterOf),
    before: onceAlike(textOf, gapBeforeOf),
    closest: (input) => closest(input, 'piston-to-valve'),
  };
}
