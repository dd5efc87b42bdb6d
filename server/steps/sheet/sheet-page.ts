import type { Component } from '../../../views/parts/part.ts';
import type { OnSpring, Order, Sheet } from '../../assessment/sheet/sheet.ts';
import type { CallContext } from '../../call/context.ts';
import { foldComponent } from '../../call/fold.ts';
import { formComponent, type StepBody } from '../../call/forms.ts';
import type { StepPageInput } from '../../call/step.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import { previewOf } from '../../records/sheet/paste-sheet.ts';
import { perValveDrawings } from './bars.ts';
import { readPaste } from './forms.ts';
import { oddCards, swapsTable, wornLobes } from './odd-valves.ts';
import { inOrder } from './order.ts';
import { lookTable } from './paste-preview.ts';
import { oneValveForm, pasteForm } from './sheet-forms.ts';
import { gapsOnSheet, liftsTable, readingsTable } from './sheet-tables.ts';

const orderOf = (text: string | undefined): Order => (text === 'bank' ? 'bank' : 'firing');

function orderLinks(context: CallContext, order: Order): Component {
  const at = `${context.base}/steps/sheet`;
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
  (on: OnSpring): Component[] => [
    ...wornLobes(on),
    ...oddCards(on),
    ...swapsTable(on),
    ...perValveDrawings(sheet, on),
    liftsTable(sheet, on, base),
  ];

const STOP: Component = {
  template: '/parts/notice',
  data: {
    kind: 'caution',
    text: 'a gap is short of its limit. Stop: do not run it so, and have a qualified shop look.',
  },
};

interface Parts {
  readonly entry: Component;
  /** The rows to paste, until they were looked at; then what was seen in them stands first. */
  readonly pasting: Component | undefined;
  readonly looked: readonly Component[];
  readonly shows: readonly Component[];
  readonly readings: readonly Component[];
}

const deskLayout = ({ entry, pasting, looked, shows, readings }: Parts): Component[] => [
  ...looked,
  ...shows,
  entry,
  ...(pasting === undefined ? [] : [pasting]),
  ...readings,
];

/** At the bench the next valve comes first, and a spreadsheet is seldom at hand. */
const benchLayout = ({ entry, pasting, looked, shows, readings }: Parts, faulty: boolean): Component[] => [
  ...looked,
  entry,
  ...shows,
  ...(pasting === undefined
    ? []
    : [foldComponent('paste-rows', 'Paste rows of a spreadsheet', [pasting], faulty)]),
  ...(readings.length === 0 ? [] : [foldComponent('sheet-readings', 'Every reading of the sheet', readings)]),
];

/** The per-valve sheet: what is odd and what settles it, the figures, and the forms that fill it. */
export function sheetPage(loaded: Sheet, { context, req, rejected }: StepPageInput): StepBody {
  const sheet = inOrder(loaded, context, orderOf(rejected?.typed.order ?? req.query.order));
  const paste = rejected?.typed.form === 'paste' ? readPaste(rejected.typed) : undefined;
  const look = paste?.ok ? previewOf(paste.data, stillStanding(sheet.readings)) : undefined;
  const looked = look !== undefined && look.faults.length === 0;
  const forms = { one: oneValveForm(context, sheet), paste: pasteForm(context, sheet, looked) };
  const pasting: Component = formComponent(forms.paste, rejected);
  const parts: Parts = {
    entry: formComponent(forms.one, rejected),
    pasting: look === undefined ? pasting : undefined,
    looked: look === undefined ? [] : [lookTable(look), pasting],
    shows: [
      ...sheet.springs.flatMap(ofSpring(sheet, context.base)),
      ...gapsOnSheet(sheet),
      ...(sheet.rows.length > 0 ? [orderLinks(context, sheet.order)] : []),
    ],
    readings: readingsTable(sheet, context.base),
  };
  const faulty = rejected?.typed.form === 'paste';
  const slots = context.side === 'bench' ? benchLayout(parts, faulty) : deskLayout(parts);
  return { forms: [forms.one, forms.paste], slots: [...(sheet.stop ? [STOP] : []), ...slots] };
}
