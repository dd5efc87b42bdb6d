import type { Component } from '../../../views/parts/components.ts';
import type { SetUpConsequences } from '../../assessment/consequences/consequences.ts';
import { valveName } from '../../call/context.ts';
import {
  besideWideComponent,
  columnComponent,
  filledColumns,
  runComponents,
  saidComponents,
  sectionComponent,
  withoutTable,
} from '../../call/report-parts.ts';
import { cautionComponent, drawingComponent, tableComponent } from '../../web/components.ts';
import { figuresTable, gapReasons, gapsTable, ratioFacts, STOP } from './figures-tables.ts';
import { marginsDrawing } from './margins-drawing.ts';

/** On paper the drawing stands alone: its table is the one beside it. */
function drawingComponents(found: SetUpConsequences): Component[] {
  const drawing = marginsDrawing(found);
  if (drawing === undefined) return [];
  return [drawingComponent({ ...withoutTable(drawing), id: `margins-${found.found.setUp.number}` })];
}

/** The limits that were judged by, each with where it comes from. */
function limitSources({ limits }: SetUpConsequences): string[] {
  const bySource = new Map<string, string[]>();
  for (const { title, value, source } of limits)
    bySource.set(source, [...(bySource.get(source) ?? []), `${title} ${value.readAs}`]);
  return [...bySource].map(([source, named]) => `${named.join('; ')}: ${source}.`);
}

function sideComponent(found: SetUpConsequences): Component {
  return sectionComponent(`What the ratio does on ${valveName(found.found.setUp)}`, [
    ...(found.stop ? [cautionComponent(STOP)] : []),
    ...runComponents('Ratios', ratioFacts(found)),
    tableComponent(gapsTable(found)),
    besideWideComponent(
      columnComponent(
        tableComponent(filledColumns(figuresTable(found))),
        ...saidComponents('Why not clear', gapReasons(found)),
        ...saidComponents('Limits, and where they come from', limitSources(found)),
        ...saidComponents('Adjusters', [found.adjusters]),
        ...saidComponents('What was used', found.notes),
        ...saidComponents('Assumptions', found.assumptions),
      ),
      ...drawingComponents(found),
    ),
  ]);
}

/** What the ratio does: before and after, against limits with their sources, and what still lacks. */
export const consequencesReport = (all: readonly SetUpConsequences[]): Component[] => all.map(sideComponent);
