import type { Component } from '../../../views/parts/part.ts';
import type { SetUpConsequences } from '../../assessment/consequences/consequences.ts';
import { valveName } from '../../call/context.ts';
import {
  besideWide,
  column,
  filledColumns,
  itemsOf,
  notice,
  run,
  said,
  section,
} from '../../call/report-parts.ts';
import { figuresTable, gapsTable, ratiosFacts, reasonsList } from './figures-tables.ts';
import { marginsDrawing } from './margins-drawing.ts';

const STOP = 'a gap is short of its limit. Stop: do not run it so, and have a qualified shop look.';

/** On paper the drawing stands alone: its table is the one beside it. */
function drawingOf(found: SetUpConsequences): Component[] {
  return marginsDrawing(found).map(({ template, data }) => ({
    template,
    data: { ...data, table: undefined, id: `margins-${found.found.setUp.number}` },
  }));
}

/** The limits that were judged by, each with where it comes from. */
function limitSources({ limits }: SetUpConsequences): string[] {
  const bySource = new Map<string, string[]>();
  for (const { title, value, source } of limits)
    bySource.set(source, [...(bySource.get(source) ?? []), `${title} ${value.readAs}`]);
  return [...bySource].map(([source, named]) => `${named.join('; ')}: ${source}.`);
}

const IN_HEADING = ['Valve', 'Build revision'];

/** The two ratios as the step names them; the valve stands in the heading. */
function ratiosRun(found: SetUpConsequences): Component[] {
  const items = itemsOf(ratiosFacts(found));
  return run(
    'Ratios',
    items.filter(({ label }) => !IN_HEADING.includes(label)),
  );
}

const reasonsOf = (found: SetUpConsequences): string[] =>
  reasonsList(found).flatMap(({ data }) => {
    const items: unknown = Reflect.get(data, 'items');
    return Array.isArray(items) ? items.map(String) : [];
  });

function onSide(found: SetUpConsequences): Component {
  return section(`What the ratio does on ${valveName(found.found.setUp)}`, [
    ...(found.stop ? [notice(STOP, 'caution')] : []),
    ...ratiosRun(found),
    gapsTable(found),
    besideWide(
      column(
        filledColumns(figuresTable(found)),
        ...said('Why not clear', reasonsOf(found)),
        ...said('Limits, and where they come from', limitSources(found)),
        ...said('Adjusters', [found.adjusters]),
        ...said('What was used', found.notes),
        ...said('Assumptions', found.assumptions),
      ),
      ...drawingOf(found),
    ),
  ]);
}

/** What the ratio does: before and after, against limits with their sources, and what still lacks. */
export const consequencesReport = (all: readonly SetUpConsequences[]): Component[] => all.map(onSide);
