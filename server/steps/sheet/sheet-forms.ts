import { inSpoken } from '../../../shared/quantities/authored.ts';
import { toldIn } from '../../../shared/quantities/spoken-units.ts';
import {
  columnOf,
  oneValve,
  pasteSheet,
  SHEET_KINDS,
  type SheetKind,
} from '../../../shared/schemas/sheet.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import type { Order } from '../../assessment/sheet/of-sheet.ts';
import type { CallContext } from '../../call/context.ts';
import type { PageForm } from '../../call/forms.ts';
import { isStopped } from '../../call/under-stop.ts';
import { valveWords } from '../../call/valve-words.ts';
import type { SheetDetail } from '../../mechanics/assessment/sheet/rows/detail.ts';
import { newestDial } from '../../records/sheet/said-in-turns.ts';
import { areaField, type FormState, numberField, selectField } from '../../web/forms/fields.ts';
import { gaugedField } from '../../web/forms/gauged-field.ts';
import { armField, foldOn, HOW, howGroup, lastHow } from './how-group.ts';
import { nextValve } from './next-valve.ts';

const ONE = { cylinder: 'Cylinder', valve: 'Valve' };
const PASTE = { text: 'Rows of the spreadsheet', unit: 'Figures without a unit are' };

const fieldOf = (kind: SheetKind): string => `figures.${kind}`;

/** One valve at a time, in the chosen order; where it is what the page opens for, the cursor is at its first lift. */
export function oneValveForm(
  context: CallContext,
  sheet: SheetDetail,
  order: Order,
  { first }: { readonly first: boolean },
): PageForm {
  const bench = context.side === 'bench';
  const next = nextValve(context, sheet, order);
  const dial = newestDial(context.setUps);
  const labels: Record<string, string> = { ...HOW, ...ONE, armId: 'Arm on it when it was read' };
  for (const kind of keysOf(SHEET_KINDS)) labels[fieldOf(kind)] = SHEET_KINDS[kind];
  const figures = (shown: FormState, kinds: readonly SheetKind[]) =>
    kinds.map((kind, index) =>
      gaugedField(shown, fieldOf(kind), SHEET_KINDS[kind], {
        optional: true,
        // A lift is mostly one figure, and two of them stand side by side.
        wide: columnOf(kind) !== 'lobe-lift' && columnOf(kind) !== 'valve-lift',
        ...(dial === undefined ? {} : { perTurn: dial }),
        ...(bench ? { big: true } : {}),
        ...(first && index === 0 && kinds === lifts ? { autofocus: true } : {}),
      }),
    );
  const { kinds: without } = context.assessment.details.gear;
  const kinds = keysOf(SHEET_KINDS).filter((kind) => !without.includes(kind));
  const gaps = kinds.filter((kind) => columnOf(kind) === 'gaps');
  const lifts = kinds.filter((kind) => columnOf(kind) !== 'gaps');
  return {
    name: 'valve',
    action: `${context.base}/sheet`,
    title: isStopped(context) ? 'What was read with the arms before' : 'One valve at a time',
    labels,
    schema: oneValve,
    hidden: { order },
    initial: { ...lastHow(context), cylinder: String(next.cylinder ?? ''), valve: next.valve },
    groups: (shown) => [
      {
        columns: true,
        hint: inSpoken(
          'What is left empty is not read. Between two gauges: “more than .024, less than .028”.',
        ),
        slots: [
          numberField(shown, 'cylinder', ONE.cylinder, {
            inputmode: 'numeric',
            ...(bench ? { big: true } : {}),
          }),
          selectField(shown, 'valve', ONE.valve, valveWords(context)),
          ...figures(shown, lifts),
        ],
      },
      {
        legend: 'Gaps, as far as they were read',
        columns: true,
        ...foldOn(context, shown, gaps.map(fieldOf)),
        slots: figures(shown, gaps),
      },
      howGroup(context, shown, armField(context, shown)),
    ],
    buttons: [{ label: 'Save this valve', ...(bench ? { kind: 'primary', key: 'k' } : {}) }],
  };
}

/** Rows pasted from a spreadsheet; looked at first. */
export function pasteForm(context: CallContext, order: Order, looked: boolean): PageForm {
  return {
    name: 'paste',
    action: `${context.base}/sheet/paste`,
    title: 'Paste rows of a spreadsheet',
    labels: { ...HOW, ...PASTE },
    schema: pasteSheet,
    hidden: { order },
    initial: { ...lastHow(context), unit: toldIn('in') },
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
      { label: 'Look at the rows', name: 'act', value: 'look', ...(looked ? {} : { key: 'v' }) },
      ...(looked
        ? [{ label: 'Save all of them', name: 'act', value: 'keep', kind: 'primary' as const }]
        : []),
    ],
  };
}
