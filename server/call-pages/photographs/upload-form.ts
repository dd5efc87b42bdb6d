import type { CallContext } from '../../call/context.ts';
import type { PageForm, RejectedForm } from '../../call/forms.ts';
import { SHOWS } from '../../records/photographs/new-photograph.ts';
import { fieldId, selectField, textField } from '../../web/forms/fields.ts';

const LABELS = { shows: 'What it shows', caption: 'What to look at', picture: 'Photograph' };

const NAME = 'photograph';

/** Where a photograph is kept: at the field itself, which a browser then has in focus. */
export const photographAt = ({ base }: Pick<CallContext, 'base'>): string =>
  `${base}/photographs#${fieldId('picture', { prefix: NAME })}`;

export function uploadForm(context: CallContext, rejected: RejectedForm | undefined): PageForm {
  const fault = rejected?.faults.find((each) => each.field === 'picture');
  return {
    name: NAME,
    action: `${context.base}/photographs`,
    labels: LABELS,
    title: 'Save a photograph',
    upload: true,
    buttons: [{ kind: 'primary', label: 'Save photograph' }],
    groups: (shown) => [
      {
        slots: [
          {
            template: '/parts/file',
            data: {
              id: fieldId('picture', shown),
              name: 'picture',
              label: LABELS.picture,
              accept: 'image/jpeg,image/png,image/webp',
              hint: 'JPEG, PNG or WebP, 12 MB at the most. The place where it was taken is left out.',
              ...(fault === undefined ? {} : { error: `${LABELS.picture} ${fault.detail}` }),
            },
          },
          selectField(shown, 'shows', LABELS.shows, SHOWS),
          textField(shown, 'caption', LABELS.caption, { optional: true }),
        ],
      },
    ],
  };
}
