import { correctGapScan } from '../../../shared/schemas/gap-scan.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { correctionForm } from '../../call/correction-form.ts';
import { formComponent, type PageForm } from '../../call/forms.ts';
import { entryCorrection } from '../../call/step-correction.ts';
import { gaugedInField } from '../../call/worked/in-field.ts';
import { notFound } from '../../problems/failure.ts';
import type { GapScan, ScanReading } from '../../records/gap-scans/gap-scan-table.ts';
import { replaceGapScan } from '../../records/gap-scans/gap-scans.ts';
import { areaField, selectField } from '../../web/forms/fields.ts';
import { howFields, howOf, placeFields, SCAN_LABELS } from './forms/how.ts';
import { GAP_UNITS, ROWS_HINT, ROWS_LABELS } from './forms/paste.ts';

/** A reading as a row that reads back as the same. */
const rowOf = ({ crankAngle, gap }: ScanReading): string => `${crankAngle.value}\t${gaugedInField(gap)}`;

function scanForm(context: CallContext, scan: GapScan): PageForm {
  return correctionForm({
    name: 'correct-scan',
    action: `${context.base}/gap-scans/${scan.id}`,
    back: `${context.base}/steps/scan`,
    schema: correctGapScan,
    labels: { ...ROWS_LABELS, ...SCAN_LABELS },
    initial: { ...howOf(scan), text: scan.readings.map(rowOf).join('\n') },
    slots: (shown) => [
      ...placeFields(shown, context),
      areaField(shown, 'text', ROWS_LABELS.text, { hint: ROWS_HINT, rows: 10 }),
      selectField(shown, 'unit', ROWS_LABELS.unit, GAP_UNITS),
      ...howFields(shown, context, false),
    ],
    reasonHint: 'Such as “angles were before TDC, signs put right”.',
  });
}

/** A scan put right or struck out: the old one stays where it was, with the reason. */
export const scanCorrection = entryCorrection({
  path: '/gap-scans/:scanId',
  param: 'scanId',
  entries: ({ record }) => record.gapScans,
  schema: correctGapScan,
  fields: () => ({ value: 'text', along: ['unit', ...Object.keys(SCAN_LABELS)] }),
  find: async () => undefined,
  page({ context }, id, rejected) {
    const scan = context.record.gapScans.find((each) => each.id === id);
    if (scan === undefined) throw notFound('reading');
    const form = scanForm(context, scan);
    return {
      title: `Correct: scan ${valveName(scan)}, line ${scan.seq}`,
      body: { forms: [form], slots: [formComponent(form, rejected)] },
    };
  },
  replace: async (input, _, { tx, principal, call }, id) => {
    await replaceGapScan(tx, principal, call.buildId, id, input);
    return { step: 'scan' };
  },
});
