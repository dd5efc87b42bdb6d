import { defined } from '../../../shared/defined.ts';
import { asTold } from '../../../shared/quantities/as-entered.ts';
import type { Component } from '../../../views/parts/components.ts';
import { answeredText, loggedAnswer, loggedQuestion } from '../../call/answered-text.ts';
import type { CallContext } from '../../call/context.ts';
import type { AssessedQuestion } from '../../mechanics/assessment/assessment.ts';
import type { Answer } from '../../records/answers/answers.ts';
import { tableComponent } from '../../web/components.ts';
import { momentText } from '../../web/dates.ts';

const whoSaid = ({ by, at }: Answer): string => `${by}, ${momentText(at)}`;

/** Questions that the readings raise, with what was answered; on paper all of them, answered or not. */
export function questionsTable(
  { answers }: CallContext,
  questions: readonly AssessedQuestion[],
  caption = 'Questions the readings raise',
): Component[] {
  if (questions.length === 0) return [];
  return [
    tableComponent({
      caption,
      columns: [{ label: 'Asked' }, { label: 'What settles it' }, { label: 'Answer' }],
      rows: questions.map((question) => {
        const { ask, test, size, answered } = question;
        const kept = answers.find(({ id }) => id === answered?.entryId);
        return {
          cells: [
            ask,
            { text: test, ...defined({ why: size }) },
            kept === undefined ? 'open' : { text: answeredText(question, kept), why: whoSaid(kept) },
          ],
        };
      }),
    }),
  ];
}

/** Answers to questions that later readings have settled: they stay on the record. */
export function settledTable({ answers, assessment }: CallContext, setUpId: string | undefined): Component[] {
  const standing = new Set(assessment.questions.map(({ answered }) => answered?.entryId));
  const settled = answers.filter((answer) => answer.setUpId === setUpId && !standing.has(answer.id));
  if (settled.length === 0) return [];
  return [
    tableComponent({
      caption: 'Asked before, and settled since',
      columns: [{ label: 'Asked' }, { label: 'Answer' }, { label: 'Who, when' }],
      rows: settled.map((each) => {
        const { question, answer, questionId, code } = each;
        return {
          cells: [
            asTold(loggedQuestion(question, questionId, code)),
            loggedAnswer(answer, questionId, code),
            whoSaid(each),
          ],
        };
      }),
    }),
  ];
}
