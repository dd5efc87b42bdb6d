import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { formatQuantity } from '../../../shared/quantities/format.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import { readingWords } from '../../call/reading-text.ts';
import type { SetUpDetail } from '../../mechanics/assessment/ratio/read/detail.ts';
import type { Reading } from '../../records/readings/readings.ts';
import { momentText } from '../../web/dates.ts';

/** Why a reading no longer counts, told beside it. */
export function stateOf(reading: Reading, all: readonly Reading[]): string | undefined {
  const later = all.find((each) => each.replaces === reading.id);
  if (later === undefined)
    return reading.reason === '' ? undefined : `In place of another: ${reading.reason}`;
  return later.struck
    ? `Struck out by ${later.by}: ${later.reason}`
    : `Replaced on line ${later.seq} by ${later.by}: ${later.reason}`;
}

/** Every pass of a set-up with who read it; one that is in no figure says why, one struck out stays with the reason. */
export function passesTable(
  { readings, detail }: { readonly readings: readonly Reading[]; readonly detail: SetUpDetail },
  caption: string,
  correct?: (reading: Reading) => string,
): TableData {
  const lines = readings.filter((reading) => !reading.struck);
  const cell = (reading: Reading) => {
    const back =
      reading.zeroReturn === undefined ? undefined : `back at ${formatQuantity(reading.zeroReturn)}`;
    const counted = reading.counted ? 'small hand read' : undefined;
    const aside = detail.passes.find(({ entryId }) => entryId === reading.id)?.aside?.sentence;
    const said = [back, counted, stateOf(reading, readings)].filter((each) => each !== undefined);
    const why = [
      ...(aside === undefined ? [] : [aside]),
      ...(said.length === 0 ? [] : [said.join('. ')]),
    ].join(' ');
    const text =
      reading.replacedBy === undefined
        ? asEntered(reading.peak.readAs)
        : `(${asEntered(reading.peak.readAs)})`;
    return { text, ...(why === '' ? {} : { why }) };
  };
  return {
    caption,
    columns: [
      { label: 'Line' },
      { label: 'What' },
      { label: 'Read', number: true },
      { label: 'Who, when' },
      ...(correct === undefined ? [] : [{ label: 'Wrong?' }]),
    ],
    rows: lines.map((reading) => ({
      cells: [
        String(reading.seq),
        readingWords(reading),
        cell(reading),
        `${reading.by}, ${momentText(reading.at)}`,
        ...(correct === undefined
          ? []
          : [
              reading.replacedBy === undefined
                ? { text: 'Correct it', href: correct(reading) }
                : 'struck out',
            ]),
      ],
    })),
    empty: 'No pass yet.',
    note: 'A value in brackets is struck out: it stays on record and is not used.',
  };
}
