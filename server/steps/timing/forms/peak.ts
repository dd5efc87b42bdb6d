import { inSpoken } from '../../../../shared/quantities/authored.ts';
import { SIDES } from '../../../../shared/schemas/words.ts';
import type { CallContext } from '../../../call/context.ts';
import { inField } from '../../../call/worked/in-field.ts';
import { atBench, firstAt, type PartForm } from '../../../call/worked/part-form.ts';
import { quantityField, selectField } from '../../../web/forms/fields.ts';
import { POINTER, pointerComponents, pointerInitial, pointerTyped } from './pointer.ts';

const LABELS = {
  side: 'Lobe',
  before: 'Wheel on the way up',
  after: 'Wheel on the way down',
  card: 'Centreline of the card',
  ...POINTER,
};

const SIDED = /^(.*?)\s*\b(BTDC|ATDC)\s*$/i;

/** `155 BTDC` is −155 after TDC; without a side an exhaust is told before TDC and an intake after it. */
function afterTop(text: string, side: string): string {
  const sided = SIDED.exec(text);
  const angle = (sided?.[1] ?? text).trim();
  const before = sided === null ? side === 'exhaust' : sided[2]?.toUpperCase() === 'BTDC';
  if (angle === '' || !before) return angle;
  return /^[-−]/.test(angle) ? angle.slice(1) : `-${angle}`;
}

export const sideOf = (context: CallContext): Record<string, string> => ({
  side:
    context.build.spec.cam?.intake?.centreline === undefined &&
    context.build.spec.cam?.exhaust?.centreline !== undefined
      ? 'exhaust'
      : 'intake',
});

/** Two readings at equal drop either side of the peak. */
export const peakForm: PartForm = {
  labels: LABELS,
  button: 'Save the centreline',
  initial: (context, workings) => {
    const of = sideOf(context);
    const lobe = of.side === 'exhaust' ? 'exhaust' : 'intake';
    return {
      ...of,
      card: inField(context.build.spec.cam?.[lobe]?.centreline),
      ...pointerInitial(workings),
    };
  },
  groups: (shown, context, workings) => [
    {
      columns: true,
      slots: [
        quantityField(shown, 'before', LABELS.before, 'angle', {
          hint: inSpoken('.050 in under the peak. After TDC on an intake, before TDC on an exhaust.'),
          ...firstAt(context),
        }),
        quantityField(shown, 'after', LABELS.after, 'angle', {
          hint: 'The same drop past the peak. The other side of TDC: write it, as 12 BTDC.',
          ...atBench(context),
        }),
        selectField(shown, 'side', LABELS.side, SIDES),
        quantityField(shown, 'card', LABELS.card, 'angle', {
          optional: true,
          hint: 'From the cam card, written positive.',
        }),
        ...pointerComponents(shown, workings),
      ],
    },
  ],
  toTyped: ({ before = '', after = '', side = 'intake', card = '', ...rest }) => ({
    before: afterTop(before, side),
    after: afterTop(after, side),
    side,
    card,
    ...pointerTyped(rest),
  }),
  // The detail follows the label of its field.
  faultAt: ({ field, detail }) => ({
    field,
    detail: detail.replace(/^the reading /, 'can’t be: the reading '),
  }),
};
