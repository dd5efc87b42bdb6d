import type { Slot } from '../../../views/parts/part.ts';
import { foldSlot } from '../../calls/pages/fold-slot.ts';
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

interface Parts {
  readonly entry: Slot;
  /** The rows to paste, until they were looked at; then what was seen in them stands first. */
  readonly pasting: Slot | undefined;
  readonly looked: readonly Slot[];
  readonly shows: readonly Slot[];
  readonly readings: readonly Slot[];
}

const deskLayout = ({ entry, pasting, looked, shows, readings }: Parts): Slot[] => [
  ...looked,
  ...shows,
  entry,
  ...(pasting === undefined ? [] : [pasting]),
  ...readings,
];

/** At the bench the next valve comes first, and a spreadsheet is seldom at hand. */
const benchLayout = ({ entry, pasting, looked, shows, readings }: Parts, faulty: boolean): Slot[] => [
  ...looked,
  entry,
  ...shows,
  ...(pasting === undefined
    ? []
    : [foldSlot('paste-rows', 'Paste rows of a spreadsheet', [pasting], faulty)]),
  ...(readings.length === 0 ? [] : [foldSlot('sheet-readings', 'Every reading of the sheet', readings)]),
];

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
  const pasting: Slot = formSlot(forms.paste, again);
  const parts: Parts = {
    entry: formSlot(forms.one, again),
    pasting: look === undefined ? pasting : undefined,
    looked: look === undefined ? [] : [lookTable(look), pasting],
    shows: [
      ...sheet.springs.flatMap(ofSpring(sheet, sight.base)),
      ...gapsOnSheet(sheet),
      ...(sheet.rows.length > 0 ? [orderLinks(sight, sheet.order)] : []),
    ],
    readings: readingsTable(sheet, sight.base),
  };
  const faulty = again?.typed.form === 'paste';
  const slots = sight.side === 'bench' ? benchLayout(parts, faulty) : deskLayout(parts);
  return { forms: [forms.one, forms.paste], slots: [...(sheet.stop ? [STOP] : []), ...slots] };
}
