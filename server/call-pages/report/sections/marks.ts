import { VALVES } from '../../../../shared/schemas/words.ts';
import type { Component } from '../../../../views/parts/components.ts';
import type { TableData } from '../../../../views/parts/table.examples.ts';
import type { JudgedMarks } from '../../../assessment/tip-marks/judged.ts';
import { valveName } from '../../../call/context.ts';
import { filledColumns, saidComponents, sectionComponent } from '../../../call/report-parts.ts';
import type { LashLog, LoggedLash } from '../../../records/lash-log/lash-log.ts';
import { tableComponent } from '../../../web/components.ts';
import { momentText } from '../../../web/dates.ts';
import type { ReportData } from '../report-data.ts';

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

/** `5 intake set .016 in, cold`: a line of the log in words. */
export const sayLash = ({ reading, moment, engine }: LoggedLash): string =>
  `${valveName(reading)} ${moment} ${reading.reading.readAs}${engine === 'not-said' ? '' : `, ${engine}`}`;

const NUT = { 'not-looked': '', held: 'had not moved', moved: 'had moved' } as const;

function logComponents({ lines }: LashLog): Component[] {
  if (lines.length === 0) return [];
  const data: TableData = {
    caption: 'Lash log, oldest first',
    columns: [{ label: 'Day' }, { label: 'Lash' }, { label: 'Nut' }, { label: 'Who' }],
    rows: lines.map((line) => ({
      cells: [line.on, sayLash(line), NUT[line.nut], line.doneBy || line.reading.by],
    })),
  };
  return [tableComponent(filledColumns(data))];
}

const asked = (questions: readonly { readonly ask: string; readonly test: string }[]): string[] =>
  questions.map(({ ask, test }) => `${ask} ${test.charAt(0).toUpperCase()}${test.slice(1)}`);

/** What the marks and the log raise: questions with what settles them. */
export const markQuestionsOf = ({ marks, lash }: ReportData): string[] => [
  ...marks.valves.flatMap((valve) => asked(valve.questions).map((text) => `${valveName(valve)}: ${text}`)),
  ...asked(lash.questions),
];

/** A log is one once something was set or found with its day; a lash of the sheet alone stands on the sheet. */
const isLog = ({ lines }: LashLog): boolean =>
  lines.some(
    ({ moment, engine, nut, doneBy }) =>
      moment === 'set' || engine !== 'not-said' || nut !== 'not-looked' || doneBy !== '',
  );

/** Tip marks and the lash log, with what they raise. */
export function marksAndLashComponents(report: ReportData): Component[] {
  const { marks, lash } = report;
  const tables = [...marksComponents(marks), ...(isLog(lash) ? logComponents(lash) : [])];
  if (tables.length === 0) return [];
  return [
    sectionComponent('Tip marks and lash', [
      ...tables,
      ...saidComponents('They ask', markQuestionsOf(report)),
    ]),
  ];
}
