import { SHEET_KINDS } from '../../../shared/schemas/sheet.ts';
import { loadContext } from '../../call/context.ts';
import { correctionForm, standsAs } from '../../call/correction-form.ts';
import { formComponent, type RejectedForm } from '../../call/forms.ts';
import { stepPage } from '../../call-pages/step-page.ts';
import type { Tx } from '../../database/database.ts';
import { notFound } from '../../problems/failure.ts';
import { gaugedField } from '../../web/forms/gauged-field.ts';
import type { PageRequest } from '../../web/page-route.ts';

const LABELS = { reading: 'Reading as it should be' };

/** A reading of the sheet put right or struck out: the old one stays where it was, with the reason. */
export async function correctSheetPage(tx: Tx, req: PageRequest, rejected?: RejectedForm) {
  const context = await loadContext(tx, req);
  const reading = context.record.sheetReadings.find((each) => each.id === req.params.readingId);
  if (reading === undefined) throw notFound('reading');
  const form = correctionForm({
    name: 'correct-sheet',
    action: `${context.base}/sheet/readings/${reading.id}`,
    back: `${context.base}/steps/sheet`,
    labels: LABELS,
    slots: (shown) => [
      gaugedField(shown, 'reading', LABELS.reading, {
        hint: standsAs(reading.reading),
        ...(context.side === 'bench' ? { big: true } : { autofocus: true }),
      }),
    ],
    reasonHint: 'Such as “one turn missed, read again”.',
  });
  const what = `${SHEET_KINDS[reading.kind].toLowerCase()}, ${reading.cylinder} ${reading.valve}`;
  return stepPage(
    context,
    { step: 'sheet', title: `Correct: ${what}` },
    { forms: [form], slots: [formComponent(form, rejected)] },
    rejected,
  );
}
