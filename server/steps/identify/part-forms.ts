import {
  FEATURE_WORDS,
  isPartFeature,
  isPartSize,
  PART_FEATURES,
  PART_MARKS,
  PART_SIZES,
} from '../../../shared/schemas/part-words.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import type { FormGroup } from '../../../views/parts/form.examples.ts';
import type { CallContext } from '../../call/context.ts';
import { correctionForm, standsAs } from '../../call/correction-form.ts';
import type { PageForm } from '../../call/forms.ts';
import type { AskedOfPart } from '../../drawings/part.ts';
import type { PartReading } from '../../records/part-readings/part-readings.ts';
import { choiceField, type FormState, quantityField, textField } from '../../web/forms/fields.ts';

export const PLACE = 'Where on the part, or how it was done';
export const partTitle = (kind: AskedOfPart): string => ({ ...PART_SIZES, ...PART_FEATURES })[kind];

const bigAt = (context: CallContext) => (context.side === 'bench' ? { big: true } : { autofocus: true });

/** The one thing asked for now: a size with its unit, or one of a few words. */
export function partForm(context: CallContext, kind: AskedOfPart): PageForm {
  const title = partTitle(kind);
  return {
    name: 'part',
    action: `${context.base}/part-readings`,
    hidden: { kind },
    labels: { size: title, word: title, place: PLACE },
    groups: (shown) => [
      {
        slots: [
          isPartFeature(kind)
            ? choiceField(shown, 'word', title, FEATURE_WORDS[kind], { inline: true })
            : quantityField(shown, 'size', title, 'length', { assume: 'in', ...bigAt(context) }),
          textField(shown, 'place', PLACE, { optional: true, hint: 'Such as “turned a quarter turn”.' }),
        ],
      },
    ],
    buttons: [{ label: 'Keep reading', kind: 'primary', key: 'k' }],
  };
}

const HINTS: Readonly<Record<keyof typeof PART_MARKS, string>> = {
  'ratio-stamp': 'Exactly as it stands there, dot and all. Nothing there: leave it empty.',
  'other-number': 'Letters too. It may be a lot number; it is not a part number.',
  'box-label': 'Not from the part: from the box or the invoice alone.',
};

function markGroup(shown: FormState, kind: keyof typeof PART_MARKS): FormGroup {
  return {
    legend: PART_MARKS[kind],
    hint: HINTS[kind],
    slots: [
      textField(shown, `${kind}.mark`, 'Word for word'),
      textField(shown, `${kind}.place`, 'Where, how high, stamped, engraved or cast', { optional: true }),
    ],
  };
}

/** The three marks: each has its own field, and nothing is copied from one to another. */
export function marksForm(context: CallContext): PageForm {
  const kinds = keysOf(PART_MARKS);
  return {
    name: 'marks',
    action: `${context.base}/part-marks`,
    title: 'Marks, word for word',
    labels: Object.fromEntries(kinds.map((kind) => [`${kind}.mark`, PART_MARKS[kind]])),
    groups: (shown) => kinds.map((kind) => markGroup(shown, kind)),
    buttons: [{ label: 'Keep these marks', kind: 'plain' }],
  };
}

/** A reading of the part put right or struck out. */
export function partCorrectionForm(context: CallContext, reading: PartReading): PageForm {
  const { kind, id } = reading;
  const labels = {
    size: 'Size as it should be',
    word: 'What it should be',
    mark: 'The mark as it should be',
    place: PLACE,
  };
  const hint = standsAs(reading);
  return correctionForm({
    name: 'correct-part',
    action: `${context.base}/part-readings/${id}/correct`,
    back: `${context.base}/steps/identify`,
    labels,
    initial: { place: reading.place },
    slots: (shown) => [
      isPartSize(kind)
        ? quantityField(shown, 'size', labels.size, 'length', { assume: 'in', hint, ...bigAt(context) })
        : isPartFeature(kind)
          ? choiceField(shown, 'word', labels.word, FEATURE_WORDS[kind], { inline: true, hint })
          : textField(shown, 'mark', labels.mark, { hint, ...bigAt(context) }),
      textField(shown, 'place', PLACE, { optional: true }),
    ],
    reasonHint: 'Such as “jaws were cocked, read again”.',
  });
}
