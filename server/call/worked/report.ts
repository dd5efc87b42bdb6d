import { z } from 'zod';
import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { inSpoken } from '../../../shared/quantities/authored.ts';
import { spokenUnits } from '../../../shared/quantities/spoken-units.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { Fact } from '../../../views/parts/facts.examples.ts';
import type { Registered } from '../../compute/registry.ts';
import { answerParts } from '../../compute-forms/answer/answer-parts.ts';
import { shownValue } from '../../compute-forms/answer/value-text.ts';
import { controlsOf } from '../../compute-forms/form/controls-of.ts';
import { leavesOf } from '../../compute-forms/form/leaves.ts';
import { typedOf } from '../../compute-forms/form/typed-of.ts';
import { drawingsOf } from '../../drawings/registry.ts';
import type { Working } from '../../records/workings/workings.ts';
import { drawingComponent, tableComponent } from '../../web/components.ts';
import { momentText } from '../../web/dates.ts';
import type { CallContext } from '../context.ts';
import {
  besideWideComponent,
  columnComponent,
  runComponents,
  saidComponents,
  sectionComponent,
  withoutTable,
} from '../report-parts.ts';
import { isStopped } from '../under-stop.ts';
import { inputLabel, inputWord } from './input-words.ts';
import { withoutWay } from './kept-answer.ts';
import { answerOf, type Computations, workingText } from './text.ts';
import { besideSaid, NOT_HELD, outdatedSaid } from './told.ts';

/** As many rows of an answer as are read on paper; the export has them all. */
const MOST_ROWS = 8;

function inputFacts(each: Registered, inputs: unknown): Fact[] {
  const body = z.record(z.string(), z.unknown()).safeParse(inputs).data ?? {};
  const controls = controlsOf(each.input);
  const typed = typedOf(controls, body);
  return leavesOf(controls, typed).flatMap(({ name, label }) => {
    const value = typed[name]?.trim().replaceAll('\n', '; ') ?? '';
    return value === '' ? [] : [{ label: inputLabel(name, label), value: inputWord(value) }];
  });
}

/** What goes with the kept answers, each once. */
export const workingCautions = (workings: readonly Working[]): string[] =>
  workings.flatMap((working) => (answerOf(working)?.cautions ?? []).map(inSpoken));

const byWhom = ({ seq, by, at, revision }: Working) =>
  `line ${seq}, ${by}, ${momentText(at)}, build revision ${revision}`;

interface HowShown {
  readonly drawn: boolean;
  readonly mayTurn: boolean;
  /** What differs from the build, where what came out is not shown. */
  readonly outdated: string | undefined;
  /** What differs, where its figures may be meant for something else. */
  readonly beside: string | undefined;
}

/** One computation as it was kept: what went in, what came out, its drawing. */
function workingComponents(
  each: Registered,
  working: Working,
  { drawn, mayTurn, outdated, beside }: HowShown,
): Component[] {
  const answer = answerOf(working);
  if (answer === undefined) return [];
  if (outdated !== undefined)
    return [
      columnComponent(
        ...runComponents(each.title, [
          { label: 'Answer', value: `${NOT_HELD} ${outdated}` },
          { label: 'kept on', value: byWhom(working) },
        ]),
      ),
    ];
  const { scalars, tables } = answerParts(each.output, mayTurn ? answer.result : withoutWay(answer.result));
  const cameOut = scalars.map(({ label, value }) => ({ label, value: shownValue(value) }));
  const short = tables.filter(({ rows }) => rows.length > 0 && rows.length <= MOST_ROWS);
  const long = tables.filter(({ rows }) => rows.length > MOST_ROWS);
  const drawings = drawingsOf(each, working.inputs, answer.result, spokenUnits()).map((drawing, index) =>
    drawingComponent({ ...withoutTable(drawing), id: `working-${working.seq}-${index}` }),
  );
  const words = columnComponent(
    ...runComponents(each.title, [
      ...inputFacts(each, working.inputs).map(({ value, ...fact }) => ({
        ...fact,
        value: asEntered(value),
        note: 'went in',
      })),
      ...cameOut,
      ...long.map(({ caption, rows }) => ({ label: caption, value: `${rows.length} rows, in the export` })),
      ...(beside === undefined ? [] : [{ label: 'Differs from the build', value: beside }]),
      { label: 'kept on', value: byWhom(working) },
    ]),
    ...short.map(tableComponent),
  );
  return drawn ? [besideWideComponent(words, ...drawings.slice(0, 1))] : [words];
}

/** What no longer counts, with the reason: it stays on record. */
function struckOnes({ record: { workings } }: CallContext, computations: Computations): string[] {
  return workings.flatMap((working) => {
    const later = struckBy(workings, working);
    return later === undefined
      ? []
      : [`${workingText(computations, working)} (${byWhom(working)}), ${later}`];
  });
}

/** What struck it out: why, and who. */
export function struckBy(workings: readonly Working[], { replacedBy }: Working): string | undefined {
  const later = workings.find(({ id }) => id === replacedBy);
  return later === undefined ? undefined : `struck out by ${later.by}: ${later.reason}`;
}

/** The newest working of each computation in full, older ones by their figure. */
export function workingsReport(
  context: CallContext,
  workings: readonly Working[],
  computations: Computations,
): Component[] {
  const { plan } = context;
  const mayTurn = !isStopped(context);
  const newest = new Map(workings.map((working) => [working.computation, working]));
  const struck = struckOnes(context, computations);
  if (newest.size === 0 && struck.length === 0) return [];
  // Where a working answers the call by itself it is drawn; for other goals it is an aside, and told in words.
  const drawn = mayTurn && plan.report.includes('workings') && plan.logFirst !== true;
  const older = workings.filter((working) => newest.get(working.computation) !== working);
  return [
    sectionComponent('Geometry, timing and adjusters', [
      ...[...newest.values()].flatMap((working) => {
        const each = computations.get(working.computation);
        return each === undefined
          ? []
          : workingComponents(each, working, {
              drawn,
              mayTurn,
              outdated: outdatedSaid(context, working),
              beside: besideSaid(context, working),
            });
      }),
      ...saidComponents(
        'Worked out before',
        older.map(
          (working) =>
            `${workingText(computations, working, outdatedSaid(context, working))} (${byWhom(working)})`,
        ),
      ),
      ...saidComponents('Struck out', struck),
    ]),
  ];
}
