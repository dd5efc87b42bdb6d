import { consequencesOf, type SetUpConsequences } from '../../assessment/consequences/consequences.ts';
import { chosenBySide } from '../../call/chosen-set-up.ts';
import type { CallContext } from '../../call/context.ts';
import type { StepSource } from '../../call/step.ts';

/** What the ratio of each set-up does. */
export type ConsequencesBySetUp = ReadonlyMap<string, SetUpConsequences>;

export async function loadConsequences({ tx, context }: StepSource): Promise<ConsequencesBySetUp> {
  const found = new Map<string, SetUpConsequences>();
  for (const { id } of context.setUps)
    found.set(id, await consequencesOf(tx, context.principal, context.build.id, id));
  return found;
}

/** Of each side that has something to say, what its ratio does. */
export const bySide = (context: CallContext, all: ConsequencesBySetUp): SetUpConsequences[] =>
  chosenBySide(context).flatMap(({ setUp }) => {
    const each = all.get(setUp.id);
    if (each === undefined) return [];
    return each.input.after !== undefined || each.gaps.some((gap) => gap.before ?? gap.after) ? [each] : [];
  });
