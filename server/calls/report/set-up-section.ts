import type { Slot } from '../../../views/parts/part.ts';
import { answerOf } from '../../readings/pages/answered.ts';
import { passesTable } from '../../readings/pages/passes-table.ts';
import { budgetTable, groundsOf, nominalsTable, resultOf } from '../../readings/pages/ratio-answer.ts';
import { setUpFacts } from '../../readings/pages/set-up-facts.ts';
import type { SetUpRatio } from '../../readings/ratio.ts';
import { momentText } from '../pages/moments.ts';
import { type Sight, valveName } from '../pages/sight.ts';

export const heading = (text: string): Slot => ({ template: '/pages/call/heading', data: { text } });

/** Questions that the readings raise, with what was answered; on paper all of them, answered or not. */
function questionsTable(sight: Sight, found: SetUpRatio): Slot[] {
  if (found.questions.length === 0) return [];
  return [
    {
      template: '/parts/table',
      data: {
        caption: 'Questions the readings raise',
        columns: [{ label: 'Asked' }, { label: 'What settles it' }, { label: 'Answer' }],
        rows: found.questions.map((question) => {
          const answer = answerOf(sight.answers, found.setUp.id, question);
          return {
            cells: [
              question.ask,
              { text: question.test, why: question.size },
              answer === undefined
                ? 'not answered yet'
                : { text: answer.answer, why: `${answer.by}, ${momentText(answer.at)}` },
            ],
          };
        }),
      },
    },
  ];
}

/** Answers to questions that later readings have settled: they stay on the record. */
function settledAnswers(sight: Sight, found: SetUpRatio): Slot[] {
  const standing = new Set(
    found.questions.map((question) => answerOf(sight.answers, found.setUp.id, question)?.id),
  );
  const settled = sight.answers.filter(
    (answer) => answer.setUpId === found.setUp.id && !standing.has(answer.id),
  );
  if (settled.length === 0) return [];
  return [
    {
      template: '/parts/table',
      data: {
        caption: 'Asked before, and settled since',
        columns: [{ label: 'Asked' }, { label: 'Answer' }, { label: 'Who, when' }],
        rows: settled.map((answer) => ({
          cells: [
            answer.question.replaceAll('-', ' '),
            answer.answer,
            `${answer.by}, ${momentText(answer.at)}`,
          ],
        })),
      },
    },
  ];
}

/** One set-up on the report: method, every pass, the ratio, verdicts, budget, questions, grounds. */
export function setUpSection(sight: Sight, found: SetUpRatio): Slot[] {
  const { setUp } = found;
  const name = `Set-up ${setUp.number}: ${valveName(setUp)}`;
  const tables = [nominalsTable(found), budgetTable(found)].filter((slot) => slot !== undefined);
  return [
    heading(`${name}, read against build revision ${setUp.revision}`),
    { template: '/parts/facts', data: { block: true, items: setUpFacts(sight, setUp) } },
    { template: '/parts/result', data: resultOf(found, `ratio-${setUp.number}`) },
    passesTable(found.readings, `Every pass of set-up ${setUp.number}, struck ones included`),
    ...tables,
    ...questionsTable(sight, found),
    ...settledAnswers(sight, found),
    ...groundsOf(found),
  ];
}
