import type { ButtonData } from '../../../views/parts/button.examples.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { ApiKey } from '../../auth/api-keys.ts';
import type { StaffMember } from '../../auth/staff.ts';
import { type FormState, FRESH, selectField, textField } from '../../web/forms/fields.ts';

export const LABELS = {
  name: 'Name',
  email: 'E-mail address',
  role: 'Role',
  password: 'First password',
  'key-name': 'What the key is for',
  scope: 'What it may do',
  days: 'Days until it expires',
  'who-forgot': 'Who',
  'whose-role': 'Who',
  'who-leaves': 'Who leaves',
  'who-is-back': 'Who comes back',
  'new-role': 'New role',
  'key-id': 'Which key',
};

const ROLE_WORDS = { desk: 'Desk', quality: 'Quality', administrator: 'Administrator' };

const SCOPE_WORDS = { read: 'Read', write: 'Read and write' };

function form(
  title: string,
  action: string,
  slots: readonly Component[],
  label: string,
  kind: ButtonData['kind'] = 'primary',
): Component {
  return {
    template: '/parts/form',
    data: { title, action, key: crypto.randomUUID(), slots, buttons: [{ kind, label }] },
  };
}

const picking = (people: readonly StaffMember[]) =>
  Object.fromEntries(people.map((person) => [person.id, person.name]));

/** What may be done about a person: nothing of it is shown while there is nobody to do it to. */
function aboutOthers(people: readonly StaffMember[], shown: FormState, own: string): Component[] {
  const open = people.filter(({ disabledAt }) => disabledAt === undefined);
  const others = open.filter(({ id }) => id !== own);
  const left = people.filter(({ disabledAt }) => disabledAt !== undefined);
  return [
    ...(others.length === 0
      ? []
      : [
          form(
            'Somebody forgot their password',
            '/desk/staff/password-link',
            [selectField(FRESH, 'who-forgot', LABELS['who-forgot'], picking(others))],
            'Make a link for them',
            'plain',
          ),
        ]),
    ...(open.length < 2
      ? []
      : [
          form(
            'Change a role',
            '/desk/staff/role',
            [
              // Oneself last: nobody gives up the desk by a press too many.
              selectField(shown, 'whose-role', LABELS['whose-role'], {
                ...picking(others),
                ...picking(open.filter(({ id }) => id === own)),
              }),
              selectField(shown, 'new-role', LABELS['new-role'], ROLE_WORDS),
            ],
            'Change the role',
            'plain',
          ),
        ]),
    ...(others.length === 0
      ? []
      : [
          form(
            'Take a person off the desk',
            '/desk/staff/leave',
            [selectField(FRESH, 'who-leaves', LABELS['who-leaves'], picking(others))],
            'Take off the desk',
            'danger',
          ),
        ]),
    ...(left.length === 0
      ? []
      : [
          form(
            'Bring a person back',
            '/desk/staff/back',
            [selectField(FRESH, 'who-is-back', LABELS['who-is-back'], picking(left))],
            'Bring back',
            'plain',
          ),
        ]),
  ];
}

export function peopleComponents(people: readonly StaffMember[], shown: FormState, own: string): Component[] {
  return [
    form(
      'Add a person',
      '/desk/staff',
      [
        textField(shown, 'name', LABELS.name),
        textField(shown, 'email', LABELS.email, { type: 'email' }),
        selectField(shown, 'role', LABELS.role, ROLE_WORDS),
        textField({ typed: {}, faults: shown.faults }, 'password', LABELS.password, {
          type: 'password',
          autocomplete: 'new-password',
          hint: 'Left empty, they set their own by a link that you give them. Otherwise at least 8 characters.',
        }),
      ],
      'Add this person',
    ),
    ...aboutOthers(people, shown, own),
  ];
}

export function keyComponents(keys: readonly ApiKey[], shown: FormState): Component[] {
  const open = keys.filter((key) => key.revokedAt === undefined);
  const make = form(
    'Make a key',
    '/desk/keys',
    [
      textField(shown, 'key-name', LABELS['key-name']),
      selectField(shown, 'scope', LABELS.scope, SCOPE_WORDS),
      textField(shown, 'days', LABELS.days, { hint: 'Left empty: 365.' }),
    ],
    'Make this key',
  );
  if (open.length === 0) return [make];
  const words = Object.fromEntries(open.map((key) => [key.id, `${key.name} (${key.prefix}…)`]));
  return [
    make,
    form(
      'Revoke a key',
      '/desk/keys/revoke',
      [selectField(FRESH, 'key-id', LABELS['key-id'], words)],
      'Revoke this key',
      'danger',
    ),
  ];
}
