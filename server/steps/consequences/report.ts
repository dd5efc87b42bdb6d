import { asTold } from '../../../shared/quantities/as-entered.ts';
import { inSpoken } from '../../../shared/quantities/authored.ts';
import type { Component } from '../../../views/parts/components.ts';
import { limitsUsed } from '../../assessment/consequences/of-valve.ts';
import type { CallContext } from '../../call/context.ts';
import { questionsOf, questionTexts } from '../../call/question-form.ts';
import {
  besideWideComponent,
  columnComponent,
  filledColumns,
  listComponents,
  type ReportSides,
  runComponents,
  saidComponents,
  sectionComponent,
  sectionOf,
  withoutNote,
  withoutTable,
} from '../../call/report-parts.ts';
import { isStopped } from '../../call/under-stop.ts';
import type { ChangeDetail } from '../../mechanics/assessment/change/detail.ts';
import { notKnownLines } from '../../mechanics/assessment/change/not-known.ts';
import { drawingComponent, tableComponent } from '../../web/components.ts';
import { checksNow } from './checks-now.ts';
import { figureText, intervalText } from './figure-text.ts';
import { figuresTable, gapReasons, gapsTable, ratioFacts } from './figures-tables.ts';
import { judgementsOf, titleOf, worstFirst } from './judged.ts';
import { marginsDrawing } from './margins-drawing.ts';
import { plansTables } from './plans-table.ts';

/** On paper the drawing stands alone: its table is the one beside it. */
function drawingComponents({ build }: CallContext, detail: ChangeDetail): Component[] {
  const drawing = marginsDrawing(build.spec, detail);
  return drawing === undefined ? [] : [drawingComponent(withoutTable(drawing))];
}

/** The limits that were judged by, each once with where it comes from. */
function limitSources({ record, assessment }: CallContext): string[] {
  const limits = assessment.details.change.flatMap((detail) => limitsUsed(record, detail));
  const bySource = new Map<string, Set<string>>();
  for (const { title, value, source: written, revision } of limits) {
    const source = revision === 0 ? inSpoken(written) : written;
    bySource.set(source, (bySource.get(source) ?? new Set()).add(`${title} ${asTold(value.readAs)}`));
  }
  return [...bySource].map(([source, named]) => `${[...named].join('; ')}: ${source}.`);
}

/** Noise where the call does not ask what a ratio does. */
const notKnownOf = ({ assessment, plan }: CallContext): string[] =>
  plan.asks.includes('consequences') ? notKnownLines(assessment.details.change) : [];

/** What is told of the gaps of a side: no table has them. */
const toldOf = (context: CallContext, detail: ChangeDetail): string[] =>
  judgementsOf(context.assessment, detail).map(({ sentence }) => sentence);

/** The ratios and the gaps that are known, beside the valve drawn to scale. */
function valveTables(context: CallContext, detail: ChangeDetail): Component {
  const known = detail.gaps.filter(({ after }) => after !== undefined);
  const gaps = known.length === 0 ? [] : [tableComponent(withoutNote(gapsTable({ ...detail, gaps: known })))];
  const column = columnComponent(...runComponents('Ratios', ratioFacts(detail)), ...gaps);
  return besideWideComponent(column, ...drawingComponents(context, detail));
}

/** The figures of a side that nothing was read of yet, in a line: no valve stands so. */
const sideFigures = ({ figures }: ChangeDetail): Component[] =>
  runComponents(
    'Lift and loads, before and after',
    figures.flatMap((figure) => {
      const before = figureText(figure, figure.before);
      const after = figureText(figure, figure.after?.value);
      const value = [before && `before ${before}`, after && `after ${after}`].filter(Boolean).join(', ');
      return value === '' ? [] : [{ label: figure.title, value, note: intervalText(figure) }];
    }),
  );

const valveComponents = (context: CallContext, detail: ChangeDetail): Component[] => {
  const aSide = detail.about.of === 'side';
  // Where no change is planned, a side that nothing was read of is in the line above alone.
  const brief = aSide && context.plan.isChange !== true;
  if (brief) return [];
  const section = sectionComponent(`What the ratio does on ${titleOf(detail, context.assessment)}`, [
    // Of a valve that was read the table below says each gap with its word.
    ...(aSide ? saidComponents('Gaps, worst first', toldOf(context, detail)) : []),
    ...(aSide
      ? [...runComponents('Ratios', ratioFacts(detail)), ...sideFigures(detail)]
      : [valveTables(context, detail)]),
    ...saidComponents('Look at again', checksNow(context, detail)),
  ]);
  return [section];
};

/** What is behind the gaps of a valve that was read. */
const behindComponents = ({ assessment }: CallContext, detail: ChangeDetail): Component[] =>
  detail.about.of === 'side'
    ? []
    : sectionOf(`Behind the gaps of ${titleOf(detail, assessment)}`, [
        tableComponent(filledColumns(figuresTable(detail))),
        ...saidComponents('Why', gapReasons(detail)),
      ]);

const once = (texts: readonly string[]): string[] => [...new Set(texts)];

/** What a ratio does on each valve: before and after, against limits with their sources, and what still lacks. */
export function consequencesReport(context: CallContext): ReportSides {
  const details = worstFirst(context.assessment);
  const sections = details.map((detail) => valveComponents(context, detail));
  // Of a call about something else the worst valve is enough to read first.
  const first = context.plan.isChange === true ? sections.length : 1;
  return {
    components: [
      ...plansTables(details).map((table) => tableComponent(table)),
      ...sections.slice(0, first).flat(),
      ...listComponents('Not known yet, and what each gap needs', notKnownOf(context)),
    ],
    back: [
      ...sections.slice(first).flat(),
      ...saidComponents('Asked first', questionTexts(questionsOf(context, 'consequences'))),
      ...details.flatMap((detail) => behindComponents(context, detail)),
      ...saidComponents('Limits, and where they come from', limitSources(context)),
      // Under a stop nobody sets them.
      ...saidComponents(
        'Adjusters',
        once(details.flatMap(({ adjusters }) => (isStopped(context) || adjusters === '' ? [] : [adjusters]))),
      ),
      ...saidComponents(
        'Assumptions of the figures',
        once(details.flatMap(({ assumptions }) => assumptions)),
      ),
    ],
  };
}
