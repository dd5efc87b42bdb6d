import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { STEP_NAMES } from '../../../shared/steps.ts';
import type { Headline } from '../../mechanics/assessment/assessment.ts';
import { showSubject, subjectView } from './subject.ts';

export const headlineView = z
  .object({
    id: z.string(),
    about: subjectView,
    step: z.enum(STEP_NAMES),
    sentence: z.string(),
    judgementId: z.string().optional(),
    quantityId: z.string().optional(),
  })
  .meta({ id: 'Headline' });

export const showHeadline = (headline: Headline) =>
  answer(headlineView, {
    id: headline.id,
    about: showSubject(headline.about),
    step: headline.step,
    sentence: headline.sentence,
    judgementId: headline.judgementId,
    quantityId: headline.quantityId,
  });
