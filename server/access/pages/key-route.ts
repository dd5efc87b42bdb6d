import type { FastifyInstance } from 'fastify';
import type { Deps } from '../../deps.ts';
import { FRESH, type Shown } from '../../forms/fields.ts';
import { readForm } from '../../forms/read-form.ts';
import { received } from '../../http/page-route.ts';
import { idempotencyKey, perform } from '../../http/perform.ts';
import { renderPage } from '../../pages/render.ts';
import { makeApiKey, newKey } from '../api-keys.ts';
import { requireAdministrator } from '../caller.ts';
import { deskPage } from './desk-page.ts';

/** Keys are made on a route of their own: the secret stands in this one answer and is kept nowhere. */
export function keyRoute(app: FastifyInstance, deps: Deps): void {
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
