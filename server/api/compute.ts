import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { answer } from '../../shared/schemas/answer.ts';
import { jsonObject } from '../../shared/schemas/answer-parts.ts';
import { Failure } from '../problems/failure.ts';
import { problemResponses } from '../web/api-schemas.ts';
import type { Deps } from '../web/deps.ts';
import { jsonBodies } from '../web/http/json-bodies.ts';
import { checked } from '../web/validate.ts';
import { readOrKeep } from '../work/unread-body.ts';

const unitsQuery = z.strictObject({
  units: z.enum(['inch', 'metric']).default('inch').meta({ description: 'units of the answer' }),
});

const listed = z.object({ name: z.string(), title: z.string(), summary: z.string() });

const listView = z.object({ computations: z.array(listed) });

const descriptionView = z
  .object({
    name: z.string(),
    title: z.string(),
    summary: z.string(),
    inputs: z.record(z.string(), z.unknown()).meta({ description: 'JSON Schema of the body' }),
    outputs: z.record(z.string(), z.unknown()).meta({ description: 'JSON Schema of the result' }),
    equation: z.string(),
    source: z.string(),
    validity: z.string(),
    example: z.object({
      inputs: z.record(z.string(), z.unknown()),
      result: z.record(z.string(), z.unknown()),
    }),
  })
  .meta({ id: 'ComputationDescription' });

/** A list fifty times too long still gets its answer by field, not a refusal of the whole body. */
const BODY_LIMIT = 4 * 1024 * 1024;

/**
 * `GET` and `POST /api/v1/compute/...`, one route pair per registration. A large body is left as it came: it is read
 * on the thread that computes with it, and counts by the time that took.
 */
export function computeRoutes(app: FastifyInstance, deps: Deps): void {
  app.removeContentTypeParser('application/json');
  jsonBodies(app, readOrKeep);
  app.get(
    '/api/v1/compute',
    {
      schema: {
        operationId: 'listComputations',
        tags: ['compute'],
        security: [],
        summary: 'Every computation: name, title, one line',
        response: { 200: listView, ...problemResponses },
      },
    },
    () =>
      answer(listView, {
        computations: [...deps.computations.values()].map(({ name, title, summary }) => ({
          name,
          title,
          summary,
        })),
      }),
  );
  for (const each of deps.computations.values()) {
    const operation = each.name.replace(/(^|-)([a-z0-9])/g, (_, __, letter: string) => letter.toUpperCase());
    app.get(
      `/api/v1/compute/${each.name}`,
      {
        schema: {
          operationId: `describe${operation}`,
          tags: ['compute'],
          security: [],
          summary: `${each.title}: inputs, outputs, equation, source, example`,
          response: { 200: descriptionView, ...problemResponses },
        },
      },
      () =>
        answer(descriptionView, {
          name: each.name,
          title: each.title,
          summary: each.summary,
          inputs: jsonObject(each.inputSchema),
          outputs: jsonObject(each.outputSchema),
          equation: each.equation,
          source: each.source,
          validity: each.validity,
          example: { inputs: each.example.inputs, result: jsonObject(each.example.result) },
        }),
    );
    app.post(
      `/api/v1/compute/${each.name}`,
      {
        bodyLimit: BODY_LIMIT,
        schema: {
          operationId: `compute${operation}`,
          tags: ['compute'],
          security: [],
          summary: each.summary,
          querystring: unitsQuery,
          body: each.input,
          response: {
            200: z.object({
              result: each.output,
              assumptions: z.array(z.string()),
              cautions: z.array(z.string()),
              basis: z.object({ equation: z.string(), source: z.string(), validity: z.string() }),
            }),
            ...problemResponses,
          },
        },
        onRequest: async (request) => deps.computeLimits.take(request.ip),
      },
      (request) =>
        deps.work.answer(each, request.body, checked(unitsQuery, request.query).units, (ms) =>
          deps.computeLimits.charge(request.ip, ms),
        ),
    );
  }
  app.get('/api/v1/compute/:name', { schema: { hide: true } }, () => {
    throw new Failure('not-found', 'no such computation');
  });
  app.post('/api/v1/compute/:name', { schema: { hide: true } }, () => {
    throw new Failure('not-found', 'no such computation');
  });
}
