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
    minutes: next.minutes,
    turns: next.turns,
  });
