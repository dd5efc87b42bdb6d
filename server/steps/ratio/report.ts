import { formatNumber } from '../../../shared/quantities/format.ts';
import type { Component } from '../../../views/parts/part.ts';
import type { Explained } from '../../assessment/ratio/explain.ts';
import type { SetUpRatio } from '../../assessment/ratio/ratio.ts';
import { answerOf } from '../../call/answered.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { beside, run, said, section } from '../../call/report-parts.ts';
import { momentText } from '../../web/dates.ts';
import type { Explanations } from './load.ts';
import { passesTable } from './passes-table.ts';
import { nominalsTable, resultOf } from './ratio-answer.ts';
import { explainedComponents } from './report-explained.ts';
import { setUpFacts } from './set-up-facts.ts';

/** Questions that the readings raise, with what was answered; on paper all of them, answered or not. */
function questionsTable(context: CallContext, found: SetUpRatio): Component[] {
  if (found.questions.length === 0) return [];
  return [
    {
      template: '/parts/table',
      data: {
        caption: 'Questions the readings raise',
        columns: [{ label: 'Asked' }, { label: 'What settles it' }, { label: 'Answer' }],
        rows: found.questions.map((question) => {
          const answer = answerOf(context.answers, found.setUp.id, question);
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
function settledAnswers(context: CallContext, found: SetUpRatio): Component[] {
  const standing = new Set(
    found.questions.map((question) => answerOf(context.answers, found.setUp.id, question)?.id),
  );
  const settled = context.answers.filter(
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
function budgetRun({ result }: SetUpRatio): Component[] {
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
function setUpSection(
  context: CallContext,
  found: SetUpRatio,
  explained: Explained | undefined,
): Component[] {
  const { setUp } = found;
  const nominals = nominalsTable(nearNominals(found));
  const method = setUpFacts(context, setUp).filter(({ label }) => !IN_HEADING.includes(label));
  return [
    section(`Set-up ${setUp.number}: ${valveName(setUp)}, read against build revision ${setUp.revision}`, [
      ...run('How it was read', method),
      beside(
        { template: '/parts/result', data: resultOf(found, `ratio-${setUp.number}`) },
        ...(nominals === undefined ? [] : [nominals]),
      ),
      passesTable(found.readings, `Every pass of set-up ${setUp.number}, struck ones included`),
      ...budgetRun(found),
      ...questionsTable(context, found),
      ...settledAnswers(context, found),
      ...explainedComponents(context, found, explained),
      ...said('Assumptions', found.assumptions),
    ]),
  ];
}

/** Every set-up of the call; what an older one of a valve raised, the newest one of it takes into account. */
export function ratioReport(context: CallContext, explanations: Explanations): Component[] {
  const newest = new Map(context.setUps.map((setUp) => [valveName(setUp), setUp.id]));
  return context.ratios.flatMap((found) => {
    const { id } = found.setUp;
    const isNewest = newest.get(valveName(found.setUp)) === id;
    return setUpSection(context, found, isNewest ? explanations.get(id) : undefined);
  });
}
