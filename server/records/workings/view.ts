import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { jsonObject, moment } from '../../../shared/schemas/answer-parts.ts';
import type { Working } from './workings.ts';

/** A kept computation as JSON has it. */
export const workingView = z
  .object({
    id: z.uuid(),
    computation: z.string(),
    inputs: z.record(z.string(), z.unknown()),
    answer: z.record(z.string(), z.unknown()),
    revision: z.int(),
    seq: z.int(),
    by: z.string(),
    at: moment,
  })
  .meta({ id: 'Working' });

export const showWorking = (working: Working) =>
  answer(workingView, {
    id: working.id,
    computation: working.computation,
    inputs: jsonObject(working.inputs),
    answer: jsonObject(working.answer),
    revision: working.revision,
    seq: working.seq,
    by: working.by,
    at: working.at.toISOString(),
  });
