import type { TableData } from '../../../views/parts/table.examples.ts';
import type { ApiKey } from '../../auth/api-keys.ts';
import type { StaffMember } from '../../auth/staff.ts';

function stateOf({ disabledAt, invited }: StaffMember): string {
  if (disabledAt !== undefined) return `left ${disabledAt.slice(0, 10)}`;
  return invited ? 'invited, no password set yet' : 'at the desk';
}

export function peopleTable(people: readonly StaffMember[]): TableData {
  return {
    caption: 'People of the desk',
    columns: [{ label: 'Name' }, { label: 'E-mail' }, { label: 'Roles' }, { label: 'State' }],
    rows: people.map((person) => ({
      cells: [person.name, person.email, person.roles.join(', '), stateOf(person)],
    })),
  };
}

export function keysTable(keys: readonly ApiKey[], people: readonly StaffMember[]): TableData {
  const names = new Map(people.map(({ id, name }) => [id, name]));
  return {
    caption: 'Keys for programs',
    columns: [
      { label: 'For' },
      { label: 'Begins' },
      { label: 'May' },
      { label: 'Made by' },
      { label: 'State' },
    ],
    rows: keys.map((key) => ({
      cells: [
        key.name,
        `${key.prefix}…`,
        key.scopes.join(' and '),
        names.get(key.owner) ?? '',
        key.revokedAt === undefined
          ? `until ${key.expiresAt.slice(0, 10)}`
          : `revoked ${key.revokedAt.slice(0, 10)}`,
      ],
    })),
    empty: 'No key yet. A shop’s own system signs in with one; make it below.',
  };
}
