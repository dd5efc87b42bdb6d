import type { Component } from '../../../views/parts/part.ts';
import type { Explained } from '../../assessment/ratio/explain.ts';
import type { SetUpRatio } from '../../assessment/ratio/ratio.ts';
import type { CallContext } from '../../call/context.ts';
import { said, textOf, withoutNote } from '../../call/report-parts.ts';
import { ASK } from './cause-words.ts';
import { explanationsTable, leadComponent } from './explanations.ts';
import { nextReadingComponents } from './next-reading.ts';

/** The likeliest few; the step shows more. */
const MOST = 3;

/** What would have to be true, and the next reading worth taking with what each outcome would mean. */
export function explainedComponents(
  context: CallContext,
  found: SetUpRatio,
  explained: Explained | undefined,
): Component[] {
  if (explained === undefined) return [];
  const likely = { ...explained, explanations: explained.explanations.slice(0, MOST) };
  const next = nextReadingComponents(context, found.setUp, explained, undefined);
  return [
    // What follows the first of the next reading’s leads to a form, and paper has none.
    ...said('What would explain the readings', [
      textOf(leadComponent(explained, found.setUp.method.spring)),
      ...next.slots.slice(0, 1).map(textOf),
    ]),
    withoutNote(explanationsTable(likely)),
  ];
}

/** The next reading of a set-up as one sentence. */
export const nextOfSetUp = ({ nextReading: next }: Explained): string | undefined =>
  next === undefined ? undefined : `${ASK[next.action]} About ${next.minutes} min.`;
