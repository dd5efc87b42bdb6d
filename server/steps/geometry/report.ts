import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { markSaidOf } from '../../../shared/schemas/tip-mark.ts';
import { VALVES } from '../../../shared/schemas/words.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { questionTexts } from '../../call/question-form.ts';
import { filledColumns, saidComponents, sectionComponent } from '../../call/report-parts.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import { tableComponent } from '../../web/components.ts';
import { momentText } from '../../web/dates.ts';
import { questionsOf } from './marks-part.ts';

function marksComponents(context: CallContext): Component[] {
  const { record } = context;
  const marks = stillStanding(record.tipMarks);
  if (marks.length === 0) return [];
  const data: TableData = {
    caption: 'Tip marks, in order',
    columns: [{ label: 'Valve' }, { label: 'Mark' }, { label: 'Pushrod or shims' }, { label: 'Who, when' }],
    rows: marks.map((mark) => ({
      cells: [
        `${mark.cylinder} ${VALVES[mark.valve].toLowerCase()}`,
        asEntered(markSaidOf(mark.readAs, context.assessment.details.gear.gear)),
        asEntered(mark.pushrod?.readAs ?? mark.shims?.readAs ?? ''),
        `line ${mark.seq}, ${mark.by}, ${momentText(mark.at)}`,
      ],
    })),
  };
  return [tableComponent(filledColumns(data))];
}

/** Marks on the stem ends, with what they raise. */
export function marksReport(context: CallContext): Component[] {
  const tables = marksComponents(context);
  if (tables.length === 0) return [];
  const raised = context.assessment.details.marks.valves.flatMap((valve) =>
    questionTexts(questionsOf(context, valve)).map((text) => `${valveName(valve)}: ${text}`),
  );
  const advised = context.assessment.details.marks.valves.flatMap((valve) =>
    valve.advice === undefined ? [] : [`${valveName(valve)}: ${valve.advice}`],
  );
  return [
    sectionComponent('Tip marks', [
      ...tables,
      ...saidComponents('They ask', raised),
      ...saidComponents('What to change, from all marks of a valve', advised),
    ]),
  ];
}
