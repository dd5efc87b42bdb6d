import { defined } from '../../../shared/defined.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { CallContext } from '../../call/context.ts';
import type { PageForm } from '../../call/forms.ts';
import { type FormState, selectField, textField } from '../../web/forms/fields.ts';
import type { PartSeen } from './of-part.ts';

const LABELS = { name: 'What both sides call it', armId: 'Which arm of the build it is' };

const fields = ({ arms }: CallContext, shown: FormState): Component[] => [
  textField(shown, 'name', LABELS.name, { hint: 'Such as “the fifth arm” or “from the box”.' }),
  ...(arms.length === 0
    ? []
    : [
        selectField(
          shown,
          'armId',
          LABELS.armId,
          Object.fromEntries(arms.map(({ id, name }) => [id, name])),
          {
            first: 'None that is on record',
            hint: 'Its marks and the valve it sits on then stand beside its sizes.',
          },
        ),
      ]),
];

/** One more part, so that its readings stay apart from those of the others. */
export const addPartForm = (context: CallContext): PageForm => ({
  name: 'hand-part',
  action: `${context.base}/hand-parts`,
  title: 'Another part in the hand',
  labels: LABELS,
  groups: (shown) => [{ slots: fields(context, shown) }],
  buttons: [{ label: 'Add this part', kind: 'plain' }],
});

/** What the part is called from now on, and which arm it is. */
export const namePartForm = (context: CallContext, { detail }: PartSeen): PageForm => ({
  name: 'name-part',
  action: `${context.base}/hand-parts/names`,
  title: 'What this part is called',
  labels: LABELS,
  ...(detail.about.partId === undefined ? {} : { hidden: { partId: detail.about.partId } }),
  initial: defined({ name: detail.about.name, armId: detail.arm?.armId }),
  groups: (shown) => [{ slots: fields(context, shown) }],
  buttons: [{ label: 'Save the name', kind: 'plain' }],
});
