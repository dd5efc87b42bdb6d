import type { FastifyInstance } from 'fastify';
import type { Slot } from '../../views/parts/part.ts';
import type { Tx } from '../database/database.ts';
import type { Deps } from '../deps.ts';
import { FRESH, type Shown, selectField, summaryOf, textField } from '../forms/fields.ts';
import { readForm } from '../forms/read-form.ts';
import { getPage, type PageRequest, postForm, received } from '../http/page-route.ts';
import { idempotencyKey, perform } from '../http/perform.ts';
import { type Page, renderPage } from '../pages/render.ts';
import { type ApiKey, listApiKeys, makeApiKey, newKey, revokeApiKey } from './api-keys.ts';
import { requireAdministrator } from './caller.ts';
import { passwordFault } from './password-rules.ts';
import { addStaff, disableStaff, listStaff, newStaff, type StaffMember } from './staff.ts';

const LABELS = {
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

function form(title: string, action: string, slots: readonly Slot[], label: string, kind = 'primary'): Slot {
  return {
    template: '/parts/form',
    data: { title, action, key: crypto.randomUUID(), slots, buttons: [{ kind, label }] },
  };
}

function peopleTable(people: readonly StaffMember[]): Slot {
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

function keysTable(keys: readonly ApiKey[]): Slot {
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

function peopleForms(people: readonly StaffMember[], shown: Shown, own: string): Slot[] {
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

function keyForms(keys: readonly ApiKey[], shown: Shown): Slot[] {
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

async function deskPage(tx: Tx, given: PageRequest, shown: Shown, news?: string): Promise<Page> {
  requireAdministrator(given.caller);
  const people = await listStaff(tx, given.caller);
  const keys = await listApiKeys(tx, given.caller);
  return {
    template: 'plain',
    title: 'The desk',
    place: '/desk',
    data: {
      title: 'The desk',
      intro: 'Who works here, and which programs may come in.',
      errors: summaryOf(shown, LABELS),
      sections: [
        ...(news === undefined
          ? []
          : [{ template: '/parts/notice', data: { kind: 'note', text: news, id: 'news' } }]),
        peopleTable(people),
        ...peopleForms(people, shown, given.caller.id),
        keysTable(keys),
        ...keyForms(keys, shown),
      ],
    },
  };
}

/** Keys are made on a route of their own: the secret stands in this one answer and is kept nowhere. */
function keyRoute(app: FastifyInstance, deps: Deps): void {
  app.post('/desk/keys', { schema: { hide: true } }, async (request, reply) => {
    const given = await received(request, reply, deps, 'desk');
    requireAdministrator(given.caller);
    const { key, ...fields } = given.fields;
    const read = readForm(
      newKey,
      {
        name: fields['key-name'] ?? '',
        days: fields.days ?? '',
        'scopes.0': 'read',
        ...(fields.scope === 'write' ? { 'scopes.1': 'write' } : {}),
      },
      { lengths: 'in' },
    );
    const show = async (shown: Shown, status: number, news?: string) => {
      const page = await deps.db.inShop(given.caller.shopId, (tx) => deskPage(tx, given, shown, news));
      const title = status === 422 ? `Error: ${page.title}` : page.title;
      return renderPage(deps, request, reply, { ...page, title, status, caller: given.caller });
    };
    if (!read.ok) {
      const faults = read.faults.map((fault) =>
        fault.field === 'name' ? { ...fault, field: 'key-name' } : fault,
      );
      return show({ typed: fields, faults }, 422);
    }
    let secret: string | undefined;
    await perform(
      deps.db,
      given.caller,
      {
        method: 'POST',
        path: '/desk/keys',
        body: fields,
        key: idempotencyKey(key || undefined),
        whileRunning: 'wait',
      },
      async (tx) => {
        const made = await makeApiKey(tx, given.caller, read.data, deps.now());
        secret = made.secret;
        return { status: 201, body: { id: made.key.id } };
      },
    );
    const news =
      secret === undefined
        ? 'This key was made already; its secret was shown then.'
        : `The key’s secret, shown this once: ${secret}`;
    return show(FRESH, 201, news);
  });
}

/** The administrator's page: people and keys. */
export function deskPages(app: FastifyInstance, deps: Deps): void {
  const route = {
    url: '/desk',
    side: 'desk' as const,
    page: (tx: Tx, given: PageRequest, again?: Shown) => deskPage(tx, given, again ?? FRESH),
  };
  getPage(app, deps, route);
  keyRoute(app, deps);
  postForm(app, deps, {
    ...route,
    action: '/desk/staff',
    run: async (tx, { caller, fields }) => {
      const { key: _, ...typed } = fields;
      const { password: __, ...kept } = typed;
      const read = readForm(newStaff, typed, { lengths: 'in' });
      if (!read.ok) return { faults: read.faults, typed: kept };
      const weak = passwordFault(read.data.password, [read.data.email, read.data.name]);
      if (weak.length > 0) return { faults: weak, typed: kept };
      await addStaff(tx, caller, read.data);
      return { goTo: '/desk' };
    },
  });
  postForm(app, deps, {
    ...route,
    action: '/desk/staff/leave',
    run: async (tx, { caller, fields }) => {
      await disableStaff(tx, caller, fields.person ?? '', deps.now());
      return { goTo: '/desk' };
    },
  });
  postForm(app, deps, {
    ...route,
    action: '/desk/keys/revoke',
    run: async (tx, { caller, fields }) => {
      await revokeApiKey(tx, caller, fields['key-id'] ?? '', deps.now());
      return { goTo: '/desk' };
    },
  });
}
