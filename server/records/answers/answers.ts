import type { Selectable } from 'kysely';
import type { z } from 'zod';
import type { answerQuestion } from '../../../shared/schemas/commands.ts';
import { author, type Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { everyColumn } from '../../database/tables/every-column.ts';
import type { AnswerTable } from '../../database/tables/measuring.ts';
import { changeBuild } from '../../events/change-build.ts';
import { getSetUp } from '../set-ups/set-ups.ts';
import { ANSWER_EVENTS } from './events.ts';

/** What a person found when a question was put to them. */
export interface Answer {
  readonly id: string;
  /** The id of the question in the assessment, where it was answered under it. */
  readonly questionId: string | undefined;
  readonly question: string;
  readonly answer: string;
  /** The question's own word, where it was asked by one. */
  readonly code: string;
  /** Whether something was found wrong; undefined where the question has no yes or no. */
  readonly found: boolean | undefined;
  readonly setUpId: string | undefined;
  readonly seq: number;
  readonly by: string;
  readonly at: Date;
}

export async function keepAnswer(
  tx: Tx,
  principal: Principal,
  buildId: string,
  input: z.output<typeof answerQuestion>,
): Promise<Answer> {
  return changeBuild(tx, principal, buildId, async ({ emit }) => {
    if (input.setUpId !== undefined) await getSetUp(tx, principal, buildId, input.setUpId);
    const { questionId, question, answer, setUpId, code, found } = input;
    const said = { questionId, question, answer, setUpId, code, found };
    const seq = await emit(ANSWER_EVENTS['question-answered'], said);
    const row = await tx
      .insertInto('answer')
      .values(
        everyColumn<AnswerTable>({
          shop_id: principal.shopId,
          build_id: buildId,
          set_up_id: input.setUpId ?? null,
          question_id: questionId ?? null,
          question: input.question,
          answer: input.answer,
          code: input.code ?? '',
          found: input.found ?? null,
          seq,
          ...author(principal),
        }),
      )
      .returningAll()
      .executeTakeFirstOrThrow();
    return toAnswer(row);
  });
}

/** In the order they were given. */
export const selectAnswers = (tx: Tx) => tx.selectFrom('answer').selectAll().orderBy('seq');

export const toAnswer = (row: Selectable<AnswerTable>): Answer => ({
  id: row.id,
  questionId: row.question_id ?? undefined,
  question: row.question,
  answer: row.answer,
  code: row.code,
  found: row.found ?? undefined,
  setUpId: row.set_up_id ?? undefined,
  seq: row.seq,
  by: row.by_name,
  at: row.created_at,
});
