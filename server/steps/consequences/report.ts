import type { Component } from '../../../views/parts/components.ts';
import { limitsUsed } from '../../assessment/consequences/of-valve.ts';
import type { CallContext } from '../../call/context.ts';
import {
  besideWideComponent,
  filledColumns,
  runComponents,
  saidComponents,
  sectionComponent,
  withoutNote,
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

/** What is not known needs no row of its own on paper. */
const notKnown = ({ gaps }: ChangeDetail): string[] =>
  gaps.flatMap(({ after, title, lacks }) =>
    after === undefined ? [`${title} lacks ${lacks.join(', ')}`] : [],
  );

const figuresComponent = (detail: ChangeDetail): Component =>
  tableComponent(filledColumns(figuresTable(detail)));

/** A side that nothing was read of has no drawing: no valve stands so. */
const figuresComponents = (context: CallContext, detail: ChangeDetail): Component[] =>
  detail.about.of === 'side'
    ? [figuresComponent(detail)]
    : [besideWideComponent(figuresComponent(detail), ...drawingComponents(context, detail))];

const valveComponent = (context: CallContext, detail: ChangeDetail): Component =>
  sectionComponent(`What the ratio does on ${subjectSaid(detail.about)}`, [
    ...saidComponents('Gaps, worst first', toldOf(context, detail)),
    ...runComponents('Ratios', ratioFacts(detail)),
    tableComponent(
      withoutNote(gapsTable({ ...detail, gaps: detail.gaps.filter(({ after }) => after !== undefined) })),
    ),
    ...saidComponents('Not known', notKnown(detail)),
    ...saidComponents('Why', gapReasons(detail)),
    ...figuresComponents(context, detail),
  ]);

const once = (texts: readonly string[]): string[] => [...new Set(texts)];

/** What a ratio does on each valve: before and after, against limits with their sources, and what still lacks. */
export function consequencesReport(context: CallContext): Component[] {
  const details = worstFirst(context.assessment);
  return [
    ...details.map((detail) => valveComponent(context, detail)),
    ...saidComponents('Limits, and where they come from', limitSources(context)),
    ...saidComponents('Adjusters', once(details.map(({ adjusters }) => adjusters))),
    ...saidComponents('Assumptions', once(details.flatMap(({ assumptions }) => assumptions))),
  ];
}
