import { correctSheetReading, SHEET_KINDS } from '../../../shared/schemas/sheet.ts';
import { correctionForm, standsAs } from '../../call/correction-form.ts';
import { formComponent } from '../../call/forms.ts';
import { entryCorrection } from '../../call/step-correction.ts';
import { notFound } from '../../problems/failure.ts';
import { replaceSheetReading } from '../../records/sheet/replace-reading.ts';
import { gaugedField } from '../../web/forms/gauged-field.ts';

const LABELS = { reading: 'Reading as it should be' };

/** A reading of the sheet put right or struck out: the old one stays where it was, with the reason. */
export const sheetCorrection = entryCorrection({
  path: '/sheet/readings/:readingId',
  param: 'readingId',
  entries: ({ record }) => record.sheetReadings,
  schema: correctSheetReading,
  fields: () => ({ value: 'reading' }),
  find: async () => undefined,
  page({ context }, id, rejected) {
    const reading = context.record.sheetReadings.find((each) => each.id === id);
    if (reading === undefined) throw notFound('reading');
    const form = correctionForm({
      name: 'correct-sheet',
      action: `${context.base}/sheet/readings/${id}`,
      schema: correctSheetReading,
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
    return {
      title: `Correct: ${SHEET_KINDS[reading.kind].toLowerCase()}, ${reading.cylinder} ${reading.valve}`,
      body: { forms: [form], slots: [formComponent(form, rejected)] },
    };
  },
  replace: async (input, _, { tx, principal, call }, id) => {
    await replaceSheetReading(tx, principal, call.buildId, id, input);
    return { step: 'sheet' };
  },
});
