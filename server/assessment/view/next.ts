import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { STEP_NAMES } from '../../../shared/steps.ts';
import type { NextAction } from '../../mechanics/assessment/assessment.ts';
import { showSubject, subjectView } from './subject.ts';

export const nextView = z
  .object({
    id: z.string(),
    action: z.string(),
    step: z.enum(STEP_NAMES),
    about: subjectView,
    sentence: z.string(),
    reason: z.string(),
    corrects: z
      .array(z.string())
      .meta({ description: 'entries that were found wrong, where it is to correct them' })
      .optional(),
    minutes: z.number().optional(),
    turns: z.boolean().meta({ description: 'it turns the engine; never true under a stop' }),
  })
  .meta({ id: 'NextAction' });

export const showNext = (next: NextAction) =>
  answer(nextView, {
    id: next.id,
    action: next.action,
    step: next.step,
    about: showSubject(next.about),
    sentence: next.sentence,
    reason: next.reason,
    corrects: next.corrects === undefined ? undefined : [...next.corrects],
    minutes: next.minutes,
    turns: next.turns,
  });
