import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import type { AnswerEvidence, Evidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../../server/mechanics/kit/si.ts';

type Question = ReturnType<typeof assess>['questions'][number];

/** A figure that is asked for as a length mostly is one of the lash. */
const LENGTH = 0.016 * IN;

function answerOf(question: Question, choice: Question['answers'][number], line: number): AnswerEvidence {
  const value = choice.value ?? (choice.takesValue === true ? LENGTH : undefined);
  const found = { found: true, 'not-found': false }[choice.code];
  return {
    ...{ id: `answer-${line}`, line, code: question.code, questionId: question.id, question: question.ask },
    answer: choice.code,
    ...(found === undefined ? {} : { found }),
    ...(value === undefined ? {} : { value }),
    ...(choice.takesValve === true ? { place: { cylinder: 1, valve: 'intake' as const } } : {}),
  };
}

/** The build, and it once more for each answer to each thing that is asked of it. */
export function withEachAnswer(build: Evidence): Evidence[] {
  const lines = [...JSON.stringify(build).matchAll(/"line":(\d+)/g)].map(([, line]) => Number(line));
  const next = Math.max(0, ...lines) + 1;
  const answered = assess(build).questions.flatMap((question) =>
    question.answers.map((choice) => ({
      ...build,
      answers: [...build.answers, answerOf(question, choice, next)],
    })),
  );
  return [build, ...answered];
}
