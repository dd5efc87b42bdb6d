import type { FastifyInstance, FastifyRequest } from 'fastify';
import { requireBuild } from '../../auth/principal.ts';
import { loadContext } from '../../call/context.ts';
import { Failure } from '../../problems/failure.ts';
import { newPhotograph } from '../../records/photographs/new-photograph.ts';
import { keepPhotograph } from '../../records/photographs/photographs.ts';
import { MOST_BYTES, reEncode } from '../../records/photographs/re-encode.ts';
import type { Deps } from '../../web/deps.ts';
import { sentencesOf } from '../../web/form-route.ts';
import { type Fields, readForm } from '../../web/forms/read-form.ts';
import { keptAlone, refusedAlone, wantsOutcomeAlone } from '../../web/http/outcome-alone.ts';
import { type PageSide, receive } from '../../web/page-request.ts';
import { renderPage } from '../../web/pages/render.ts';
import { idempotencyKey, runOnceInShop } from '../../web/run-once.ts';
import type { CallFrame } from '../frame.ts';
import { photographsPage } from './photographs-page.ts';

interface Posted {
  readonly typed: Fields;
  readonly picture: Buffer | undefined;
  readonly tooLarge: boolean;
}

/** Reads the parts of an upload; more than one file, or a larger one, is not taken. */
async function postedParts(request: FastifyRequest): Promise<Posted> {
  const typed: Record<string, string> = {};
  let picture: Buffer | undefined;
  let tooLarge = false;
  for await (const part of request.parts()) {
    if (part.type === 'field') typed[part.fieldname] = String(part.value);
    else {
      try {
        picture = await part.toBuffer();
      } catch {
        tooLarge = true;
      }
    }
  }
  return { typed, picture: picture?.length === 0 ? undefined : picture, tooLarge };
}

export function uploadRoute(
  app: FastifyInstance,
  deps: Deps,
  frame: CallFrame,
  side: PageSide,
  base: string,
): void {
  app.post(
    `${base}/photographs`,
    { bodyLimit: MOST_BYTES + 64 * 1024, schema: { hide: true } },
    async (request, reply) => {
      // Who it is comes first: a stranger's upload is not read.
      const { req, context } = await receive(
        request,
        reply,
        deps,
        side,
        async (tx, received) => ({ req: received, context: await loadContext(tx, received) }),
        'read',
      );
      requireBuild(req.principal, context.build.id, 'write');
      const posted = await postedParts(request);
      const { key, form: _, ...fields } = posted.typed;
      const alone = wantsOutcomeAlone(request);
      const refuse = async (field: string, detail: string) => {
        const rejected = { faults: [{ field, detail }], typed: { ...fields, form: 'photograph' } };
        const page = await deps.db.shopTransaction(
          req.principal.shopId,
          (tx) => photographsPage(frame, tx, req, rejected),
          'read',
        );
        if (alone) return refusedAlone(reply, sentencesOf(page));
        return renderPage(deps, request, reply, {
          ...page,
          title: `Error: ${page.title}`,
          status: 422,
          principal: req.principal,
        });
      };
      if (posted.tooLarge) return refuse('picture', 'has more than 12 MB');
      if (posted.picture === undefined) return refuse('picture', 'is missing: choose one first');
      const read = readForm(newPhotograph, fields, { lengths: 'in' });
      if (!read.ok) return refuse(read.faults[0]?.field ?? '', read.faults[0]?.detail ?? '');
      try {
        const image = await reEncode(posted.picture);
        const outcome = await runOnceInShop(
          deps.db,
          req.principal,
          {
            method: 'POST',
            path: request.url,
            body: { ...fields, picture: image.jpeg.toString('base64') },
            key: idempotencyKey(key || undefined),
            whileRunning: 'wait',
          },
          async (tx) => {
            await keepPhotograph(tx, req.principal, context.build.id, read.data, image);
            return { status: 303, body: {}, location: `${context.base}/photographs` };
          },
        );
        if (alone) return keptAlone(reply, outcome.location ?? context.base);
        return await reply
          .code(303)
          .header('location', outcome.location ?? context.base)
          .header('cache-control', 'no-store')
          .send();
      } catch (error) {
        if (
          error instanceof Failure &&
          ['media-type-not-taken', 'body-too-large', 'conflict'].includes(error.code)
        ) {
          return refuse('picture', `can’t be kept: ${error.detail}`);
        }
        throw error;
      }
    },
  );
}
