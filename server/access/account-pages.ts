import type { FastifyInstance } from 'fastify';
import type { Deps } from '../deps.ts';
import { FRESH, type Shown, summaryOf, textField } from '../forms/fields.ts';
import { readForm } from '../forms/read-form.ts';
import { getPage, type PageRequest, postForm } from '../http/page-route.ts';
import type { Page } from '../pages/render.ts';
import { requireStaff } from './caller.ts';
import { passwordFault } from './password-rules.ts';
import { changePassword, newPassword, setShortcuts } from './staff.ts';

const LABELS = { current: 'Password as it is', password: 'New password' };

function accountPage(given: PageRequest, shown: Shown): Page {
  const staff = requireStaff(given.caller);
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

function error(shown: Shown, name: 'current' | 'password'): { error?: string } {
  const fault = shown.faults.find((each) => each.field === name);
  return fault === undefined ? {} : { error: `${LABELS[name]} ${fault.detail}` };
}

/** One's own account: sign out, password, shortcuts. */
export function accountPages(app: FastifyInstance, deps: Deps): void {
  const route = {
    url: '/account',
    side: 'desk' as const,
    page: async (_tx: unknown, given: PageRequest, again?: Shown) => accountPage(given, again ?? FRESH),
  };
  getPage(app, deps, route);
  postForm(app, deps, {
    ...route,
    action: '/account/password',
    run: async (tx, { caller, fields }) => {
      const { key: _, ...typed } = fields;
      const read = readForm(newPassword, typed, { lengths: 'in' });
      if (!read.ok) return { faults: read.faults, typed: {} };
      const weak = passwordFault(read.data.password, [caller.name]);
      if (weak.length > 0) return { faults: weak, typed: {} };
      const changed = await changePassword(tx, caller, read.data, deps.now());
      return changed
        ? { goTo: '/account' }
        : { faults: [{ field: 'current', detail: 'does not fit' }], typed: {} };
    },
  });
  postForm(app, deps, {
    ...route,
    action: '/account/shortcuts',
    run: async (tx, { caller, fields }) => {
      await setShortcuts(tx, caller, fields.on === 'yes');
      return { goTo: '/account' };
    },
  });
}
