import { z } from 'zod';
import type { Registered } from '../../compute/registry.ts';
import { answerParts } from '../../compute-forms/answer/answer-parts.ts';
import { headlineOf } from '../../compute-forms/answer/headline.ts';
import type { Working } from '../../records/workings/workings.ts';
import type { CallContext } from '../context.ts';
import { isInFound, outdatedSaid } from './told.ts';

export type Computations = ReadonlyMap<string, Registered>;

const kept = z.object({ result: z.unknown(), cautions: z.array(z.string()) });
type Kept = z.output<typeof kept>;

/** What was kept as its answer. */
export const answerOf = ({ answer }: Working): Kept | undefined => kept.safeParse(answer).data;

/** The value of a working that is read out: `Sweep .0575 in`; of one that the build has gone past only that it has. */
export function workingText(computations: Computations, working: Working, outdated?: string): string {
  const each = computations.get(working.computation);
  if (outdated !== undefined) return `${each?.title ?? working.computation}: what came out is not shown`;
  const answer = answerOf(working);
  if (each === undefined || answer === undefined) return working.computation.replaceAll('-', ' ');
  const { scalars } = answerParts(each.output, answer.result);
  const leading = headlineOf(each, working.inputs, scalars);
  const figure = [leading?.figure, leading?.unit].filter((part) => part !== undefined).join(' ');
  const said = leading === undefined ? '' : `: ${leading.of.label.toLowerCase()} ${figure}`;
  return `${each.title}${said}`;
}

/** As many of them as are read at a glance. */
const FEW = 4;

/** The newest of each computation by its figure, where it is not told among what was found. */
export function workingLines(
  context: CallContext,
  workings: readonly Working[],
  computations: Computations,
): string[] {
  const others = workings.filter((working) => !isInFound(working));
  const newest = new Map(others.map((working) => [working.computation, working]));
  return [...newest.values()]
    .slice(-FEW)
    .map((working) => `${workingText(computations, working, outdatedSaid(context, working))}.`);
}
