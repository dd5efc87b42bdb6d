import { toldIn } from '../../../../shared/quantities/spoken-units.ts';
import { pasteGapScan } from '../../../../shared/schemas/gap-scan.ts';
import { refuseTurning } from '../../../assessment/stops/refuse-turning.ts';
import type { CallContext } from '../../../call/context.ts';
import type { PageForm } from '../../../call/forms.ts';
import { freeForm } from '../../../call/step-form.ts';
import { keepGapScan, scanOfText } from '../../../records/gap-scans/gap-scans.ts';
import { readScanRows, sayRowFault } from '../../../records/gap-scans/scan-rows.ts';
import { areaField, selectField } from '../../../web/forms/fields.ts';
import { type Fields, readForm } from '../../../web/forms/read-form.ts';
import { howFields, nextHow, placeFields, SCAN_LABELS } from './how.ts';

export const ROWS_LABELS = { text: 'Rows: crank angle, gap', unit: 'Gaps without a unit are' };
export const GAP_UNITS = { in: 'inches', thou: 'thousandths of an inch', mm: 'millimetres' };
export const ROWS_HINT =
  'A row for each reading: degrees after TDC (before it negative, or “10 BTDC”), then the gap. With a tab, a comma or a blank between.';

/** Rows pasted from a table; looked at first. */
export function pasteForm(context: CallContext, looked: boolean): PageForm {
  return {
    name: 'paste-scan',
    action: `${context.base}/gap-scans/paste`,
    title: 'Paste a scan',
    schema: pasteGapScan,
    labels: { ...ROWS_LABELS, ...SCAN_LABELS },
    initial: { ...nextHow(context), unit: toldIn('in') },
    groups: (shown) => [
      { columns: true, slots: placeFields(shown, context) },
      {
        slots: [
          areaField(shown, 'text', ROWS_LABELS.text, { hint: ROWS_HINT, rows: 8 }),
          selectField(shown, 'unit', ROWS_LABELS.unit, GAP_UNITS),
        ],
      },
      { legend: 'How it was read', columns: true, slots: howFields(shown, context) },
    ],
    buttons: [
      { label: 'Look at the rows', name: 'act', value: 'look' },
      ...(looked
        ? [{ label: 'Save it as a scan', name: 'act', value: 'keep', kind: 'primary' as const }]
        : []),
    ],
  };
}

/** The pasted rows as the JSON route takes them. */
export const readPastedScan = (fields: Fields) =>
  readForm(pasteGapScan, { text: '', ...fields }, { lengths: 'in' });

/** Looks at pasted rows, or keeps them. A look answers the page again with what was read. */
export const keepPaste = freeForm({
  path: '/gap-scans/paste',
  run: async ({ tx, principal, call, req }) => {
    const typed = req.fields;
    const read = readPastedScan(typed);
    if (!read.ok) return { faults: read.faults, typed };
    const { faults } = readScanRows(read.data.text, read.data.unit);
    if (typed.act !== 'keep' || faults.length > 0)
      return { faults: faults.map((fault) => ({ field: 'text', detail: sayRowFault(fault) })), typed };
    await keepGapScan(tx, principal, call.buildId, scanOfText(read.data), refuseTurning);
    return { step: 'scan' };
  },
});
