import { inSpoken } from '../../../../shared/quantities/authored.ts';
import { SIDES } from '../../../../shared/schemas/words.ts';
import { inField } from '../../../call/worked/in-field.ts';
import { cardDuration } from '../../../call/worked/known-inputs.ts';
import { atBench, firstAt, type PartForm } from '../../../call/worked/part-form.ts';
import { quantityField, selectField, textField } from '../../../web/forms/fields.ts';
import { sideOf } from './peak.ts';
import { POINTER, pointerComponents, pointerInitial, pointerTyped } from './pointer.ts';

const LABELS = {
  opens: 'Opens',
  closes: 'Closes',
  side: 'Lobe',
  cardDuration: 'Duration of the card',
  card: 'Centreline of the card',
  ...POINTER,
};

/** Where a valve opens and closes, told as the trade tells it, against the card. */
export const eventsForm: PartForm = {
  labels: LABELS,
  button: 'Save both events',
  initial: (context, workings) => {
    const { spec } = context.build;
    const { side } = sideOf(context);
    const lobe = side === 'exhaust' ? 'exhaust' : 'intake';
    const duration = cardDuration(spec, lobe);
    return {
      side: lobe,
      cardDuration: inField(duration),
      card: inField(spec.cam?.[lobe]?.centreline),
      ...pointerInitial(workings),
    };
  },
  groups: (shown, context, workings) => [
    {
      columns: true,
      slots: [
        textField(shown, 'opens', LABELS.opens, {
          hint: 'With its side: 9 BTDC or 10 ATDC on an intake, 52 BBDC on an exhaust.',
          ...firstAt(context),
        }),
        textField(shown, 'closes', LABELS.closes, {
          hint: 'With its side: 41 ABDC on an intake, 4 ATDC or 2 BTDC on an exhaust.',
          ...atBench(context),
        }),
        selectField(shown, 'side', LABELS.side, SIDES),
        quantityField(shown, 'cardDuration', LABELS.cardDuration, 'angle', {
          optional: true,
          hint: inSpoken('At the same lift, usually .050.'),
        }),
        quantityField(shown, 'card', LABELS.card, 'angle', { optional: true }),
        ...pointerComponents(shown, workings),
      ],
    },
  ],
  toTyped: ({
    opens = '',
    closes = '',
    side = 'intake',
    card = '',
    cardDuration: duration = '',
    ...rest
  }) => ({
    opens,
    closes,
    side,
    card,
    cardDuration: duration,
    ...pointerTyped(rest),
  }),
  // A bare angle could be either side of the dead centre, and a wrong one is twice its angle off.
  faultAt: ({ field, detail }) =>
    ['opens', 'closes'].includes(field) && detail.includes('has no unit')
      ? { field, detail: 'needs an angle and its side: BTDC, ATDC, BBDC or ABDC' }
      : { field, detail },
};
