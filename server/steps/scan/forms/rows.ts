import { defined } from '../../../../shared/defined.ts';
import { inSpoken } from '../../../../shared/quantities/authored.ts';
import { lengthsIn, toldIn } from '../../../../shared/quantities/spoken-units.ts';
import { CAN_BE } from '../../../../shared/schemas/can-be.ts';
import { newGapScan } from '../../../../shared/schemas/gap-scan.ts';
import type { CellInput } from '../../../../views/parts/table.examples.ts';
import { refuseTurning } from '../../../assessment/stops/refuse-turning.ts';
import type { CallContext } from '../../../call/context.ts';
import type { PageForm } from '../../../call/forms.ts';
import { freeForm, spokenIn } from '../../../call/step-form.ts';
import { isStopped } from '../../../call/under-stop.ts';
import { keepGapScan } from '../../../records/gap-scans/gap-scans.ts';
import { tableComponent } from '../../../web/components.ts';
import { asksOf, type FormState, fieldId, rangeText } from '../../../web/forms/fields.ts';
import { isPick, pickName } from '../../../web/forms/picked-reading.ts';
import { type Fields, readForm } from '../../../web/forms/read-form.ts';
import { howFields, nextHow, placeFields, SCAN_LABELS } from './how.ts';

const ROWS = 22;
const angleField = (row: number) => `readings.${row}.crankAngle`;
const gapField = (row: number) => `readings.${row}.gap`;

/** Every 2° where either valve comes closest: an exhaust before TDC, an intake after it (common practice, no published source). */
const USUAL_ANGLES: Fields = Object.fromEntries(
  Array.from({ length: ROWS }, (_, row) => [angleField(row), String(2 * row - 22)] as const),
);

function cellOf(shown: FormState, name: string, label: string, more: Partial<CellInput>): CellInput {
  const own = shown.faults.filter(({ field }) => field === name || field.startsWith(`${name}.`));
  return {
    id: fieldId(name, shown),
    name,
    label,
    value: shown.typed[name] ?? '',
    ...more,
    ...(own.length === 0 ? {} : { error: own.map(({ detail }) => detail).join('. ') }),
  };
}

const rowLabels = Object.fromEntries(
  Array.from({ length: ROWS }, (_, row) => [
    [angleField(row), `Row ${row + 1}, crank angle`],
    [gapField(row), `Row ${row + 1}, gap`],
  ]).flat(),
);

const rowOf = (shown: FormState, row: number) => ({
  cells: [
    String(row + 1),
    { text: '', input: cellOf(shown, angleField(row), rowLabels[angleField(row)] ?? '', {}) },
    {
      text: '',
      input: cellOf(shown, gapField(row), rowLabels[gapField(row)] ?? '', {
        reads: 'length',
        unit: toldIn('in'),
        canBe: rangeText(CAN_BE.gap),
        ...asksOf(shown, gapField(row)),
      }),
    },
  ],
});

const rowsTable = (shown: FormState, caption: string, from: number, to: number) =>
  tableComponent({
    caption,
    columns: [
      { label: 'Row' },
      { label: 'Degrees after TDC', number: true },
      { label: `Gap, ${lengthsIn()}`, number: true },
    ],
    rows: Array.from({ length: to - from }, (_, index) => rowOf(shown, from + index)),
  });

/** Half of the rows beside the other half, where there is room: as they are filled in, those before TDC and those after. */
const rowsTables = (shown: FormState) => ({
  template: '/pages/call/side-by-side' as const,
  data: {
    slots: [
      rowsTable(shown, 'Gaps over the crank, first rows', 0, ROWS / 2),
      rowsTable(shown, 'Gaps over the crank, last rows', ROWS / 2, ROWS),
    ],
  },
});

/** A scan typed row by row. */
export function rowsForm(context: CallContext): PageForm {
  const how = nextHow(context);
  return {
    name: 'scan',
    action: `${context.base}/gap-scans`,
    title: isStopped(context) ? 'A scan that was read with the arms before' : 'A scan, row by row',
    schema: newGapScan,
    labels: { ...rowLabels, readings: 'Gaps over the crank', ...SCAN_LABELS },
    initial: { ...USUAL_ANGLES, ...how },
    groups: (shown) => [
      { columns: true, slots: placeFields(shown, context) },
      {
        hint: inSpoken(
          'Before TDC is negative, or say it: 10 BTDC. A row without a gap is not read. Between two gauges: “more than .080”.',
        ),
        slots: [rowsTables(shown)],
      },
      { legend: 'How it was read', columns: true, slots: howFields(shown, context) },
    ],
    buttons: [{ label: 'Save the scan', kind: 'primary', key: 'k' }],
  };
}

const ROW = /^readings\.(\d+)\.(crankAngle|gap)$/;

/** The rows that have a gap, numbered without holes, and which row of the form each is. */
function filledRows(fields: Fields): { readonly fields: Fields; readonly rows: readonly number[] } {
  const given = Object.keys(fields).flatMap((name) => {
    const [, row, what] = ROW.exec(name) ?? [];
    return what === 'gap' && (fields[name] ?? '').trim() !== '' ? [Number(row)] : [];
  });
  const rows = given.sort((a, b) => a - b);
  const others = Object.entries(fields).filter(([name]) => !ROW.test(name) && !isPick(name));
  const named = rows.flatMap((row, index) => [
    [angleField(index), fields[angleField(row)] ?? ''],
    [gapField(index), fields[gapField(row)] ?? ''],
    [pickName(gapField(index)), fields[pickName(gapField(row))] ?? ''],
  ]);
  return { fields: Object.fromEntries([...others, ...named]), rows };
}

const NOTHING = { field: gapField(0), detail: 'or another gap is missing: nothing was filled in' };

/** Keeps the rows that have a gap, by the schema that its JSON twin has; each fault stands at its own cell. */
export const keepRows = freeForm({
  path: '/gap-scans',
  run: async ({ tx, principal, call, req }) => {
    const { fields, rows } = filledRows(req.fields);
    const typed = req.fields;
    if (rows.length === 0) return { faults: [NOTHING], typed };
    const read = readForm(newGapScan, fields, await spokenIn(tx, principal, call));
    if (!read.ok) {
      const atRow = (field: string) =>
        field.replace(/^readings\.(\d+)/, (_, index) => `readings.${rows[Number(index)] ?? index}`);
      return {
        faults: read.faults.map(({ field, detail, ambiguities }) => ({
          field: atRow(field),
          detail,
          ...defined({ ambiguities }),
        })),
        typed,
      };
    }
    await keepGapScan(tx, principal, call.buildId, read.data, refuseTurning);
    return { step: 'scan' };
  },
});
