import { z } from 'zod';
import { answer, type Fields } from '../../../shared/schemas/answer.ts';
import { enteredView, moment, valveView } from '../../../shared/schemas/answer-parts.ts';
import type { Answer } from './answers.ts';

/** What was found when a question was put, as the command that keeps it answers. */
export const keptAnswerView = z.object({
  id: z.uuid(),
  questionId: z.string().optional(),
  question: z.string(),
  answer: z.string(),
  value: enteredView.optional().meta({ description: 'the amount that goes with it' }),
  cylinder: z.int().optional().meta({ description: 'the one valve that it names' }),
  valve: valveView.optional(),
  seq: z.int(),
  by: z.string(),
  at: moment,
});

const keptFields = (kept: Answer): Fields<typeof keptAnswerView> => ({
  id: kept.id,
  questionId: kept.questionId,
  question: kept.question,
  answer: kept.answer,
  value: kept.value,
  cylinder: kept.place?.cylinder,
  valve: kept.place?.valve,
  seq: kept.seq,
  by: kept.by,
  at: kept.at.toISOString(),
});

export const showKeptAnswer = (kept: Answer) => answer(keptAnswerView, keptFields(kept));

/** The same in the export, with the code of the question and the set-up it was about. */
export const answerView = keptAnswerView.extend({
  code: z.string(),
  found: z.boolean().optional(),
  setUpId: z.uuid().optional(),
});

export const showAnswer = (kept: Answer) =>
  answer(answerView, { ...keptFields(kept), code: kept.code, found: kept.found, setUpId: kept.setUpId });
