import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { jsonObject } from '../../../shared/schemas/answer-parts.ts';
import { entryFields, entryShape } from '../corrections/view.ts';
import type { Working } from './workings.ts';

/** A kept computation as JSON has it. */
export const workingView = z
  .object({
    ...entryShape,
    computation: z.string(),
    inputs: z.record(z.string(), z.unknown()),
    answer: z.record(z.string(), z.unknown()),
    revision: z.int(),
  })
  .meta({ id: 'Working' });

export const showWorking = (working: Working) =>
  answer(workingView, {
    ...entryFields(working),
    computation: working.computation,
    inputs: jsonObject(working.inputs),
    answer: jsonObject(working.answer),
    revision: working.revision,
  });
