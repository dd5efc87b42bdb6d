import type { FastifyInstance } from 'fastify';
import type { Tx } from '../../database/database.ts';
import { Failure } from '../../problems/failure.ts';
import type { Deps } from '../../web/deps.ts';
import { type FormState, FRESH } from '../../web/forms/fields.ts';
import type { Fields, FormFault } from '../../web/forms/read-form.ts';
import { originOf } from '../../web/http/origin.ts';
import { type PageRequest, received } from '../../web/page-request.ts';
import { renderPage } from '../../web/pages/render.ts';
import { idempotencyKey, runOnceInShop } from '../../web/run-once.ts';
import { deskPage, type News } from './desk-page.ts';

type Read<Data> =
  | { readonly ok: true; readonly data: Data }
  | { readonly ok: false; readonly faults: readonly FormFault[] };

interface Made {
  readonly id: string;
  /** Left out where nothing has to be told. */
  readonly secret?: string;
}

interface SecretForm<Data> {
  readonly action: string;
  read(fields: Fields): Read<Data>;
  /** What takes long, before the transaction. */
  prepare?(req: PageRequest, data: Data): Promise<Data>;
  make(tx: Tx, req: PageRequest, data: Data): Promise<Made>;
  /** What is said with the secret, shown this once. */
  tell(secret: string, origin: string): News;
  /** What is said to somebody who sends it a second time. */
  readonly again: string;
}

/** What was typed, without a password: that is never sent back. */
const kept = ({ key: _, password: __, ...fields }: Fields): Fields => fields;

/** A form of the administrator’s page that makes a secret: it stands in this one answer and is kept nowhere. */
export function secretForm<Data>(app: FastifyInstance, deps: Deps, form: SecretForm<Data>): void {
  app.post(form.action, { schema: { hide: true } }, async (request, reply) => {
    const req = await received(request, reply, deps, 'desk');
    const show = async (shown: FormState, status: number, news?: News) => {
      const page = await deps.db.shopTransaction(req.principal.shopId, (tx) =>
        deskPage(tx, req, shown, news),
      );
      const title = status === 422 ? `Error: ${page.title}` : page.title;
      return renderPage(deps, request, reply, { ...page, title, status, principal: req.principal });
    };
    const { key, ...body } = req.fields;
    const read = form.read(body);
    if (!read.ok) return show({ typed: kept(req.fields), faults: read.faults }, 422);
    let secret: string | undefined;
    let isNew = false;
    try {
      const data = (await form.prepare?.(req, read.data)) ?? read.data;
      await runOnceInShop(
        deps.db,
        req.principal,
        {
          method: 'POST',
          path: form.action,
          body: kept(body),
          key: idempotencyKey(key || undefined),
          whileRunning: 'wait',
        },
        async (tx) => {
          const made = await form.make(tx, req, data);
          secret = made.secret;
          isNew = true;
          return { status: 201, body: { id: made.id } };
        },
      );
    } catch (error) {
      if (!(error instanceof Failure && error.code === 'conflict')) throw error;
      return show({ typed: kept(req.fields), faults: [{ field: '', detail: error.detail }] }, 422);
    }
    if (secret !== undefined) return show(FRESH, 201, form.tell(secret, originOf(deps, request)));
    return isNew
      ? reply.code(303).header('location', '/desk').header('cache-control', 'no-store').send()
      : show(FRESH, 201, { text: form.again });
  });
}
