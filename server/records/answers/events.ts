import { z } from 'zod';
import { keysOf, VALVES } from '../../../shared/schemas/words.ts';
import { defineEvents } from '../../events/define-events.ts';

/** What people found when a question was put to them. */
export const ANSWER_EVENTS = defineEvents({
  'question-answered': z.object({
    questionId: z.string().optional(),
    question: z.string(),
    answer: z.string(),
    setUpId: z.uuid().optional(),
    code: z.string().optional(),
    found: z.boolean().optional(),
    value: z.string().optional(),
    /** The one valve that it names. */
    cylinder: z.int().optional(),
    valve: z.enum(keysOf(VALVES)).optional(),
  }),
});
