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
    result: explainReadings.output
      .optional()
      .meta({ description: 'left out where its chances would say more than the headline' }),
    refused: z.string().optional().meta({ description: 'why it cannot be computed, and the way out' }),
    summary: z.string(),
    wouldBeTrue: z
      .array(z.string())
      .meta({ description: 'what would explain the readings, likeliest first, while no chance may be told' }),
    setUpIds: ids,
    restsOn: ids,
  })
  .meta({ id: 'AssessedExplanation' });

export const showExplained = (explanation: AssessedExplanation) =>
  answer(assessedExplanationView, {
    id: explanation.id,
    about: showSubject(explanation.about),
    result:
      explanation.result === undefined || explanation.chances !== 'told'
        ? undefined
        : encoded(explainReadings.output, explanation.result, 'inch'),
    refused: explanation.refused,
    summary: explanation.summary,
    wouldBeTrue: explanation.wouldBeTrue,
    setUpIds: explanation.setUpIds,
    restsOn: explanation.restsOn,
  });
