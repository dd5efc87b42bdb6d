import type { FastifyInstance } from 'fastify';
import { passwordFault } from '../../auth/password-rules.ts';
import { requireStaff } from '../../auth/principal.ts';
import { changePassword, newPassword, preparePassword, setShortcuts } from '../../auth/staff.ts';
import { Failure } from '../../problems/failure.ts';
import type { Deps } from '../../web/deps.ts';
import { postForm } from '../../web/form-route.ts';
import { type FormState, FRESH, summaryOf, textField } from '../../web/forms/fields.ts';
import { type FormFault, readForm } from '../../web/forms/read-form.ts';
import type { PageRequest } from '../../web/page-request.ts';
import { getPage } from '../../web/page-route.ts';
import type { Page } from '../../web/pages/render.ts';

const LABELS = { current: 'Current password', password: 'New password' };

function accountPage(req: PageRequest, shown: FormState): Page {
  const staff = requireStaff(req.principal);
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

/** One's own account: sign out, password, shortcuts. */
export function accountPages(app: FastifyInstance, deps: Deps): void {
  const route = {
    url: '/account',
    side: 'desk' as const,
    page: async (_tx: unknown, req: PageRequest, rejected?: FormState) => accountPage(req, rejected ?? FRESH),
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
}
