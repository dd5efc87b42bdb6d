import { z } from 'zod';
import type { FaultCode } from '../../../shared/problems/faults.ts';
import { fieldInfo } from '../../../shared/schemas/field-info.ts';
import { readAdjusterThread } from './adjuster-thread.ts';
import { type DesignationReading, readDesignation } from './read-designation.ts';

type Reads<Found> = (text: string) => DesignationReading<Found>;

function fieldOf<Found>(description: string, read: Reads<Found>) {
  const schema = z
    .unknown()
    .transform((raw, ctx): Found => {
      const refuse = (fault: FaultCode, message: string): never => {
        ctx.addIssue({ code: 'custom', message, params: { fault } });
        return z.NEVER;
      };
      if (raw === undefined) return refuse('required', 'is missing: a thread such as 7/16-20 or M8×1.25');
      if (typeof raw !== 'string') return refuse('not-allowed', 'must be a text such as 7/16-20 or M8×1.25');
      if (raw.trim() === '') return refuse('required', 'is empty: a thread such as 7/16-20 or M8×1.25');
      const found = read(raw);
      return found.ok ? found.thread : refuse('not-allowed', found.detail);
    })
    .meta({ type: 'string', minLength: 1, description, examples: ['7/16-20', 'M8×1.25'] });
  fieldInfo.add(schema, { control: 'text' });
  return schema;
}

/** A thread named by its designation; inside it is the row of the table. */
export const threadField = (description: string) => fieldOf(description, readDesignation);

/** The thread of what is turned: of the table, a finer screw, or its pitch alone. */
export const adjusterThreadField = (description: string) => fieldOf(description, readAdjusterThread);
