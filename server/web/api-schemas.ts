import { z } from 'zod';
import { FAULT_CODES } from '../../shared/problems/faults.ts';
import { quantityView } from '../../shared/schemas/answer-parts.ts';
import { keysOf } from '../../shared/schemas/words.ts';
import { PROBLEMS } from '../problems/registry.ts';

const titles = Object.fromEntries(Object.entries(PROBLEMS).map(([code, { title }]) => [code, title]));

/** An RFC 9457 problem as it goes over the wire. */
export const problemSchema = z
  .object({
    type: z.string(),
    title: z.string(),
    status: z.int(),
    code: z.enum(keysOf(titles)),
    detail: z.string().optional(),
    requestId: z.string(),
    errors: z
      .array(
        z.object({
          pointer: z.string().meta({ description: 'JSON pointer to the faulty field' }),
          code: z.enum(FAULT_CODES),
          detail: z.string(),
          received: z.unknown().optional().meta({ description: 'what came there' }),
          ambiguities: z
            .array(z.object({ readAs: z.string(), quantity: quantityView, question: z.string() }))
            .optional()
            .meta({
              description:
                'what it can be read as: send the meant one as value and unit, with what was typed as typed',
            }),
        }),
      )
      .optional(),
    questions: z
      .array(z.record(z.string(), z.unknown()))
      .optional()
      .meta({ description: 'what the readings that were sent are asked, where a sheet was refused' }),
    line: z.int().optional().meta({ description: 'the line of the record that it is about' }),
  })
  .meta({ id: 'Problem', description: 'RFC 9457 problem details' });

/** Every route may answer with a problem; these keys tell the document so. */
export const problemResponses = { '4xx': problemSchema, '5xx': problemSchema };

/** A secret in the answer that makes it; a replay by idempotency key leaves it out. */
export const shownOnce = z
  .string()
  .optional()
  .meta({ description: 'shown this once; left out when the same request is sent again with its key' });
