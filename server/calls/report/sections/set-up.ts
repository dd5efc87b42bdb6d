import { formatNumber } from '../../../../shared/quantities/format.ts';
import type { Slot } from '../../../../views/parts/part.ts';
import type { Explained } from '../../../readings/explain.ts';
import { answerOf } from '../../../readings/pages/answered.ts';
import { passesTable } from '../../../readings/pages/passes-table.ts';
import { nominalsTable, resultOf } from '../../../readings/pages/ratio-answer.ts';
import { setUpFacts } from '../../../readings/pages/set-up-facts.ts';
import type { SetUpRatio } from '../../../readings/ratio.ts';
import { momentText } from '../../pages/moments.ts';
import { type Sight, valveName } from '../../pages/sight.ts';
import { beside, run, said, section } from '../slots.ts';
import { explainedSlots } from './explained.ts';

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
                ? 'open'
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

/** Nominals that the interval holds, and the nearest below and above: the others differ, and say no more. */
function nearNominals(found: SetUpRatio): SetUpRatio {
  const { result } = found;
  if (result?.nominals === undefined) return found;
  const { ratio, nominals } = result;
  const below = nominals.filter((each) => each.verdict === 'differs' && each.ratio < ratio).at(-1);
  const above = nominals.find((each) => each.verdict === 'differs' && each.ratio > ratio);
  const near = nominals.filter((each) => each.verdict !== 'differs' || each === below || each === above);
  return { ...found, result: { ...result, nominals: near } };
}

/** Where the uncertainty comes from, in a line: the step has it as a table. */
function budgetRun({ result }: SetUpRatio): Slot[] {
  if (result === undefined) return [];
  return run(
    'Where the ± comes from',
    result.budget.map(({ source, contribution, share }) => ({
      label: source,
      value: formatNumber(contribution, 5),
      note: `${(share * 100).toFixed(0)} %`,
    })),
  );
}

/** These stand in the heading already. */
const IN_HEADING = ['Set-up', 'Valve', 'Build revision'];

/** One set-up on the report: method, every pass, the ratio, verdicts, budget, questions, explanations, grounds. */
export function setUpSection(sight: Sight, found: SetUpRatio, explained: Explained | undefined): Slot[] {
  const { setUp } = found;
  const nominals = nominalsTable(nearNominals(found));
  const method = setUpFacts(sight, setUp).filter(({ label }) => !IN_HEADING.includes(label));
  return [
    section(`Set-up ${setUp.number}: ${valveName(setUp)}, read against build revision ${setUp.revision}`, [
      ...run('How it was read', method),
      beside(
        { template: '/parts/result', data: resultOf(found, `ratio-${setUp.number}`) },
        ...(nominals === undefined ? [] : [nominals]),
      ),
      passesTable(found.readings, `Every pass of set-up ${setUp.number}, struck ones included`),
      ...budgetRun(found),
      ...questionsTable(sight, found),
      ...settledAnswers(sight, found),
      ...explainedSlots(sight, found, explained),
      ...said('Taken for granted', found.assumptions),
    ]),
  ];
}
