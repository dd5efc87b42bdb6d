import { VALVES } from '../../../shared/schemas/words.ts';
import type { Component } from '../../../views/parts/part.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import type { JudgedMarks } from '../../assessment/tip-marks/judged.ts';
import { valveName } from '../../call/context.ts';
import { askedTexts, filledColumns, said, section } from '../../call/report-parts.ts';
import { momentText } from '../../web/dates.ts';

function marksTable({ valves }: JudgedMarks): Component[] {
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
  return [filledColumns({ template: '/parts/table', data })];
}

/** Marks on the stem ends, with what they raise. */
export function marksReport(marks: JudgedMarks): Component[] {
  const tables = marksTable(marks);
  if (tables.length === 0) return [];
  const raised = marks.valves.flatMap((valve) =>
    askedTexts(valve.questions).map((text) => `${valveName(valve)}: ${text}`),
  );
  return [section('Tip marks', [...tables, ...said('They ask', raised)])];
}
