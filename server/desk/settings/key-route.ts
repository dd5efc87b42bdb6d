import type { FastifyInstance } from 'fastify';
import { makeApiKey, newKey } from '../../auth/api-keys.ts';
import type { Deps } from '../../web/deps.ts';
import { readForm } from '../../web/forms/read-form.ts';
import { secretForm } from './secret-form.ts';

/** Makes a key for a program of the shop. */
export function keyRoute(app: FastifyInstance, deps: Deps): void {
  secretForm(app, deps, {
    action: '/desk/keys',
    read: (fields) => {
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
      if (read.ok) return read;
      const faults = read.faults.map((fault) =>
        fault.field === 'name' ? { ...fault, field: 'key-name' } : fault,
      );
      return { ok: false, faults };
    },
    make: async (tx, { principal }, data) => {
      const made = await makeApiKey(tx, principal, data, deps.now());
      return { id: made.key.id, secret: made.secret };
    },
    tell: (secret) => ({ text: `The key’s secret, shown this once: ${secret}` }),
    again: 'This key was made already; its secret was shown then.',
  });
}
