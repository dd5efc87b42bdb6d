import { SHEET_KINDS } from '../../../shared/schemas/sheet.ts';
import { type Again, formSlot, type PageForm } from '../../calls/pages/forms-on-page.ts';
import { lookAt } from '../../calls/pages/sight.ts';
import { stepPage } from '../../calls/pages/step-page.ts';
import type { Tx } from '../../database/database.ts';
import { textField } from '../../forms/fields.ts';
import type { PageRequest } from '../../http/page-route.ts';
import { notFound } from '../../problems/failure.ts';
import { listSheetReadings } from '../sheet-readings.ts';
import { gaugedField } from './gauged-field.ts';

const LABELS = { reading: 'Reading as it should be', reason: 'Why' };

/** A reading of the sheet put right or struck out: the old one stays where it was, with the reason. */
export async function correctSheetPage(tx: Tx, given: PageRequest, again?: Again) {
  const sight = await lookAt(tx, given);
  const readings = await listSheetReadings(tx, given.caller, sight.build.id);
  const reading = readings.find((each) => each.id === given.params.readingId);
  if (reading === undefined) throw notFound('reading');
  const form: PageForm = {
    name: 'correct-sheet',
    action: `${sight.base}/sheet/readings/${reading.id}`,
    labels: LABELS,
    groups: (shown) => [
      {
        slots: [
          gaugedField(shown, 'reading', LABELS.reading, {
            hint: `It stands as ${reading.reading.readAs}, typed “${reading.reading.typed}”.`,
            ...(sight.side === 'bench' ? { big: true } : { autofocus: true }),
          }),
          textField(shown, 'reason', LABELS.reason, { hint: 'Such as “one turn missed, read again”.' }),
        ],
      },
    ],
    buttons: [
      { label: 'Put this in its place', kind: 'primary', name: 'act', value: 'replace', key: 'k' },
      { label: 'Strike it out', kind: 'danger', name: 'act', value: 'strike' },
      { label: 'Leave it', href: `${sight.base}/steps/sheet` },
    ],
  };
  const what = `${SHEET_KINDS[reading.kind].toLowerCase()}, ${reading.cylinder} ${reading.valve}`;
  return stepPage(
    sight,
    { step: 'sheet', title: `Correct: ${what}` },
    { forms: [form], slots: [formSlot(form, again)] },
    again,
  );
}
