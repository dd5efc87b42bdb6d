import type { Component } from '../../../views/parts/part.ts';
import type { ApiKey } from '../../auth/api-keys.ts';
import type { StaffMember } from '../../auth/staff.ts';

export function peopleTable(people: readonly StaffMember[]): Component {
  return {
    template: '/parts/table',
    data: {
      caption: 'People of the desk',
      columns: [{ label: 'Name' }, { label: 'E-mail' }, { label: 'Roles' }, { label: 'State' }],
      rows: people.map((person) => ({
        cells: [
          person.name,
          person.email,
          person.roles.join(', '),
          person.disabledAt === undefined ? 'at the desk' : `left ${person.disabledAt.slice(0, 10)}`,
        ],
      })),
    },
  };
}

export function keysTable(keys: readonly ApiKey[]): Component {
  return {
    template: '/parts/table',
    data: {
      caption: 'Keys for programs',
      columns: [{ label: 'For' }, { label: 'Begins' }, { label: 'May' }, { label: 'State' }],
      rows: keys.map((key) => ({
        cells: [
          key.name,
          `${key.prefix}…`,
          key.scopes.join(' and '),
          key.revokedAt === undefined
            ? `until ${key.expiresAt.slice(0, 10)}`
            : `revoked ${key.revokedAt.slice(0, 10)}`,
        ],
      })),
      empty: 'No key yet. A shop’s own system signs in with one; make it below.',
    },
  };
}
