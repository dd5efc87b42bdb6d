import type { FastifyInstance } from 'fastify';
import { makeApiKey, newKey } from '../../auth/api-keys.ts';
import { requireAdministrator } from '../../auth/principal.ts';
import type { Deps } from '../../web/deps.ts';
import { type FormState, FRESH } from '../../web/forms/fields.ts';
import { readForm } from '../../web/forms/read-form.ts';
import { received } from '../../web/page-request.ts';
import { renderPage } from '../../web/pages/render.ts';
import { idempotencyKey, runOnceInShop } from '../../web/run-once.ts';
import { deskPage } from './desk-page.ts';

/** Keys are made on a route of their own: the secret stands in this one answer and is kept nowhere. */
export function keyRoute(app: FastifyInstance, deps: Deps): void {
  app.post('/desk/keys', { schema: { hide: true } }, async (request, reply) => {
    const req = await received(request, reply, deps, 'desk');
    requireAdministrator(req.principal);
    const { key, ...fields } = req.fields;
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
    const show = async (shown: FormState, status: number, news?: string) => {
      const page = await deps.db.shopTransaction(req.principal.shopId, (tx) =>
        deskPage(tx, req, shown, news),
      );
      const title = status === 422 ? `Error: ${page.title}` : page.title;
      return renderPage(deps, request, reply, { ...page, title, status, principal: req.principal });
    };
    if (!read.ok) {
      const faults = read.faults.map((fault) =>
        fault.field === 'name' ? { ...fault, field: 'key-name' } : fault,
      );
      return show({ typed: fields, faults }, 422);
    }
    let secret: string | undefined;
    await runOnceInShop(
      deps.db,
      req.principal,
      {
        method: 'POST',
        path: '/desk/keys',
        body: fields,
        key: idempotencyKey(key || undefined),
        whileRunning: 'wait',
      },
      async (tx) => {
        const made = await makeApiKey(tx, req.principal, read.data, deps.now());
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
