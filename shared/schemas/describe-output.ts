import { z } from 'zod';
import { unitsOf } from '../quantities/units.ts';
import { outputDimension, outputEvent } from './field-info.ts';

/** For JSON Schema: a number that leaves as a quantity, or as a cam event, is described as one. */
export function describeOutput(context: {
  zodSchema: z.core.$ZodType;
  jsonSchema: Record<string, unknown>;
}): void {
  const { zodSchema, jsonSchema } = context;
  if (!(zodSchema instanceof z.ZodNumber)) return;
  const event = outputEvent.get(zodSchema);
  const dimension = event === undefined ? outputDimension.get(zodSchema)?.dimension : 'angle';
  if (dimension === undefined) return;
  delete jsonSchema.minimum;
  Object.assign(jsonSchema, {
    type: 'object',
    properties: {
      value: { type: 'number' },
      unit: { type: 'string', enum: unitsOf(dimension) },
      ...(event === undefined ? {} : { side: { const: event.side } }),
    },
    required: ['value', 'unit', ...(event === undefined ? [] : ['side'])],
    additionalProperties: false,
  });
}
