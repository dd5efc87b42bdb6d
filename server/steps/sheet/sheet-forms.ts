import { SHEET_ARMS, SHEET_KINDS, type SheetKind, TOOLS } from '../../../shared/schemas/sheet.ts';
import { keysOf, LIFTERS, SPRINGS, VALVES } from '../../../shared/schemas/words.ts';
import type { FormGroup } from '../../../views/parts/form.examples.ts';
import { type Order, rowsInOrder } from '../../assessment/sheet/of-sheet.ts';
import type { CallContext } from '../../call/context.ts';
import type { PageForm } from '../../call/forms.ts';
import { isStopped } from '../../call/under-stop.ts';
import type { SheetDetail } from '../../mechanics/assessment/sheet/detail.ts';
import { areaField, type FormState, numberField, selectField } from '../../web/forms/fields.ts';
import { gaugedField } from '../../web/forms/gauged-field.ts';
import { cellOf } from './sheet-text.ts';

const HOW = { spring: 'Spring on the valve', lifter: 'Lifter', tool: 'Read with', arms: 'Arms' };
const ONE = { cylinder: 'Cylinder', valve: 'Valve' };
const PASTE = { text: 'Rows of the spreadsheet', unit: 'Figures without a unit are' };

/** Under a stop nothing is read on the engine: what is entered was read with the arms before. */
const ARMS_BEFORE = { before: SHEET_ARMS.before };

const fieldOf = (kind: SheetKind): string => `figures.${kind}`;

const isFaulty = (shown: FormState, names: readonly string[]) =>
  shown.faults.some(({ field }) => names.some((name) => field === name || field.startsWith(`${name}.`)));

/** On a phone what is seldom filled in is one tap away, and open where something in it is wrong. */
function foldOn(context: CallContext, shown: FormState, names: readonly string[]): Pick<FormGroup, 'fold'> {
  if (context.side === 'desk') return {};
  return { fold: isFaulty(shown, names) ? 'open' : 'shut' };
}

function howGroup(context: CallContext, shown: FormState): FormGroup {
  const said = (shown.typed.spring ?? 'not-said') !== 'not-said';
  return {
    legend: 'How it was read',
    columns: true,
    // The way of reading is asked for until it was said once; from then on it goes along.
    ...(said ? foldOn(context, shown, Object.keys(HOW)) : {}),
    slots: [
      selectField(shown, 'spring', HOW.spring, SPRINGS),
      selectField(shown, 'lifter', HOW.lifter, LIFTERS),
      selectField(shown, 'tool', HOW.tool, TOOLS),
      selectField(shown, 'arms', HOW.arms, isStopped(context) ? ARMS_BEFORE : SHEET_ARMS),
    ],
  };
}

/** The way the last readings were taken is the likely way of the next. */
function lastHow(context: CallContext): Record<string, string> {
  const last = context.record.sheetReadings.at(-1);
  const now = isStopped(context) ? { arms: 'before' } : {};
  if (last === undefined) return now;
  const { spring, lifter, tool, arms } = last;
  return { spring, lifter, tool, arms, ...now };
}

/** The next valve in order that has no lift yet; one after the other, intake before exhaust. */
function nextValve(sheet: SheetDetail, order: Order): { cylinder: number; valve: string } {
  const next = rowsInOrder(sheet, order).find((row) => cellOf(row, 'valve-lift') === undefined);
  return { cylinder: next?.cylinder ?? sheet.orders[order][0] ?? 1, valve: next?.valve ?? 'intake' };
}

/** One valve at a time, in the chosen order. */
export function oneValveForm(context: CallContext, sheet: SheetDetail, order: Order): PageForm {
  const bench = context.side === 'bench';
  const next = nextValve(sheet, order);
  const labels: Record<string, string> = { ...HOW, ...ONE };
  for (const kind of keysOf(SHEET_KINDS)) labels[fieldOf(kind)] = SHEET_KINDS[kind];
  const figures = (shown: FormState, kinds: readonly SheetKind[], first: boolean) =>
    kinds.map((kind, index) =>
      gaugedField(shown, fieldOf(kind), SHEET_KINDS[kind], {
        optional: true,
        ...(bench ? { big: true } : first && index === 0 ? { autofocus: true } : {}),
      }),
    );
  const [lobe, valve, lash, preload, ...gaps] = keysOf(SHEET_KINDS);
  return {
    name: 'valve',
    action: `${context.base}/sheet`,
    title: isStopped(context) ? 'What was read with the arms before' : 'One valve at a time',
    labels,
    hidden: { order },
    initial: { ...lastHow(context), cylinder: String(next.cylinder), valve: next.valve },
    groups: (shown) => [
      {
        columns: true,
        hint: 'What is left empty is not read. Between two gauges: “more than .024, less than .028”.',
        slots: [
          numberField(shown, 'cylinder', ONE.cylinder, {
            inputmode: 'numeric',
            ...(bench ? { big: true } : {}),
          }),
          selectField(shown, 'valve', ONE.valve, VALVES),
          ...figures(shown, [lobe, ...[valve, lash, preload].filter((kind) => kind !== undefined)], true),
        ],
      },
      {
        legend: 'Gaps, as far as they were read',
        columns: true,
        ...foldOn(context, shown, gaps.map(fieldOf)),
        slots: figures(shown, gaps, false),
      },
      howGroup(context, shown),
    ],
    buttons: [{ label: 'Keep this valve', kind: 'primary', key: 'k' }],
  };
}

/** Rows pasted from a spreadsheet; looked at first. */
export function pasteForm(context: CallContext, order: Order, looked: boolean): PageForm {
  return {
    name: 'paste',
    action: `${context.base}/sheet/paste`,
    title: 'Paste rows of a spreadsheet',
    labels: { ...HOW, ...PASTE },
    hidden: { order },
    initial: lastHow(context),
    groups: (shown) => [
      {
        slots: [
          areaField(shown, 'text', PASTE.text, {
            hint: 'A heading row, then a row for each valve: cylinder, valve, lobe lift, valve lift, lash, preload, or the name of a gap.',
            rows: 8,
          }),
          selectField(shown, 'unit', PASTE.unit, {
            in: 'inches',
            thou: 'thousandths of an inch',
            mm: 'millimetres',
          }),
        ],
      },
      howGroup(context, shown),
    ],
    buttons: [
      { label: 'Look at the rows', name: 'act', value: 'look', ...(looked ? {} : { key: 'p' }) },
      ...(looked
        ? [{ label: 'Keep all of them', name: 'act', value: 'keep', kind: 'primary' as const }]
        : []),
    ],
  };
}
