import { asEntered } from '../../../../shared/quantities/as-entered.ts';
import { siIf } from '../../../../shared/schemas/entered.ts';
import type { CallContext } from '../../../call/context.ts';
import { inField } from '../../../call/worked/in-field.ts';
import { atBench, firstAt, type PartForm, sameField } from '../../../call/worked/part-form.ts';
import { areaField, quantityField } from '../../../web/forms/fields.ts';
import { newestFound } from '../lash-text.ts';

const LABELS = {
  shimFitted: 'Shim that is in',
  lashFound: 'Lash found with it',
  lashWanted: 'Lash wanted',
  stock: 'Shims that can be had',
};

const cardLash = ({ build }: CallContext, valve: 'intake' | 'exhaust') => build.spec.cam?.[valve]?.lash;

/** What the card asks for, where it differs between the two. */
function bothOfCard(context: CallContext): string {
  const [intake, exhaust] = [cardLash(context, 'intake'), cardLash(context, 'exhaust')];
  if (intake === undefined && exhaust === undefined) return 'Of the same heat as the lash found.';
  if (siIf(intake) === siIf(exhaust)) return 'As the card has it. Of the same heat as the lash found.';
  return `Card: intake ${asEntered(intake?.readAs ?? 'not said')}, exhaust ${asEntered(exhaust?.readAs ?? 'not said')}. Of the same heat as the lash found.`;
}

/** The shim for a wanted lash, where the adjuster is a shim over or under a bucket or on the stem. */
export const shimForm: PartForm = {
  labels: LABELS,
  button: 'Save the shim',
  initial: (context) => {
    const last = newestFound(context);
    return {
      lashFound: last?.inForm ?? '',
      lashWanted: inField(cardLash(context, last?.valve ?? 'intake')),
    };
  },
  groups: (shown, context) => {
    const last = newestFound(context);
    return [
      {
        columns: true,
        slots: [
          quantityField(shown, 'shimFitted', LABELS.shimFitted, 'length', {
            hint: 'Measured itself, as 2.60 mm: its marking is not its thickness.',
            ...firstAt(context),
          }),
          quantityField(shown, 'lashFound', LABELS.lashFound, 'length', {
            hint:
              last === undefined
                ? 'Feeler on the base circle.'
                : `Newest in the log: ${last.name}, ${last.gap}.`,
            ...atBench(context),
          }),
          quantityField(shown, 'lashWanted', LABELS.lashWanted, 'length', { hint: bothOfCard(context) }),
        ],
      },
      {
        slots: [
          areaField(shown, 'stock', LABELS.stock, {
            optional: true,
            rows: 2,
            hint: 'Measured, as 2.60 mm, 2.65 mm, 2.70 mm.',
          }),
        ],
      },
    ];
  },
  toTyped: ({ shimFitted = '', lashFound = '', lashWanted = '', stock = '' }) => ({
    shimFitted,
    lashFound,
    lashWanted,
    stock,
  }),
  faultAt: sameField,
};
