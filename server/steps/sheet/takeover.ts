import { GAP_KINDS, SHEET_KINDS } from '../../../shared/schemas/sheet.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import type { Sheet } from '../../assessment/sheet/sheet.ts';
import type { CallContext } from '../../call/context.ts';
import { listed, type TakeoverItem } from '../../call/takeover-items.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import type { SheetReading } from '../../records/sheet/sheet-table.ts';

/** Kind by kind and side by side: `1: .847; 8: .846`, in the order in which the valves were read. */
function rawReadings(standing: readonly SheetReading[]): TakeoverItem[] {
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
          these.map((each) => `${each.cylinder}: ${each.reading.readAs}`),
          '; ',
        ),
      };
    });
  });
}

/** Gaps that were read on a sinking lifter read too big. */
function toRetake(standing: readonly SheetReading[]): TakeoverItem[] {
  const soft = standing.filter(
    ({ kind, lifter }) => lifter === 'hydraulic' && GAP_KINDS.some((gap) => gap === kind),
  );
  if (soft.length === 0) return [];
  const named = soft.map(
    ({ kind, cylinder, valve }) => `${SHEET_KINDS[kind].toLowerCase()} ${cylinder} ${valve}`,
  );
  return [
    { card: 'of-any-goal', label: 'To be retaken, read on a hydraulic lifter:', text: named.join('; ') },
  ];
}

/** Raw readings of every valve, the swaps that were made and what they decided, and what is to be taken again. */
export function sheetItems({ placements, arms }: CallContext, { readings, springs }: Sheet): TakeoverItem[] {
  const standing = stillStanding(readings);
  const moved = Math.max(0, placements.length - arms.length);
  const decided = springs.flatMap(({ swaps }) => swaps.map(({ words }) => words));
  return [
    ...rawReadings(standing),
    {
      card: 'of-goal',
      label: 'Swaps made:',
      text: moved === 0 ? 'none on record' : `${moved}, in order above`,
    },
    ...decided.map((text): TakeoverItem => ({ card: 'of-goal', label: 'Swap test:', text })),
    ...toRetake(standing),
  ];
}
