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
  person: 'Who leaves',
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

export function peopleComponents(people: readonly StaffMember[], shown: FormState, own: string): Component[] {
  const others = people.filter((person) => person.disabledAt === undefined && person.id !== own);
  const add = form(
    'Add a person',
    '/desk/staff',
    [
      textField(shown, 'name', LABELS.name),
      textField(shown, 'email', LABELS.email, { type: 'email' }),
      selectField(shown, 'role', LABELS.role, ROLE_WORDS),
      textField({ typed: {}, faults: shown.faults }, 'password', LABELS.password, {
        type: 'password',
        autocomplete: 'new-password',
        hint: 'At least 8 characters; they change it under their own account.',
      }),
    ],
    'Add this person',
  );
  if (others.length === 0) return [add];
  const words = Object.fromEntries(others.map((person) => [person.id, person.name]));
  return [
    add,
    form(
      'Take a person off the desk',
      '/desk/staff/leave',
      [selectField(FRESH, 'person', LABELS.person, words)],
      'Take off the desk',
      'danger',
    ),
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
