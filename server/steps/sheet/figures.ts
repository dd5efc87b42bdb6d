import type { Component } from '../../../views/parts/components.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import { type Order, rowsInOrder, springsOf } from '../../assessment/sheet/of-sheet.ts';
import type { CallContext } from '../../call/context.ts';
import { foldComponent } from '../../call/fold.ts';
import type { Spring } from '../../mechanics/assessment/evidence.ts';
import type { SheetDetail } from '../../mechanics/assessment/sheet/rows/detail.ts';
import { drawingComponent, tableComponent } from '../../web/components.ts';
import { perValveDrawings } from './bars.ts';
import { gapsComponents, lashComponents } from './gaps-tables.ts';
import { liftsTable } from './lifts-table.ts';
import { swapsComponents } from './sheet-tables.ts';

function orderComponent({ base }: CallContext, order: Order): Component {
  const at = `${base}/steps/sheet`;
  return {
    template: '/pages/call/actions',
    data: {
      buttons: [
        order === 'firing'
          ? { label: 'Show along the bank', href: `${at}?order=bank` }
          : { label: 'Show in firing order', href: `${at}?order=firing` },
      ],
    },
  };
}

/** Every valve as a table; on a phone sixteen of them are a tap away. */
const liftsComponents = ({ side }: CallContext, table: TableData): Component[] =>
  side === 'desk'
    ? [tableComponent(table)]
    : [
        foldComponent(`lifts-${table.caption.replace(/[^a-z0-9]+/gi, '-')}`, table.caption, [
          tableComponent(table),
        ]),
      ];

/** Gaps and lash as tables; the worst of them is among the answers. */
const gapsFold = (slots: readonly Component[]): Component[] =>
  slots.length === 0 ? [] : [foldComponent('gaps-and-lash', 'Gaps and lash that were read', slots)];

/** The figures of the sheet: what the swaps decide, the valves beside one another, and the gaps. */
export function figuresComponents(
  context: CallContext,
  sheet: SheetDetail,
  order: Order,
  inGrid: Spring | undefined,
): Component[] {
  const rows = rowsInOrder(sheet, order);
  if (rows.length === 0) return [];
  return [
    ...swapsComponents(context),
    ...springsOf(sheet).flatMap((spring) => [
      ...perValveDrawings(rows, sheet.sides, spring).map(drawingComponent),
      ...(spring === inGrid ? [] : liftsComponents(context, liftsTable(context, rows, spring))),
    ]),
    ...gapsFold([...gapsComponents(context), ...lashComponents(context)]),
    orderComponent(context, order),
  ];
}
