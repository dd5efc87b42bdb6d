import type { Selectable } from 'kysely';
import type { z } from 'zod';
import { isUnit, type Unit } from '../../../shared/quantities/units.ts';
import type { answerQuestion } from '../../../shared/schemas/commands.ts';
import type { Entered } from '../../../shared/schemas/entered.ts';
import { storedWord, VALVES } from '../../../shared/schemas/words.ts';
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
  /** The amount that goes with it: how much lash was in it, or how far the plunger leaned. */
  readonly value: Entered | undefined;
  readonly setUpId: string | undefined;
  /** The one valve that it names. */
  readonly place: { readonly cylinder: number; readonly valve: keyof typeof VALVES } | undefined;
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
    const { questionId, question, answer, setUpId, code, found, value = input.lean, cylinder, valve } = input;
    const said = {
      questionId,
      question,
      answer,
      setUpId,
      code,
      found,
      value: value?.readAs,
      cylinder,
      valve,
    };
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
          value_typed: value?.typed ?? null,
          value_value: value?.value ?? null,
          value_unit: value?.unit ?? null,
          value_read_as: value?.readAs ?? null,
          cylinder: cylinder ?? null,
          valve: valve ?? null,
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

function unitOf(text: string): Unit {
  if (isUnit(text)) return text;
  throw new Error(`a stored answer has the unknown unit ${text}`);
}

type ValueColumns = Pick<
  Selectable<AnswerTable>,
  'value_typed' | 'value_value' | 'value_unit' | 'value_read_as'
>;

function amountOf({
  value_typed,
  value_value,
  value_unit,
  value_read_as,
}: ValueColumns): Entered | undefined {
  if (value_value === null || value_unit === null) return undefined;
  return {
    typed: value_typed ?? '',
    value: value_value,
    unit: unitOf(value_unit),
    readAs: value_read_as ?? '',
  };
}

export const toAnswer = (row: Selectable<AnswerTable>): Answer => ({
  id: row.id,
  questionId: row.question_id ?? undefined,
  question: row.question,
  answer: row.answer,
  code: row.code,
  found: row.found ?? undefined,
  value: amountOf(row),
  setUpId: row.set_up_id ?? undefined,
  place:
    row.cylinder === null || row.valve === null
      ? undefined
      : { cylinder: row.cylinder, valve: storedWord(VALVES, row.valve) },
  seq: row.seq,
  by: row.by_name,
  at: row.created_at,
});
