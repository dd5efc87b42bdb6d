import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { answer } from '../../shared/schemas/answer.ts';
import { requireBuild } from '../auth/principal.ts';
import { newPhotograph } from '../records/photographs/new-photograph.ts';
import { keepPhotograph, listPhotographs, photographBytes } from '../records/photographs/photographs.ts';
import { MOST_BYTES, reEncode } from '../records/photographs/re-encode.ts';
import { photographView, showPhotograph } from '../records/photographs/view.ts';
import { idParams, noParams, readRoute } from '../web/api-route.ts';
import { problemResponses } from '../web/api-schemas.ts';
import type { Deps } from '../web/deps.ts';
import { apiPrincipal } from '../web/principals.ts';
import { idempotencyKey, runOnceInShop } from '../web/run-once.ts';
import { checked, checkedParams } from '../web/validate.ts';

const photographsView = z.object({ photographs: z.array(photographView) });
const imageParams = z.strictObject({ id: z.uuid(), photographId: z.uuid() });

/** JSON routes of photographs; the picture itself goes up and down as its bytes. */
export function photographsApi(app: FastifyInstance, deps: Deps): void {
  readRoute(app, deps, {
    operationId: 'listPhotographs',
    tag: 'builds',
    summary: 'Photographs of a build',
    url: '/api/v1/builds/:id/photographs',
    params: idParams,
    query: noParams,
    answer: photographsView,
    read: async (tx, { principal, params }) =>
      answer(photographsView, {
        photographs: (await listPhotographs(tx, principal, params.id)).map(showPhotograph),
      }),
  });
  app.register(async (uploads) => {
    uploads.addContentTypeParser(
      ['image/jpeg', 'image/png', 'image/webp'],
      { parseAs: 'buffer', bodyLimit: MOST_BYTES },
      (_request, body, done) => done(null, body),
    );
    uploads.post(
      '/api/v1/builds/:id/photographs',
      {
        bodyLimit: MOST_BYTES,
        schema: {
          operationId: 'keepPhotograph',
          tags: ['builds'],
          summary: 'Keep a photograph: the picture as the body, what it shows in the query',
          description:
            'JPEG, PNG or WebP, told by its content. It is made again; location and device data are left out.',
          security: [{ bearer: [] }],
          consumes: ['image/jpeg', 'image/png', 'image/webp'],
          params: idParams,
          querystring: newPhotograph,
          response: { 201: photographView, ...problemResponses },
        },
      },
      async (request, reply) => {
        const principal = await apiPrincipal(request, deps);
        const { id } = checkedParams(idParams, request.params);
        // Before the picture is unpacked: a stranger must not make us work.
        requireBuild(principal, id, 'write');
        const input = checked(newPhotograph, request.query);
        const image = await reEncode(Buffer.isBuffer(request.body) ? request.body : Buffer.alloc(0));
        const outcome = await runOnceInShop(
          deps.db,
          principal,
          {
            method: 'POST',
            path: request.url,
            body: image.jpeg.toString('base64'),
            key: idempotencyKey(request.headers['idempotency-key']),
            whileRunning: 'refuse',
          },
          async (tx) => ({
            status: 201,
            body: showPhotograph(await keepPhotograph(tx, principal, id, input, image)),
          }),
        );
        return reply.code(201).header('cache-control', 'no-store').send(outcome.body);
      },
    );
  });
  app.get(
    '/api/v1/builds/:id/photographs/:photographId',
    {
      schema: {
        operationId: 'getPhotograph',
        tags: ['builds'],
        summary: 'A photograph as JPEG',
        security: [{ bearer: [] }],
        params: imageParams,
        response: { 200: z.string().meta({ description: 'JPEG bytes' }), ...problemResponses },
        produces: ['image/jpeg'],
      },
    },
    async (request, reply) => {
      const principal = await apiPrincipal(request, deps);
      const { id, photographId } = checkedParams(imageParams, request.params);
      const jpeg = await deps.db.shopTransaction(principal.shopId, (tx) =>
        photographBytes(tx, principal, id, photographId),
      );
      return reply
        .type('image/jpeg')
        .headers({
          'cache-control': 'private, no-store',
          'content-disposition': `inline; filename="${photographId}.jpg"`,
        })
        .send(jpeg);
    },
  );
}
