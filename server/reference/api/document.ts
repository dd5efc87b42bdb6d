import { z } from 'zod';

/** A JSON schema as the document has it; only what this page reads is named. */
export interface SchemaNode {
  readonly $ref?: string | undefined;
  readonly type?: string | undefined;
  readonly format?: string | undefined;
  readonly description?: string | undefined;
  readonly enum?: readonly unknown[] | undefined;
  readonly const?: unknown;
  readonly default?: unknown;
  readonly minimum?: number | undefined;
  readonly maximum?: number | undefined;
  readonly maxLength?: number | undefined;
  readonly maxItems?: number | undefined;
  readonly required?: readonly string[] | undefined;
  readonly properties?: Readonly<Record<string, SchemaNode>> | undefined;
  readonly items?: SchemaNode | undefined;
  readonly prefixItems?: readonly SchemaNode[] | undefined;
  readonly anyOf?: readonly SchemaNode[] | undefined;
  readonly oneOf?: readonly SchemaNode[] | undefined;
  readonly 'x-dimension'?: string | undefined;
}

const schemaNode: z.ZodType<SchemaNode> = z.lazy(() =>
  z.looseObject({
    $ref: z.string().optional(),
    type: z.string().optional(),
    format: z.string().optional(),
    description: z.string().optional(),
    enum: z.array(z.unknown()).optional(),
    minimum: z.number().optional(),
    maximum: z.number().optional(),
    maxLength: z.number().optional(),
    maxItems: z.number().optional(),
    required: z.array(z.string()).optional(),
    properties: z.record(z.string(), schemaNode).optional(),
    // A tuple says `items: false`: nothing after the items that are named.
    items: z.union([z.boolean().transform((): undefined => undefined), schemaNode]).optional(),
    prefixItems: z.array(schemaNode).optional(),
    anyOf: z.array(schemaNode).optional(),
    oneOf: z.array(schemaNode).optional(),
    'x-dimension': z.string().optional(),
  }),
);

const content = z.record(z.string(), z.looseObject({ schema: schemaNode.optional() })).optional();

const operation = z.looseObject({
  operationId: z.string().default(''),
  summary: z.string().default(''),
  description: z.string().optional(),
  tags: z.array(z.string()).default([]),
  security: z.array(z.record(z.string(), z.array(z.string()))).default([]),
  parameters: z
    .array(
      z.looseObject({
        name: z.string(),
        in: z.string(),
        required: z.boolean().default(false),
        description: z.string().optional(),
        schema: schemaNode.optional(),
      }),
    )
    .default([]),
  requestBody: z.looseObject({ content }).optional(),
  responses: z
    .record(z.string(), z.looseObject({ description: z.string().default(''), content }))
    .default({}),
});

const METHODS = ['get', 'post', 'put', 'patch', 'delete'] as const;

const apiDocument = z.looseObject({
  tags: z.array(z.looseObject({ name: z.string(), description: z.string().default('') })).default([]),
  paths: z.record(z.string(), z.partialRecord(z.enum(METHODS), operation)),
  components: z
    .looseObject({ schemas: z.record(z.string(), schemaNode).default({}) })
    .default({ schemas: {} }),
});

type ApiDocument = z.output<typeof apiDocument>;
export type ApiOperation = z.output<typeof operation>;

/** The document that the service publishes, as far as the page shows it. */
export function readDocument(published: unknown): ApiDocument {
  return apiDocument.parse(JSON.parse(JSON.stringify(published)));
}

export interface PlacedOperation {
  readonly method: string;
  readonly path: string;
  readonly operation: ApiOperation;
}

/** Every operation, in the order of the document. */
export function operationsOf(document: ApiDocument): PlacedOperation[] {
  return Object.entries(document.paths).flatMap(([path, methods]) =>
    METHODS.flatMap((method) => {
      const found = methods[method];
      return found === undefined ? [] : [{ method: method.toUpperCase(), path, operation: found }];
    }),
  );
}
