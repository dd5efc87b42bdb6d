import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { encoded } from '../../compute/encode.ts';
import type { AssessedExplanation } from '../../mechanics/assessment/assessment.ts';
import { computation as explainReadings } from '../../mechanics/computations/explain-readings.ts';
import { ids, showSubject, subjectView } from './subject.ts';

export const assessedExplanationView = z
  .object({
    id: z.string(),
    about: subjectView,
    result: explainReadings.output.optional(),
    refused: z.string().optional().meta({ description: 'why it cannot be computed, and the way out' }),
    summary: z.string(),
    setUpIds: ids,
    restsOn: ids,
  })
  .meta({ id: 'AssessedExplanation' });

export const showExplained = (explanation: AssessedExplanation) =>
  answer(assessedExplanationView, {
    id: explanation.id,
    about: showSubject(explanation.about),
    result:
      explanation.result === undefined
        ? undefined
        : encoded(explainReadings.output, explanation.result, 'inch'),
    refused: explanation.refused,
    summary: explanation.summary,
    setUpIds: explanation.setUpIds,
    restsOn: explanation.restsOn,
  });
