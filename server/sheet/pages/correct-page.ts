import { SHEET_KINDS } from '../../../shared/schemas/sheet.ts';
import { correctionForm, standsAs } from '../../calls/pages/correction-form.ts';
import { type Again, formSlot } from '../../calls/pages/forms-on-page.ts';
import { lookAt } from '../../calls/pages/sight.ts';
import { stepPage } from '../../calls/pages/step-page.ts';
import type { Tx } from '../../database/database.ts';
import type { PageRequest } from '../../http/page-route.ts';
import { notFound } from '../../problems/failure.ts';
import { listSheetReadings } from '../sheet-readings.ts';
import { gaugedField } from './gauged-field.ts';

const LABELS = { reading: 'Reading as it should be' };

/** A reading of the sheet put right or struck out: the old one stays where it was, with the reason. */
export async function correctSheetPage(tx: Tx, given: PageRequest, again?: Again) {
  const sight = await lookAt(tx, given);
  const readings = await listSheetReadings(tx, given.caller, sight.build.id);
  const reading = readings.find((each) => each.id === given.params.readingId);
  if (reading === undefined) throw notFound('reading');
  const form = correctionForm({
    name: 'correct-sheet',
    action: `${sight.base}/sheet/readings/${reading.id}`,
    back: `${sight.base}/steps/sheet`,
    labels: LABELS,
    slots: (shown) => [
      gaugedField(shown, 'reading', LABELS.reading, {
        hint: standsAs(reading.reading),
        ...(sight.side === 'bench' ? { big: true } : { autofocus: true }),
      }),
    ],
    reasonHint: 'Such as “one turn missed, read again”.',
  });
  const what = `${SHEET_KINDS[reading.kind].toLowerCase()}, ${reading.cylinder} ${reading.valve}`;
  return stepPage(
    sight,
    { step: 'sheet', title: `Correct: ${what}` },
    { forms: [form], slots: [formSlot(form, again)] },
    again,
  );
}
