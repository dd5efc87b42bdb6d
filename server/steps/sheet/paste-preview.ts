import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { SHEET_KINDS } from '../../../shared/schemas/sheet.ts';
import { valveSaid } from '../../../shared/schemas/words.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import type { PastedQuestion } from '../../assessment/sheet/pasted.ts';
import type { Look } from '../../records/sheet/paste-sheet.ts';

/** A question is of a column by the readings that it rests on. */
const isOf = ({ restsOn }: PastedQuestion['question'], kind: string): boolean =>
  restsOn.some((id) => id.endsWith(`:${kind}`));

/** What a whole column of the pasted rows is asked. */
export const askedOfColumns = (asked: readonly PastedQuestion[]): string[] =>
  asked
    .filter(({ question }) => question.about.of !== 'valve')
    .map(({ question: { ask, size } }) => `${ask} ${size ?? ''}`.trim());

/** What pasted rows would put on the sheet; nothing of it is kept yet. */
export function lookTable({ readings }: Look, asked: readonly PastedQuestion[]): TableData {
  const asksOf = ({ line, valve, kind }: Look['readings'][number]) =>
    asked
      .filter(({ question, lines }) => {
        const { about } = question;
        // What a whole column is asked stands above it alone.
        return about.of === 'valve' && about.valve === valve && lines.includes(line) && isOf(question, kind);
      })
      .map(({ question }) => question.ask)
      .join(' ');
  return {
    caption: 'As it was read; nothing of it is kept yet',
    columns: [
      { label: 'Line' },
      { label: 'Valve' },
      { label: 'What' },
      { label: 'Read as', number: true },
      { label: 'Stands already' },
    ],
    rows: readings.map((each) => ({
      cells: [
        String(each.line),
        `${each.cylinder} ${valveSaid(each.valve)}`,
        SHEET_KINDS[each.kind],
        { text: asEntered(each.reading.readAs), why: asksOf(each) },
        each.already === undefined ? '' : `${each.already}; a second pass`,
      ],
    })),
    empty: 'No row could be read.',
  };
}
