import { VALVES } from '../../../shared/schemas/words.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import type { JudgedMarks } from '../../assessment/tip-marks/judged.ts';
import { valveName } from '../../call/context.ts';
import { askedTexts, filledColumns, saidComponents, sectionComponent } from '../../call/report-parts.ts';
import { tableComponent } from '../../web/components.ts';
import { momentText } from '../../web/dates.ts';

function marksComponents({ valves }: JudgedMarks): Component[] {
  if (valves.length === 0) return [];
  const data: TableData = {
    caption: 'Marks on the stem ends, in order',
    columns: [{ label: 'Valve' }, { label: 'Mark' }, { label: 'Pushrod' }, { label: 'Who, when' }],
    rows: valves.flatMap(({ marks }) =>
      marks.map((mark) => ({
        cells: [
          `${mark.cylinder} ${VALVES[mark.valve].toLowerCase()}`,
          mark.readAs,
          mark.pushrod?.readAs ?? '',
          `line ${mark.seq}, ${mark.by}, ${momentText(mark.at)}`,
        ],
      })),
    ),
  };
  return [tableComponent(filledColumns(data))];
}

/** Marks on the stem ends, with what they raise. */
export function marksReport(marks: JudgedMarks): Component[] {
  const tables = marksComponents(marks);
  if (tables.length === 0) return [];
  const raised = marks.valves.flatMap((valve) =>
    askedTexts(valve.questions).map((text) => `${valveName(valve)}: ${text}`),
  );
  return [sectionComponent('Tip marks', [...tables, ...saidComponents('They ask', raised)])];
}
