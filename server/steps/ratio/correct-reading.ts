import type { CallContext } from '../../call/context.ts';
import { correctionForm, standsAs } from '../../call/correction-form.ts';
import { formComponent, type RejectedForm, type StepBody } from '../../call/forms.ts';
import { notFound } from '../../problems/failure.ts';
import { quantityField } from '../../web/forms/fields.ts';
import { dialComponent } from './dial-view.ts';
import { readingWords } from './passes-table.ts';
import { dialUnit } from './reading-form.ts';

const LABELS = {
  peak: 'Reading as it should be',
  zeroReturn: 'Hand back on the base circle at',
};

/** A reading put right or struck out: the old one stays where it was, with the reason. */
export function correctReading(
  context: CallContext,
  readingId: string,
  rejected: RejectedForm | undefined,
): StepBody {
  const reading = context.readings.find((each) => each.id === readingId);
  const setUp = context.setUps.find((each) => each.id === reading?.setUpId);
  if (reading === undefined || setUp === undefined) throw notFound('reading');
  const form = correctionForm({
    name: 'correct',
    action: `${context.base}/readings/${readingId}/correct`,
    back: `${context.base}/steps/ratio?set-up=${setUp.id}`,
    labels: LABELS,
    slots: (shown) => [
      quantityField(shown, 'peak', LABELS.peak, 'length', {
        assume: dialUnit(setUp),
        perTurn: setUp.method.perTurn,
        hint: standsAs(reading.peak),
        ...(context.side === 'bench' ? { big: true } : { autofocus: true }),
      }),
      quantityField(shown, 'zeroReturn', LABELS.zeroReturn, 'length', {
        assume: dialUnit(setUp),
        optional: true,
      }),
    ],
    reasonHint: 'Such as “one turn missed, small hand read again”.',
  });
  const drawn = dialComponent(setUp, reading);
  return {
    forms: [form],
    slots: [formComponent(form, rejected), ...(drawn === undefined ? [] : [drawn])],
  };
}

/** `Valve lift, pass 2` */
export function readingName(context: CallContext, readingId: string): string {
  const reading = context.readings.find((each) => each.id === readingId);
  if (reading === undefined) throw notFound('reading');
  return `${readingWords(reading)}, line ${reading.seq}`;
}
