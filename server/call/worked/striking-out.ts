import type { Component } from '../../../views/parts/components.ts';
import { strikeWorking, type Working } from '../../records/workings/workings.ts';
import type { CallContext } from '../context.ts';
import type { EntryCorrection } from '../step-correction.ts';
import { type KeptLine, keptLinesTable, strikesOut } from '../strike-out.ts';
import { countedWorkings } from './counted.ts';
import { struckBy } from './report.ts';
import { type Computations, workingText } from './text.ts';
import { outdatedSaid } from './told.ts';

const linesOf = (step: string) => ({ path: `/workings/${step}`, step });

const lineOf = (computations: Computations, all: readonly Working[], working: Working): KeptLine => ({
  id: working.id,
  seq: working.seq,
  text: workingText(computations, working),
  by: working.by,
  at: working.at,
  struck: struckBy(all, working),
});

const isStrikingOut = ({ struck }: Working): boolean => struck;

/** Computations that were kept, newest first. */
export function workingsTable(
  context: CallContext,
  step: string,
  computations: Computations,
  of: (working: Working) => boolean = () => true,
): Component[] {
  const { assessment, record } = context;
  const all = countedWorkings({ assessment, workings: record.workings }, computations);
  const shown = all.filter((working) => !isStrikingOut(working) && of(working)).toReversed();
  return keptLinesTable(
    context,
    linesOf(step),
    { caption: 'Computed and kept', text: 'Computed' },
    shown.map((working) => ({
      ...lineOf(computations, all, working),
      text: workingText(computations, working, outdatedSaid(context, working)),
    })),
  );
}

/** A kept computation struck out with its reason, from a page of this step. */
export const strikesWorkings = (step: string): EntryCorrection =>
  strikesOut({
    ...linesOf(step),
    form: 'strike-working',
    param: 'workingId',
    missing: 'reading',
    hint: 'Such as “counted from the wrong mark”. What was right is computed and kept once more.',
    entries: ({ workings }) => workings,
    find({ context, computations }, id) {
      const working = context.workings.find((each) => each.id === id);
      return working === undefined ? undefined : lineOf(computations, context.record.workings, working);
    },
    strike: ({ tx, principal, call }, id, input) => strikeWorking(tx, principal, call.buildId, id, input),
  });
