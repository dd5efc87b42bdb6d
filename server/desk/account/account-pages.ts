import type { FastifyInstance } from 'fastify';
import type { Component } from '../../../views/parts/components.ts';
import { changePassword, newPassword, preparePassword } from '../../auth/own-password.ts';
import { setShortcuts } from '../../auth/own-shortcuts.ts';
import { passwordFault } from '../../auth/password-rules.ts';
import { requireStaff } from '../../auth/principal.ts';
import { endOtherSessions, listOwnSessions, type OwnSession } from '../../auth/sessions.ts';
import type { Tx } from '../../database/database.ts';
import { Failure } from '../../problems/failure.ts';
import { tableComponent } from '../../web/components.ts';
import type { Deps } from '../../web/deps.ts';
import { postForm } from '../../web/form-route.ts';
import { type FormState, FRESH, summaryOf, textField } from '../../web/forms/fields.ts';
import { type FormFault, readForm } from '../../web/forms/read-form.ts';
import type { PageRequest } from '../../web/page-request.ts';
import { getPage } from '../../web/page-route.ts';
import type { Page } from '../../web/pages/render.ts';

const LABELS = { current: 'Current password', password: 'New password' };

/** `2026-03-14 09:26 UTC` */
const momentOf = (at: string): string => `${at.slice(0, 10)} ${at.slice(11, 16)} UTC`;

function sessionsComponents(sessions: readonly OwnSession[]): Component[] {
  const others = sessions.filter(({ own }) => !own);
  return [
    tableComponent({
      caption: 'Where you are signed in',
      columns: [{ label: 'Since' }, { label: 'Last used' }, { label: 'Ends' }, { label: 'Which' }],
      rows: sessions.map(({ openedAt, usedAt, expiresAt, own }) => ({
        cells: [momentOf(openedAt), momentOf(usedAt), momentOf(expiresAt), own ? 'this one' : 'another'],
      })),
    }),
    ...(others.length === 0
      ? []
      : [
          {
            template: '/parts/form' as const,
            data: {
              action: '/account/sessions/end-others',
              key: crypto.randomUUID(),
              slots: [],
              buttons: [
                {
                  kind: 'danger' as const,
                  label: others.length === 1 ? 'End the other one' : `End the other ${others.length}`,
                },
              ],
            },
          },
        ]),
  ];
}

async function accountPage(tx: Tx, req: PageRequest, shown: FormState, now: Date): Promise<Page> {
  const staff = requireStaff(req.principal);
  const sessions = await listOwnSessions(tx, req.principal, now);
  return {
    template: 'plain',
    title: 'Your account',
    place: '/account',
    data: {
      title: 'Your account',
      intro: `${staff.name}: ${staff.roles.join(', ')}.`,
      errors: summaryOf(shown, LABELS),
      sections: [
        {
          template: '/parts/form',
          data: { action: '/sign-out', slots: [], buttons: [{ kind: 'plain', label: 'Sign out' }] },
        },
        {
          template: '/parts/form',
          data: {
            title: 'Change the password',
            action: '/account/password',
            key: crypto.randomUUID(),
            slots: [
              textField(FRESH, 'current', LABELS.current, {
                type: 'password',
                autocomplete: 'current-password',
                ...error(shown, 'current'),
              }),
              textField(FRESH, 'password', LABELS.password, {
                type: 'password',
                autocomplete: 'new-password',
                hint: 'At least 8 characters. Your other sessions end.',
                ...error(shown, 'password'),
              }),
            ],
            buttons: [{ kind: 'primary', label: 'Change the password' }],
          },
        },
        {
          template: '/parts/form',
          data: {
            title: staff.shortcuts ? 'Single-key shortcuts are on' : 'Single-key shortcuts are off',
            action: '/account/shortcuts',
            key: crypto.randomUUID(),
            hidden: { on: staff.shortcuts ? 'no' : 'yes' },
            slots: [],
            buttons: [{ kind: 'plain', label: staff.shortcuts ? 'Turn shortcuts off' : 'Turn shortcuts on' }],
          },
        },
        ...sessionsComponents(sessions),
      ],
    },
  };
}

function error(shown: FormState, name: 'current' | 'password'): { error?: string } {
  const fault = shown.faults.find((each) => each.field === name);
  return fault === undefined ? {} : { error: `${LABELS[name]} ${fault.detail}` };
}

/** What is wrong, for the page; nothing of it is typed there again. */
const refusal = (faults: readonly FormFault[]) => async () => ({ faults, typed: {} });

/** That it was tried too often is told on the page; anything else is no matter of the form. */
function tooFast(error: unknown): Failure {
  if (error instanceof Failure && error.code === 'quota-exceeded') return error;
  throw error;
}

/** One’s own account: sign out, password, shortcuts, sessions. */
export function accountPages(app: FastifyInstance, deps: Deps): void {
  const route = {
    url: '/account',
    side: 'desk' as const,
    page: (tx: Tx, req: PageRequest, rejected?: FormState) =>
      accountPage(tx, req, rejected ?? FRESH, deps.now()),
  };
  getPage(app, deps, route);
  postForm(app, deps, {
    ...route,
    action: '/account/password',
    before: async ({ principal, fields }) => {
      const { key: _, ...typed } = fields;
      const read = readForm(newPassword, typed, { lengths: 'in' });
      if (!read.ok) return refusal(read.faults);
      const weak = passwordFault(read.data.password, [principal.name]);
      if (weak.length > 0) return refusal(weak);
      const change = await preparePassword(deps.db, deps.signInLimits, principal, read.data).catch(tooFast);
      if (change instanceof Failure) return refusal([{ field: '', detail: change.detail }]);
      return async (tx) =>
        change !== undefined && (await changePassword(tx, principal, change, deps.now()))
          ? { goTo: '/account' }
          : { faults: [{ field: 'current', detail: 'does not fit' }], typed: {} };
    },
  });
  postForm(app, deps, {
    ...route,
    action: '/account/shortcuts',
    run: async (tx, { principal, fields }) => {
      await setShortcuts(tx, principal, fields.on === 'yes');
      return { goTo: '/account' };
    },
  });
  postForm(app, deps, {
    ...route,
    action: '/account/sessions/end-others',
    run: async (tx, { principal }) => {
      await endOtherSessions(tx, principal, deps.now());
      return { goTo: '/account' };
    },
  });
}
