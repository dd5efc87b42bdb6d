import type { Component } from '../../../views/parts/components.ts';
import { type Order, rowsInOrder, springsOf } from '../../assessment/sheet/of-sheet.ts';
import { type PastedQuestion, questionsOfPasted } from '../../assessment/sheet/pasted.ts';
import type { CallContext } from '../../call/context.ts';
import { foldComponent } from '../../call/fold.ts';
import { formComponent, type StepBody } from '../../call/forms.ts';
import { headlineComponents } from '../../call/headline.ts';
import { questionCards, questionsOf } from '../../call/question-form.ts';
import { listComponents } from '../../call/report-parts.ts';
import type { StepPageInput } from '../../call/step.ts';
import type { SheetDetail } from '../../mechanics/assessment/sheet/detail.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import { type Look, previewOf } from '../../records/sheet/paste-sheet.ts';
import { newestDial } from '../../records/sheet/said-in-turns.ts';
import { drawingComponent, tableComponent } from '../../web/components.ts';
import { perValveDrawings } from './bars.ts';
import { readPaste } from './forms.ts';
import { liftsTable } from './lifts-table.ts';
import { askedOfColumns, lookTable } from './paste-preview.ts';
import { oneValveForm, pasteForm } from './sheet-forms.ts';
import { gapsComponents, readingsComponents, swapsComponents } from './sheet-tables.ts';

const orderOf = (text: string | undefined): Order => (text === 'bank' ? 'bank' : 'firing');

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

/** The figures of the sheet: what the swaps decide, the valves beside one another, and the gaps. */
function figuresComponents(context: CallContext, sheet: SheetDetail, order: Order): Component[] {
  const rows = rowsInOrder(sheet, order);
  if (rows.length === 0) return [];
  return [
    ...swapsComponents(context),
    ...springsOf(sheet).flatMap((spring) => [
      ...perValveDrawings(rows, sheet.sides, spring).map(drawingComponent),
      tableComponent(liftsTable(context, rows, spring)),
    ]),
    ...gapsComponents(context, rows),
    orderComponent(context, order),
  ];
}

interface Parts {
  readonly said: readonly Component[];
  readonly asked: readonly Component[];
  readonly entry: Component;
  /** The rows to paste, until they were looked at; then what was seen in them stands first. */
  readonly pasting: Component | undefined;
  readonly looked: readonly Component[];
  readonly figures: readonly Component[];
  readonly readings: readonly Component[];
}

const deskLayout = ({ said, asked, entry, pasting, looked, figures, readings }: Parts): Component[] => [
  ...looked,
  ...said,
  ...asked,
  ...figures,
  entry,
  ...(pasting === undefined ? [] : [pasting]),
  ...readings,
];

/** At the bench the next valve comes before the figures, and a spreadsheet is seldom at hand. */
const benchLayout = (
  { said, asked, entry, pasting, looked, figures, readings }: Parts,
  faulty: boolean,
): Component[] => [
  ...looked,
  ...said,
  ...asked,
  entry,
  ...figures,
  ...(pasting === undefined
    ? []
    : [foldComponent('paste-rows', 'Paste rows of a spreadsheet', [pasting], faulty)]),
  ...(readings.length === 0 ? [] : [foldComponent('sheet-readings', 'Every reading of the sheet', readings)]),
];

/** Pasted rows as they were read, with what they would be asked. */
const lookedComponents = (look: Look, asked: readonly PastedQuestion[]): Component[] => [
  ...listComponents('Asked of whole columns', askedOfColumns(asked)),
  tableComponent(lookTable(look, asked)),
];

/** The per-valve sheet: what it says, what its rows are asked, the figures, and the forms that fill it. */
export function sheetPage(sheet: SheetDetail, { context, req, rejected }: StepPageInput): StepBody {
  const { assessment, record } = context;
  const order = orderOf(rejected?.typed.order ?? req.query.order);
  const paste = rejected?.typed.form === 'paste' ? readPaste(rejected.typed) : undefined;
  const look = paste?.ok
    ? previewOf(paste.data, stillStanding(record.sheetReadings), newestDial(record.setUps))
    : undefined;
  const asked =
    paste?.ok && look !== undefined ? questionsOfPasted(record, context.call, paste.data, look) : [];
  const looked = look !== undefined && look.faults.length === 0;
  const one = oneValveForm(context, sheet, order);
  const pasted = pasteForm(context, order, looked);
  const cards = questionCards(context, questionsOf(context, 'sheet'), rejected);
  const pasting: Component = formComponent(pasted, rejected);
  const parts: Parts = {
    said: headlineComponents(
      assessment,
      assessment.headlines.filter(({ step }) => step === 'sheet'),
    ),
    asked: cards.slots,
    entry: formComponent(one, rejected),
    pasting: look === undefined ? pasting : undefined,
    looked: look === undefined ? [] : [...lookedComponents(look, asked), pasting],
    figures: figuresComponents(context, sheet, order),
    readings: readingsComponents(context),
  };
  const faulty = rejected?.typed.form === 'paste';
  return {
    forms: [one, pasted, ...cards.forms],
    slots: context.side === 'bench' ? benchLayout(parts, faulty) : deskLayout(parts),
  };
}
