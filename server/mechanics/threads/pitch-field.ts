import { z } from 'zod';
import { fieldInfo } from '../../../shared/schemas/field-info.ts';
import { length } from '../../../shared/schemas/quantity-fields.ts';

const PER_INCH = /^\s*(\d{1,3}(?:\.\d{1,3})?)\s*(?:tpi|t\.p\.i\.?|threads? (?:per|to the) inch)\s*$/i;

/** Threads to the inch are turned into the pitch they mean; all else stays as it came. */
function fromThreadsPerInch(raw: unknown): unknown {
  if (typeof raw !== 'string' || raw.length > 60) return raw;
  const count = Number(PER_INCH.exec(raw)?.[1] ?? 0);
  return count > 0 ? { value: 1 / count, unit: 'in' } : raw;
}

/** A thread's pitch: a length from crest to crest, or a text such as `20 tpi`. */
export function pitchField(description: string) {
  const schema = z.preprocess(fromThreadsPerInch, length(description)).meta({ description });
  fieldInfo.add(schema, { control: 'text' });
  return schema;
}
