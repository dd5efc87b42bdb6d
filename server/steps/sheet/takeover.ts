import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { SHEET_KINDS } from '../../../shared/schemas/sheet.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import { gapJudgements } from '../../assessment/sheet/of-sheet.ts';
import type { CallContext } from '../../call/context.ts';
import { listed, type TakeoverItem } from '../../call/takeover-items.ts';
import { movesOf } from '../../records/arms/placements.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import type { SheetReading } from '../../records/sheet/sheet-table.ts';

/** Kind by kind and side by side: `1: .847; 8: .846`, in the order in which the valves were read. */
export function rawReadings(standing: readonly SheetReading[]): TakeoverItem[] {
  return keysOf(SHEET_KINDS).flatMap((kind) => {
    const read = standing.filter((each) => each.kind === kind);
    const wayOf = ({ valve, spring, arms }: SheetReading) => `${valve} ${spring} ${arms}`;
    return [...new Set(read.map(wayOf))].map((way): TakeoverItem => {
      const these = read.filter((each) => wayOf(each) === way);
      const [first] = these;
      const on = first === undefined || first.spring === 'not-said' ? '' : `, ${first.spring} spring`;
      const before = first?.arms === 'before' ? ', arms before' : '';
      return {
        card: 'raw',
        label: `${SHEET_KINDS[kind]}, ${first?.valve ?? ''}${on}${before}:`,
        text: listed(
          these.map((each) => `${each.cylinder}: ${asEntered(each.reading.readAs)}`),
          '; ',
        ),
      };
    });
  });
}

/** Gaps that were read and have no word yet, each with what it needs. */
const heldBack = ({ assessment }: CallContext): TakeoverItem[] =>
  gapJudgements(assessment)
    .filter(({ word }) => word === undefined)
    .map(({ sentence }) => ({ card: 'of-any-goal', text: sentence }));

/** Raw readings of every valve, the swaps that were made, and the gaps that tell nothing yet. */
export function sheetItems(context: CallContext): TakeoverItem[] {
  const { placements, record } = context;
  const moved = movesOf(placements).length;
  return [
    ...rawReadings(stillStanding(record.sheetReadings)),
    {
      card: 'of-goal',
      label: 'Swaps made:',
      text:
        moved === 0 ? 'none on record' : `${moved === 1 ? 'one arm' : `${moved} arms`} moved, in order above`,
    },
    ...heldBack(context),
  ];
}
