import type { Slot } from '../../../views/parts/part.ts';
import { type Again, formSlot, type StepBody } from '../../calls/pages/forms-on-page.ts';
import type { Sight } from '../../calls/pages/sight.ts';
import type { Tx } from '../../database/database.ts';
import type { PageRequest } from '../../http/page-route.ts';
import { lookAtPasted } from '../paste-sheet.ts';
import { type OnSpring, type Order, type Sheet, sheetOf } from '../sheet.ts';
import { readPaste } from './actions.ts';
import { perValveDrawings } from './bar-slots.ts';
import { lookTable } from './look-slots.ts';
import { oddCards, swapsTable, wornLobes } from './odd-slots.ts';
import { oneValveForm, pasteForm } from './sheet-forms.ts';
import { gapsOnSheet, liftsTable, readingsTable } from './sheet-tables.ts';

const orderOf = (text: string | undefined): Order => (text === 'bank' ? 'bank' : 'firing');

function orderLinks(sight: Sight, order: Order): Slot {
  const at = `${sight.base}/steps/sheet`;
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

const ofSpring =
  (sheet: Sheet, base: string) =>
  (on: OnSpring): Slot[] => [
    ...wornLobes(on),
    ...oddCards(on),
    ...swapsTable(on),
    ...perValveDrawings(sheet, on),
    liftsTable(sheet, on, base),
  ];

const STOP: Slot = {
  template: '/parts/notice',
  data: {
    kind: 'caution',
    text: 'a gap is short of its limit. Stop: do not run it so, and have a qualified shop look.',
  },
};

/** The per-valve sheet: what is odd and what settles it, the figures, and the forms that fill it. */
export async function sheetStep(
  tx: Tx,
  sight: Sight,
  given: PageRequest,
  again: Again | undefined,
): Promise<StepBody> {
  const sheet = await sheetOf(
    tx,
    sight.caller,
    sight.build.id,
    orderOf(again?.typed.order ?? given.query.order),
  );
  const paste = again?.typed.form === 'paste' ? readPaste(again.typed) : undefined;
  const look = paste?.ok ? await lookAtPasted(tx, sight.caller, sight.build.id, paste.data) : undefined;
  const looked = look !== undefined && look.faults.length === 0;
  const forms = { one: oneValveForm(sight, sheet), paste: pasteForm(sight, sheet, looked) };
  const pasted: Slot[] = [...(look === undefined ? [] : [lookTable(look)]), formSlot(forms.paste, again)];
  return {
    forms: [forms.one, forms.paste],
    slots: [
      ...(sheet.stop ? [STOP] : []),
      ...(look === undefined ? [] : pasted),
      ...sheet.springs.flatMap(ofSpring(sheet, sight.base)),
      ...gapsOnSheet(sheet),
      ...(sheet.rows.length > 0 ? [orderLinks(sight, sheet.order)] : []),
      formSlot(forms.one, again),
      ...(look === undefined ? pasted : []),
      ...readingsTable(sheet, sight.base),
    ],
  };
}
