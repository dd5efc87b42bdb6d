import type { FastifySchema } from 'fastify';
import { z } from 'zod';
import { describeOutput } from '../../shared/schemas/describe-output.ts';

type JsonObject = Record<string, unknown>;

/** Schemas with an id, met while describing routes; the document lists them once. */
const named = new Map<string, JsonObject>();

function isObject(value: unknown): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function withSharedRefs(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withSharedRefs);
  if (!isObject(value)) return value;
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, inner]) => {
      if (key === '$defs' || key === '$schema' || (key === 'id' && typeof inner === 'string')) return [];
      if (key === '$ref' && typeof inner === 'string')
        return [[key, inner.replace('#/$defs/', '#/components/schemas/')]];
      return [[key, withSharedRefs(inner)]];
    }),
  );
}

/** A schema as the document has it, its references still in itself. */
export function jsonSchemaOf(schema: z.ZodType, io: 'input' | 'output') {
  return z.toJSONSchema(schema, { io, unrepresentable: 'any', override: describeOutput });
}

function describe(schema: z.ZodType, io: 'input' | 'output'): unknown {
  // Wrapped, so that a schema with an id of its own becomes a reference as it does inside another.
  const whole: unknown = jsonSchemaOf(z.object({ it: schema }), io);
  if (!isObject(whole) || !isObject(whole.properties)) throw new Error('a schema can’t be described');
  for (const [id, definition] of Object.entries(isObject(whole.$defs) ? whole.$defs : {})) {
    const shared = withSharedRefs(definition);
    if (isObject(shared)) named.set(id, shared);
  }
  return withSharedRefs(whole.properties.it);
}

function describeResponses(responses: JsonObject): JsonObject {
  const described = Object.entries(responses).map(([status, schema]) => {
    if (!(schema instanceof z.ZodType)) return [status, schema];
    if (schema instanceof z.ZodNull) return [status, { type: 'null', description: 'done' }];
    const body = describe(schema, 'output');
    if (/^[45]/.test(status)) {
      return [
        status,
        { description: 'A problem', content: { 'application/problem+json': { schema: body } } },
      ];
    }
    return [status, { description: 'The answer', content: { 'application/json': { schema: body } } }];
  });
  return Object.fromEntries(described);
}

/** Route schemas in zod, as the OpenAPI document wants them. */
export function describeRoute({ schema, url }: { schema: FastifySchema | undefined; url: string }): {
  schema: FastifySchema;
  url: string;
} {
  const { body, params, querystring, response, ...rest } = schema ?? {};
  const known = Object.entries({ body, params, querystring }).flatMap(([part, zod]) =>
    zod instanceof z.ZodObject && Object.keys(zod.shape).length === 0
      ? []
      : zod instanceof z.ZodType
        ? [[part, describe(zod, 'input')]]
        : [],
  );
  return {
    schema: {
      ...rest,
      ...Object.fromEntries(known),
      ...(isObject(response) ? { response: describeResponses(response) } : {}),
    },
    url,
  };
}

/** Adds the schemas that routes refer to. */
export function addNamedSchemas<T>(document: T): T {
  if (!isObject(document)) return document;
  const components = isObject(document.components) ? document.components : {};
  return { ...document, components: { ...components, schemas: Object.fromEntries(named) } };
}
