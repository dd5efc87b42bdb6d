import type { Component } from '../../../views/parts/components.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import type { CallContext } from '../../call/context.ts';
import { questionsNamed, questionTexts } from '../../call/question-form.ts';
import { filledColumns, listComponents, saidComponents, sectionComponent } from '../../call/report-parts.ts';
import { upperFirst } from '../../mechanics/assessment/common/said.ts';
import { ADJUSTER_WORDS, type AdjusterKind } from '../../mechanics/lash/adjuster-words.ts';
import type { LoggedLash } from '../../records/lash-log/lash-log.ts';
import { tableComponent } from '../../web/components.ts';
import { pickedDayText } from '../../web/dates.ts';
import { lashText, standingLines } from './lash-text.ts';
import { settingTables } from './setting-tables.ts';
import { shimSentences, shimsTable } from './shims-part.ts';

const NUT = { 'not-looked': '', held: 'had not moved', moved: 'had moved' } as const;

function logComponent(lines: readonly LoggedLash[], adjuster: AdjusterKind): Component {
  const data: TableData = {
    caption: 'Lash log, oldest first',
    columns: [
      { label: 'Day' },
      { label: 'Lash' },
      { label: upperFirst(ADJUSTER_WORDS[adjuster].part) },
      { label: 'Who' },
    ],
    rows: lines.map((line) => ({
      cells: [
        pickedDayText(line.on, line.reading.at),
        lashText(line),
        NUT[line.nut],
        line.doneBy || line.reading.by,
      ],
    })),
  };
  return tableComponent(filledColumns(data));
}

/** A log is one once something was set or found with its day; a lash of the sheet alone stands on the sheet. */
const isLog = (lines: readonly LoggedLash[]): boolean =>
  lines.some(
    ({ moment, engine, nut, doneBy }) =>
      moment === 'set' || engine !== 'not-said' || nut !== 'not-looked' || doneBy !== '',
  );

function logSection(context: CallContext): Component[] {
  const lines = standingLines(context);
  if (!isLog(lines)) return [];
  // Of a figure that hardly can be the sheet has it.
  const raised = questionsNamed(context, context.assessment.details.lash.questionIds).filter(
    ({ step }) => step !== 'sheet',
  );
  return [
    sectionComponent('Lash log', [
      logComponent(lines, context.assessment.details.lash.adjuster),
      ...saidComponents('It asks', questionTexts(raised)),
    ]),
  ];
}

/** Which valve is set when, for a call about setting them. */
function settingSection({ call, assessment }: CallContext): Component[] {
  const { setting } = assessment.details.lash;
  const tables = settingTables(setting);
  if (call.goal !== 'adjuster' || tables.length === 0) return [];
  return [
    sectionComponent('Which valve when', [...tables, ...saidComponents('How it is read', setting.said)]),
  ];
}

/** The shims of a bucket engine, each valve in its sentence, with the table. */
function shimSection(context: CallContext): Component[] {
  const table = shimsTable(context);
  return table === undefined
    ? []
    : [
        sectionComponent('Shims', [
          ...listComponents('What goes in', shimSentences(context)),
          tableComponent(table),
        ]),
      ];
}

/** The lash log with what it raises, and the order that valves are set in. */
export const lashReport = (context: CallContext): Component[] => [
  ...shimSection(context),
  ...logSection(context),
  ...settingSection(context),
];
