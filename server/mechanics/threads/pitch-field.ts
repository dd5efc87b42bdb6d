import { z } from 'zod';
import { threadsPerInch } from '../../../shared/quantities/threads-per-inch.ts';
import { fieldInfo } from '../../../shared/schemas/field-info.ts';
import { length } from '../../../shared/schemas/quantity-fields.ts';

/** Threads to the inch are turned into the pitch they mean; all else stays as it came. */
function fromThreadsPerInch(raw: unknown): unknown {
  const count = typeof raw === 'string' ? threadsPerInch(raw) : undefined;
  return count === undefined ? raw : { value: 1 / count, unit: 'in' };
}

/** A thread's pitch: a length from crest to crest, or a text such as `20 tpi`. */
export function pitchField(description: string) {
  const schema = z.preprocess(fromThreadsPerInch, length(description)).meta({ description });
  fieldInfo.add(schema, { control: 'text' });
  return schema;
}
