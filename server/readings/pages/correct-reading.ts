import { correctionForm, standsAs } from '../../calls/pages/correction-form.ts';
import { type Again, formSlot, type StepBody } from '../../calls/pages/forms-on-page.ts';
import type { Sight } from '../../calls/pages/sight.ts';
import { quantityField } from '../../forms/fields.ts';
import { notFound } from '../../problems/failure.ts';
import { dialView } from './dial-view.ts';
import { readingWords } from './passes-table.ts';
import { dialUnit } from './reading-form.ts';

const LABELS = {
  peak: 'Reading as it should be',
  zeroReturn: 'Hand back on the base circle at',
};

/** A reading put right or struck out: the old one stays where it was, with the reason. */
export function correctReading(sight: Sight, readingId: string, again: Again | undefined): StepBody {
  const reading = sight.readings.find((each) => each.id === readingId);
  const setUp = sight.setUps.find((each) => each.id === reading?.setUpId);
  if (reading === undefined || setUp === undefined) throw notFound('reading');
  const form = correctionForm({
    name: 'correct',
    action: `${sight.base}/readings/${readingId}/correct`,
    back: `${sight.base}/steps/ratio?set-up=${setUp.id}`,
    labels: LABELS,
    slots: (shown) => [
      quantityField(shown, 'peak', LABELS.peak, 'length', {
        assume: dialUnit(setUp),
        perTurn: setUp.method.perTurn,
        hint: standsAs(reading.peak),
        ...(sight.side === 'bench' ? { big: true } : { autofocus: true }),
      }),
      quantityField(shown, 'zeroReturn', LABELS.zeroReturn, 'length', {
        assume: dialUnit(setUp),
        optional: true,
      }),
    ],
    reasonHint: 'Such as “one turn missed, small hand read again”.',
  });
  const drawn = dialView(setUp, reading);
  return {
    forms: [form],
    slots: [formSlot(form, again), ...(drawn === undefined ? [] : [drawn])],
  };
}

/** `Valve lift, pass 2` */
export function readingName(sight: Sight, readingId: string): string {
  const reading = sight.readings.find((each) => each.id === readingId);
  if (reading === undefined) throw notFound('reading');
  return `${readingWords(reading)}, line ${reading.seq}`;
}
