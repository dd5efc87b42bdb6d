import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { inSpoken } from '../../../shared/quantities/authored.ts';
import type { TableCell, TableData } from '../../../views/parts/table.examples.ts';
import { upperFirst } from '../../mechanics/assessment/common/said.ts';
import type { HoleDetail, OrdinaryDetail, PartDetail } from '../../mechanics/assessment/part/detail.ts';
import { offsetSaid } from '../../mechanics/assessment/part/ordinary.ts';
import { sizeSaid } from '../../mechanics/assessment/part/size-said.ts';

type Row = TableData['rows'][number];
type Word = NonNullable<TableCell['verdict']>;

const row = (what: string, readAs: string, size: string, offset: string, word: Word): Row => ({
  cells: [what, asEntered(readAs), size, offset, { text: '', verdict: word }],
});

/** Threads of one size have one hole. */
function holeRows({ readAs, threads, others }: HoleDetail): Row[] {
  const holes = new Map([...threads, ...others].map((each) => [each.madeFor, each]));
  return [...holes.values()].map(({ designation, madeFor, offset, fit }) =>
    row(
      'Hole',
      readAs,
      `${designation.split(/[-×]/)[0] ?? designation}, made ${sizeSaid(madeFor)}`,
      offsetSaid(offset),
      fit,
    ),
  );
}

const sizeRows = ({ title, readAs, sizes, range }: OrdinaryDetail): Row[] => [
  ...sizes.map(({ name, offset, word }) =>
    row(upperFirst(title), readAs, inSpoken(name), offsetSaid(offset), word),
  ),
  ...(range === undefined
    ? []
    : [
        row(
          upperFirst(title),
          readAs,
          `${sizeSaid(range.low)} to ${sizeSaid(range.high)}`,
          range.word === 'agrees' ? 'within' : 'outside',
          range.word,
        ),
      ]),
];

/** Readings against the sizes that parts are ordinarily made with, whatever the catalogue has. */
export function ordinaryTable({ holes, ordinary }: PartDetail): TableData | undefined {
  const rows = [...holes.flatMap(holeRows), ...ordinary.flatMap(sizeRows)];
  if (rows.length === 0) return undefined;
  return {
    caption: 'Against ordinary sizes',
    columns: [
      { label: 'What' },
      { label: 'As read' },
      { label: 'Ordinary size' },
      { label: 'Off by' },
      { label: 'Word' },
    ],
    rows,
    note: 'Sizes and bands: common practice, no published source. Those out of reach are shown as well.',
  };
}
