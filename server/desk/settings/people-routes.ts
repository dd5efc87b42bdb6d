import type { FastifyInstance } from 'fastify';
import { makePasswordLink } from '../../auth/password-links.ts';
import { passwordFault } from '../../auth/password-rules.ts';
import {
  addStaff,
  bringBack,
  changeRole,
  disableStaff,
  firstPasswordHash,
  newRole,
  newStaff,
} from '../../auth/staff.ts';
import type { Tx } from '../../database/database.ts';
import type { Deps } from '../../web/deps.ts';
import { postForm } from '../../web/form-route.ts';
import { type FormState, FRESH } from '../../web/forms/fields.ts';
import { readForm } from '../../web/forms/read-form.ts';
import type { PageRequest } from '../../web/page-request.ts';
import { deskPage } from './desk-page.ts';
import { secretForm } from './secret-form.ts';

const AGAIN = 'That was done already; the link was shown then. Make another for them below.';

const linkNews = (secret: string, origin: string) => ({
  text: 'Give them this link, by which they set their password once. It is shown this once.',
  link: `${origin}/password/${secret}`,
});

const picked = (name: string) => (fields: PageRequest['fields']) => ({
  ok: true as const,
  data: fields[name] ?? '',
});

/** Who comes to the desk, and back to it, and who forgot a password: each gets a link of their own. */
function linkForms(app: FastifyInstance, deps: Deps): void {
  secretForm(app, deps, {
    action: '/desk/staff',
    read: ({ password: first, ...fields }) => {
      const withPassword = first === undefined || first === '' ? fields : { ...fields, password: first };
      const read = readForm(newStaff, withPassword, { lengths: 'in' });
      if (!read.ok) return read;
      const { password, email, name } = read.data;
      const weak = password === undefined ? [] : passwordFault(password, [email, name]);
      return weak.length > 0
        ? { ok: false, faults: weak }
        : { ok: true, data: { input: read.data, hash: undefined as string | undefined } };
    },
    prepare: async ({ principal }, { input }) => ({
      input,
      hash: await firstPasswordHash(principal, input.password),
    }),
    make: async (tx, { principal }, { input, hash }) => {
      const { person, secret } = await addStaff(tx, principal, input, hash, deps.now());
      return secret === undefined ? { id: person.id } : { id: person.id, secret };
    },
    tell: linkNews,
    again: AGAIN,
  });
  secretForm(app, deps, {
    action: '/desk/staff/back',
    read: picked('who-is-back'),
    make: async (tx, { principal }, id) => {
      const { secret } = await bringBack(tx, principal, id, deps.now());
      return { id, secret };
    },
    tell: linkNews,
    again: AGAIN,
  });
  secretForm(app, deps, {
    action: '/desk/staff/password-link',
    read: picked('who-forgot'),
    make: async (tx, { principal }, id) => {
      const { secret } = await makePasswordLink(tx, principal, id, deps.now());
      return { id, secret };
    },
    tell: linkNews,
    again: AGAIN,
  });
}

/** What the administrator does about the people of the desk. */
export function peopleRoutes(app: FastifyInstance, deps: Deps): void {
  const route = {
    url: '/desk',
    side: 'desk' as const,
    page: (tx: Tx, req: PageRequest, rejected?: FormState) => deskPage(tx, req, rejected ?? FRESH),
  };
  linkForms(app, deps);
  postForm(app, deps, {
    ...route,
    action: '/desk/staff/leave',
    run: async (tx, { principal, fields }) => {
      await disableStaff(tx, principal, fields['who-leaves'] ?? '', deps.now());
      return { goTo: '/desk' };
    },
  });
  postForm(app, deps, {
    ...route,
    action: '/desk/staff/role',
    run: async (tx, { principal, fields }) => {
      const read = readForm(newRole, { role: fields['new-role'] ?? '' }, { lengths: 'in' });
      if (!read.ok)
        return { faults: read.faults.map((fault) => ({ ...fault, field: 'new-role' })), typed: fields };
      await changeRole(tx, principal, fields['whose-role'] ?? '', read.data, deps.now());
      return { goTo: '/desk' };
    },
  });
}
