import { z } from 'zod';
import type { FaultCode } from '../../../shared/problems/faults.ts';
import { fieldInfo } from '../../../shared/schemas/field-info.ts';
import { readDesignation } from './read-designation.ts';
import type { Thread } from './thread-table.ts';

/** A thread named by its designation; inside it is the row of the table. */
export function threadField(description: string) {
  const schema = z
    .unknown()
    .transform((raw, ctx): Thread => {
      const refuse = (fault: FaultCode, message: string): never => {
        ctx.addIssue({ code: 'custom', message, params: { fault } });
        return z.NEVER;
      };
      if (raw === undefined) return refuse('required', 'is missing: a thread such as 7/16-20 or M8×1.25');
      if (typeof raw !== 'string') return refuse('not-allowed', 'must be a text such as 7/16-20 or M8×1.25');
      if (raw.trim() === '') return refuse('required', 'is empty: a thread such as 7/16-20 or M8×1.25');
      const read = readDesignation(raw);
      return read.ok ? read.thread : refuse('not-allowed', read.detail);
    })
    .meta({ type: 'string', minLength: 1, description, examples: ['7/16-20', 'M8×1.25'] });
  fieldInfo.add(schema, { control: 'text' });
  return schema;
}
