import { openCall } from '../../../shared/schemas/commands.ts';
import { CALLER_ROLES, GOALS, UNIT_SYSTEMS } from '../../../shared/schemas/words.ts';
import { errorsOf, formComponent, type PageForm, type RejectedForm } from '../../call/forms.ts';
import type { Tx } from '../../database/database.ts';
import { startCall } from '../../records/calls/open-call.ts';
import type { FormAnswer } from '../../web/form-route.ts';
import { selectField, textField } from '../../web/forms/fields.ts';
import { readForm } from '../../web/forms/read-form.ts';
import type { PageRequest } from '../../web/page-request.ts';
import type { Page } from '../../web/pages/render.ts';

const LABELS = {
  callerName: 'Who is calling',
  callerRole: 'The caller is',
  callBack: 'How to call back',
  goal: 'What they want from this call',
  buildLabel: 'A name for the build',
  units: 'Units',
};

const FORM: PageForm = {
  name: 'new-call',
  action: '/calls/new/open',
  labels: LABELS,
  initial: { goal: 'verify-ratio', units: 'inch' },
  groups: (shown) => [
    {
      slots: [
        textField(shown, 'callerName', LABELS.callerName, { autofocus: true }),
        selectField(shown, 'callerRole', LABELS.callerRole, CALLER_ROLES),
        textField(shown, 'callBack', LABELS.callBack, { hint: 'Number or address, in case the line drops.' }),
        selectField(shown, 'goal', LABELS.goal, GOALS, { hint: 'One goal; read it back.' }),
        textField(shown, 'buildLabel', LABELS.buildLabel, {
          hint: 'Both sides will know it by this, such as “blue small block”.',
        }),
        selectField(shown, 'units', LABELS.units, UNIT_SYSTEMS, { hint: 'Can be changed at any time.' }),
      ],
    },
  ],
  buttons: [
    { label: 'Open the call', kind: 'primary', key: 'k' },
    { label: 'Leave it', href: '/calls' },
  ],
};

export function newCallPage(rejected: RejectedForm | undefined): Page {
  return {
    template: 'plain',
    title: 'New call',
    place: '/calls',
    data: {
      title: 'New call',
      errors: errorsOf([FORM], rejected),
      sections: [formComponent(FORM, rejected)],
    },
  };
}

export async function openFromForm(tx: Tx, req: PageRequest): Promise<FormAnswer> {
  const read = readForm(openCall, req.fields, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: req.fields };
  const call = await startCall(tx, req.principal, read.data);
  return { goTo: `/calls/${call.id}` };
}
