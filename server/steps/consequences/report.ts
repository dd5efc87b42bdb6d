import type { Component } from '../../../views/parts/components.ts';
import { limitsUsed } from '../../assessment/consequences/of-valve.ts';
import type { CallContext } from '../../call/context.ts';
import {
  besideWideComponent,
  columnComponent,
  filledColumns,
  runComponents,
  saidComponents,
  sectionComponent,
  withoutTable,
} from '../../call/report-parts.ts';
import type { ChangeDetail } from '../../mechanics/assessment/change/detail.ts';
import { subjectSaid } from '../../mechanics/assessment/common/said.ts';
import { drawingComponent, tableComponent } from '../../web/components.ts';
import { figuresTable, gapReasons, gapsTable, ratioFacts } from './figures-tables.ts';
import { judgementsOf, worstFirst } from './judged.ts';
import { marginsDrawing } from './margins-drawing.ts';

/** On paper the drawing stands alone: its table is the one beside it. */
function drawingComponents({ build }: CallContext, detail: ChangeDetail): Component[] {
  const drawing = marginsDrawing(build.spec, detail);
  return drawing === undefined ? [] : [drawingComponent(withoutTable(drawing))];
}

/** The limits that were judged by, each once with where it comes from. */
function limitSources({ record, assessment }: CallContext): string[] {
  const limits = assessment.details.change.flatMap((detail) => limitsUsed(record, detail));
  const bySource = new Map<string, Set<string>>();
  for (const { title, value, source } of limits)
    bySource.set(source, (bySource.get(source) ?? new Set()).add(`${title} ${value.readAs}`));
  return [...bySource].map(([source, named]) => `${[...named].join('; ')}: ${source}.`);
}

/** What is told of the gaps that need somebody; the others stand in the table. */
const toldOf = (context: CallContext, detail: ChangeDetail): string[] =>
  judgementsOf(context.assessment, detail)
    .filter(({ word }) => word !== 'clear')
    .map(({ sentence }) => sentence);

const valveComponent = (context: CallContext, detail: ChangeDetail): Component =>
  sectionComponent(`What the ratio does on ${subjectSaid(detail.about)}`, [
    ...saidComponents('Gaps, worst first', toldOf(context, detail)),
    ...runComponents('Ratios', ratioFacts(detail)),
    tableComponent(gapsTable(detail)),
    besideWideComponent(
      columnComponent(
        tableComponent(filledColumns(figuresTable(detail))),
        ...saidComponents('Why', gapReasons(detail)),
        ...saidComponents('Adjusters', [detail.adjusters]),
      ),
      ...drawingComponents(context, detail),
    ),
  ]);

/** What a ratio does on each valve: before and after, against limits with their sources, and what still lacks. */
export function consequencesReport(context: CallContext): Component[] {
  const details = worstFirst(context.assessment);
  const assumptions = [...new Set(details.flatMap((detail) => detail.assumptions))];
  return [
    ...details.map((detail) => valveComponent(context, detail)),
    ...saidComponents('Limits, and where they come from', limitSources(context)),
    ...saidComponents('Assumptions', assumptions),
  ];
}
