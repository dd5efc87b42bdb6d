import { consequencesOf, type SetUpConsequences } from '../../assessment/consequences/consequences.ts';
import { chosenBySide } from '../../call/chosen-set-up.ts';
import type { CallContext } from '../../call/context.ts';
import type { StepSource } from '../../call/step.ts';

/** What the ratio of each set-up does. */
export type ConsequencesBySetUp = ReadonlyMap<string, SetUpConsequences>;

export const loadConsequences = ({ context: { record } }: StepSource): ConsequencesBySetUp =>
  new Map(record.setUps.map(({ id }) => [id, consequencesOf(record, id)]));

/** Of each side that has something to say, what its ratio does. */
export const bySide = (context: CallContext, all: ConsequencesBySetUp): SetUpConsequences[] =>
  chosenBySide(context).flatMap(({ setUp }) => {
    const each = all.get(setUp.id);
    if (each === undefined) return [];
    return each.input.after !== undefined || each.gaps.some((gap) => gap.before ?? gap.after) ? [each] : [];
  });
