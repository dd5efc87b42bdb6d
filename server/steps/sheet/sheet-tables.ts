import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { SHEET_KINDS } from '../../../shared/schemas/sheet.ts';
import type { Component } from '../../../views/parts/components.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { inches } from '../../mechanics/assessment/common/said.ts';
import type { SheetSwapDetail } from '../../mechanics/assessment/sheet/rows/detail.ts';
import { ofArm, ofPlace } from '../../mechanics/assessment/sheet/swaps/swap-said.ts';
import { allowance } from '../../mechanics/kit/allowances.ts';
import { tableComponent } from '../../web/components.ts';
import { ON_SPRING } from './sheet-text.ts';

/** `+.035 in` */
export const signed = (si: number): string => `${si > 0 ? '+' : ''}${inches(si)}`;

/** What the swaps on record decide, each in the sentence of its judgement. */
export function swapsComponents({ assessment }: CallContext): Component[] {
  const { swaps } = assessment.details.sheet;
  const told = ({ judgementId }: SheetSwapDetail) =>
    assessment.judgements.find(({ id }) => id === judgementId)?.sentence ?? '';
  if (swaps.length === 0) return [];
  return [
    tableComponent({
      caption: 'Swap tests',
      columns: [
        { label: 'Valves' },
        { label: 'Goes with the arm', number: true },
        { label: 'Stays on the valve', number: true },
        { label: 'What it decides' },
      ],
      rows: swaps.map((swap) => ({
        cells: [
          `${swap.places.join(' and ')}, ${ON_SPRING[swap.spring]}`,
          swap.part === undefined ? '' : signed(ofArm(swap)),
          swap.position === undefined ? '' : signed(ofPlace(swap)),
          told(swap),
        ],
      })),
      note: `A difference counts past ${inches(allowance('odd-beyond'))}. Both arms on both valves, read the same way.`,
    }),
  ];
}

/** As many as a person would look back over; every figure above leads to its own reading. */
const NEWEST = 10;

/** The newest readings, each with the way to put it right. */
export function readingsComponents({ record, base }: CallContext): Component[] {
  if (record.sheetReadings.length === 0) return [];
  return [
    tableComponent({
      caption: 'Newest readings of the sheet',
      columns: [{ label: 'Valve' }, { label: 'What' }, { label: 'Reading', number: true }, { label: 'Who' }],
      rows: record.sheetReadings
        .toReversed()
        .slice(0, NEWEST)
        .map((each) => ({
          cells: [
            valveName(each),
            `${SHEET_KINDS[each.kind]}${each.arms === 'before' ? ', arms before' : ''}`,
            each.replacedBy === undefined && !each.struck
              ? { text: asEntered(each.reading.readAs), href: `${base}/sheet/readings/${each.id}` }
              : {
                  text: `${each.struck ? 'struck: ' : 'replaced: '}${asEntered(each.reading.readAs)}`,
                  ...(each.reason === '' ? {} : { why: each.reason }),
                },
            each.by,
          ],
        })),
    }),
  ];
}
