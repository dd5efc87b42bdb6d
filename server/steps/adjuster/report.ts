import type { Component } from '../../../views/parts/part.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import type { LashLog } from '../../assessment/lash/lash-log.ts';
import { askedTexts, filledColumns, said, section } from '../../call/report-parts.ts';
import { lashText } from './lash-text.ts';

const NUT = { 'not-looked': '', held: 'had not moved', moved: 'had moved' } as const;

function logTable({ lines }: LashLog): Component[] {
  if (lines.length === 0) return [];
  const data: TableData = {
    caption: 'Lash log, oldest first',
    columns: [{ label: 'Day' }, { label: 'Lash' }, { label: 'Nut' }, { label: 'Who' }],
    rows: lines.map((line) => ({
      cells: [line.on, lashText(line), NUT[line.nut], line.doneBy || line.reading.by],
    })),
  };
  return [filledColumns({ template: '/parts/table', data })];
}

/** A log is one once something was set or found with its day; a lash of the sheet alone stands on the sheet. */
const isLog = ({ lines }: LashLog): boolean =>
  lines.some(
    ({ moment, engine, nut, doneBy }) =>
      moment === 'set' || engine !== 'not-said' || nut !== 'not-looked' || doneBy !== '',
  );

/** The lash log with what it raises. */
export function lashReport(log: LashLog): Component[] {
  if (!isLog(log)) return [];
  return [section('Lash log', [...logTable(log), ...said('It asks', askedTexts(log.questions))])];
}
