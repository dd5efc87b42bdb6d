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
import type { Spring } from '../../mechanics/assessment/evidence.ts';
import type { SheetDetail } from '../../mechanics/assessment/sheet/detail.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import { type Look, previewOf } from '../../records/sheet/paste-sheet.ts';
import { newestDial } from '../../records/sheet/said-in-turns.ts';
import { drawingComponent, tableComponent } from '../../web/components.ts';
import { perValveDrawings } from './bars.ts';
import { readPaste } from './forms.ts';
import { gapsComponents, lashComponents } from './gaps-tables.ts';
import { liftsTable } from './lifts-table.ts';
import { askedOfColumns, lookTable } from './paste-preview.ts';
import { oneValveForm, pasteForm } from './sheet-forms.ts';
import { gridForm, gridSpring } from './sheet-grid.ts';
import { readingsComponents, swapsComponents } from './sheet-tables.ts';

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
function figuresComponents(
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
      ...(spring === inGrid ? [] : [tableComponent(liftsTable(context, rows, spring))]),
    ]),
    ...gapsComponents(context),
    ...lashComponents(context),
    orderComponent(context, order),
  ];
}

interface Parts {
  readonly said: readonly Component[];
  /** Questions of a whole column, and those of single figures. */
  readonly ofColumns: readonly Component[];
  readonly ofFigures: readonly Component[];
  /** Every valve as a table that is typed into; left out while nothing says how many there are. */
  readonly grid: Component | undefined;
  readonly entry: Component;
  /** The rows to paste, until they were looked at; then what was seen in them stands first. */
  readonly pasting: Component | undefined;
  readonly looked: readonly Component[];
  readonly figures: readonly Component[];
  readonly readings: readonly Component[];
}

const pastingFold = ({ pasting }: Parts, { paste }: { readonly paste: boolean }): Component[] =>
  pasting === undefined ? [] : [foldComponent('paste-rows', 'Paste rows of a spreadsheet', [pasting], paste)];

/** At the desk the sheet is one grid: what it says, the grid with its questions, and the rest. */
const deskLayout = (
  parts: Parts,
  faulty: { readonly one: boolean; readonly paste: boolean },
): Component[] => [
  ...parts.looked,
  ...parts.said,
  ...parts.ofColumns,
  ...(parts.grid === undefined ? [parts.entry] : [parts.grid]),
  ...parts.ofFigures,
  ...parts.figures,
  ...(parts.grid === undefined
    ? []
    : [
        foldComponent(
          'one-valve',
          'One valve with its gaps, or read with another arm',
          [parts.entry],
          faulty.one,
        ),
      ]),
  ...pastingFold(parts, faulty),
  ...parts.readings,
];

/** At the bench the next valve comes before the figures, and a spreadsheet is seldom at hand. */
const benchLayout = (parts: Parts, faulty: { readonly paste: boolean }): Component[] => [
  ...parts.looked,
  ...parts.said,
  ...parts.ofColumns,
  ...parts.ofFigures,
  parts.entry,
  ...parts.figures,
  ...pastingFold(parts, faulty),
  ...(parts.readings.length === 0
    ? []
    : [foldComponent('sheet-readings', 'Every reading of the sheet', parts.readings)]),
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
  const bench = context.side === 'bench';
  const one = oneValveForm(context, sheet, order);
  const pasted = pasteForm(context, order, looked);
  const grid = bench ? undefined : gridForm(context, sheet, order);
  const questions = questionsOf(context, 'sheet');
  const ofColumns = questionCards(
    context,
    questions.filter(({ about }) => about.of !== 'valve'),
    rejected,
  );
  const ofFigures = questionCards(
    context,
    questions.filter(({ about }) => about.of === 'valve'),
    rejected,
  );
  const pasting: Component = formComponent(pasted, rejected);
  const parts: Parts = {
    said: headlineComponents(
      assessment,
      assessment.headlines.filter(({ step }) => step === 'sheet'),
    ),
    ofColumns: ofColumns.slots,
    ofFigures: ofFigures.slots,
    grid: grid === undefined ? undefined : formComponent(grid, rejected),
    entry: formComponent(one, rejected),
    pasting: look === undefined ? pasting : undefined,
    looked: look === undefined ? [] : [...lookedComponents(look, asked), pasting],
    figures: figuresComponents(context, sheet, order, grid === undefined ? undefined : gridSpring(context)),
    readings: readingsComponents(context),
  };
  const faulty = { one: rejected?.typed.form === one.name, paste: rejected?.typed.form === pasted.name };
  return {
    forms: [...(grid === undefined ? [] : [grid]), one, pasted, ...ofColumns.forms, ...ofFigures.forms],
    slots: bench ? benchLayout(parts, faulty) : deskLayout(parts, faulty),
  };
}
