import { correctTipMark, newTipMark } from '../../../../shared/schemas/tip-mark.ts';
import type { CallContext } from '../../../call/context.ts';
import { correctionForm } from '../../../call/correction-form.ts';
import type { PageForm } from '../../../call/forms.ts';
import { isStopped } from '../../../call/under-stop.ts';
import { valveWords } from '../../../call/valve-words.ts';
import { inField } from '../../../call/worked/in-field.ts';
import type { TipMark } from '../../../records/tip-marks/tip-mark-table.ts';
import { numberField, selectField } from '../../../web/forms/fields.ts';
import type { Fields } from '../../../web/forms/read-form.ts';
import { big, foldedOf, howMade, MARK_LABELS, sizeFields } from './mark-fields.ts';

/** What the next mark is likely to have in common with the last; how it came about is asked for each. */
function initialOf(last: TipMark | undefined): Fields {
  if (last === undefined) return {};
  return {
    cylinder: String(last.cylinder),
    valve: last.valve,
    pushrodOver: last.pushrodOver,
    stem: inField(last.stem),
  };
}

/** One mark: which valve, its width, where it sits, and the pushrod it was made with. */
export function markForm(context: CallContext, last: TipMark | undefined): PageForm {
  const stopped = isStopped(context);
  const initial = initialOf(last);
  return {
    name: 'mark',
    action: `${context.base}/tip-marks`,
    schema: newTipMark,
    labels: MARK_LABELS,
    ...(stopped ? { title: 'A mark that was found after running' } : {}),
    initial: stopped ? { ...initial, found: 'after-running' } : initial,
    groups: (shown) => [
      {
        columns: true,
        slots: [
          numberField(shown, 'cylinder', MARK_LABELS.cylinder, { inputmode: 'numeric', ...big(context) }),
          selectField(shown, 'valve', MARK_LABELS.valve, valveWords(context), { first: 'Not said' }),
        ],
      },
      { columns: true, slots: sizeFields(shown, context) },
      { columns: true, slots: howMade(shown, stopped) },
      foldedOf(shown, context),
    ],
    buttons: [{ label: 'Save the mark', kind: 'primary', key: 'k' }],
  };
}

/** A mark put right or struck out: the old one stays where it was, with the reason. */
export function markCorrectionForm(context: CallContext, mark: TipMark): PageForm {
  return correctionForm({
    name: 'correct-mark',
    action: `${context.base}/tip-marks/${mark.id}`,
    schema: correctTipMark,
    back: `${context.base}/steps/geometry?of=marks`,
    labels: MARK_LABELS,
    initial: {
      width: inField(mark.width),
      side: mark.side,
      off: inField(mark.off),
      pushrod: inField(mark.pushrod),
      pushrodOver: mark.pushrodOver,
      shims: inField(mark.shims),
      stem: inField(mark.stem),
      spring: mark.spring,
      found: mark.found,
    },
    slots: (shown) => [
      ...sizeFields(shown, context),
      ...howMade(shown, false),
      ...foldedOf(shown, context).slots,
    ],
    reasonHint: 'Such as “caliper was on the edge, read again”.',
  });
}

/** What goes along when a mark is put right. */
export const MARK_ALONG = ['side', 'off', 'pushrod', 'pushrodOver', 'shims', 'stem', 'spring', 'found'];
