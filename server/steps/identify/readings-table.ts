import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { PART_FEATURES, PART_FITTINGS, PART_MARKS, PART_SIZES } from '../../../shared/schemas/part-words.ts';
import type { TableCell, TableData } from '../../../views/parts/table.examples.ts';
import type { CallContext } from '../../call/context.ts';
import type { PartReading } from '../../records/part-readings/part-readings.ts';
import { momentText } from '../../web/dates.ts';
import { type PartSeen, partAddress } from './of-part.ts';

const NAMES: Readonly<Record<string, string>> = {
  ...PART_SIZES,
  ...PART_FEATURES,
  ...PART_FITTINGS,
  ...PART_MARKS,
};
const ASKABLE: readonly string[] = [PART_SIZES, PART_FEATURES, PART_FITTINGS].flatMap((kinds) =>
  Object.keys(kinds),
);

function readAs(reading: PartReading, { detail }: PartSeen): TableCell {
  const text = reading.kind in PART_MARKS ? `“${asEntered(reading.readAs)}”` : asEntered(reading.readAs);
  const own = detail.readings.find(({ entryId }) => entryId === reading.id);
  const why = [own?.how ?? '', reading.place, own?.said ?? ''].filter((each) => each !== '').join('; ');
  return why === '' ? { text } : { text, why };
}

/** Everything that is read of the part, and what is not read yet with the way to it. */
export function readingsTable(context: CallContext, seen: PartSeen): TableData {
  const { standing } = seen;
  const rows = Object.keys(NAMES).flatMap((kind): TableData['rows'][number][] => {
    const read = standing.filter((reading) => reading.kind === kind);
    const name = NAMES[kind] ?? kind;
    const askAgain = ASKABLE.includes(kind)
      ? { text: 'Measure it', href: partAddress(context.base, seen, kind) }
      : 'in the form below';
    if (read.length === 0) return [{ cells: [name, 'not read yet', '\u2013', askAgain] }];
    return read.map((reading) => ({
      cells: [
        name,
        readAs(reading, seen),
        `${reading.by}, ${momentText(reading.at)}`,
        { text: 'Correct it', href: `${context.base}/part-readings/${reading.id}` },
      ],
    }));
  });
  return {
    caption: 'What is read of the part',
    columns: [{ label: 'What' }, { label: 'As read' }, { label: 'Who, when' }, { label: 'Do' }],
    rows,
    note: 'A size can be read more than once: every reading stays, and none is averaged away.',
  };
}
