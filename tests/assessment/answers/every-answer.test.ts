import { describe, expect, test } from 'vitest';
import { answerEvidence } from '../../../server/assessment/evidence/other-entries.ts';
import { answerFields, answerForm } from '../../../server/call/answer-form.ts';
import { contextOf } from '../../../server/call/context.ts';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { AnswerChoice, AssessedQuestion } from '../../../server/mechanics/assessment/assessment.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { readForm } from '../../../server/web/forms/read-form.ts';
import { answerQuestion } from '../../../shared/schemas/commands.ts';
import { buildOf } from '../../mechanics/assessment/laws/builds.ts';
import { askedBy } from '../../tools/call-faces.ts';
import { callOf, recordOf } from '../../tools/record-of-evidence.ts';

/*
 * Every question of generated builds, with each of its answers as JSON would send it out of what the assessment shows,
 * and as its form posts it: both are taken, say the same, and answer the question. Needs no source: it is about words.
 */

const BUILDS = Array.from({ length: Number(process.env.LAW_BUILDS ?? 80) }, (_, index) => {
  const evidence = buildOf(index + 1);
  return { evidence, questions: assess(evidence).questions };
});
const AT = new Date(0);

type Said = ReturnType<typeof answerQuestion.parse>;

/** What a program sends that knows no more than what the assessment shows of the question. */
const bodyOf = (question: AssessedQuestion, { code, value }: AnswerChoice) => ({
  question: question.ask,
  questionId: question.id,
  code: question.code,
  answer: code,
  ...(question.about.of === 'set-up' ? { setUpId: crypto.randomUUID() } : {}),
  ...(value === undefined ? {} : { value: { value: value / 0.0254, unit: 'in' } }),
});

/** The evidence with this answer last on its record. */
function answeredBy(evidence: Evidence, question: AssessedQuestion, said: Said): Evidence {
  const { about } = question;
  const answer = answerEvidence({
    id: 'the-answer',
    questionId: said.questionId,
    question: said.question,
    answer: said.answer,
    code: said.code ?? '',
    found: said.found,
    value: said.value ?? said.lean,
    setUpId: about.of === 'set-up' ? about.setUpId : undefined,
    place: undefined,
    seq: 1_000_000,
    by: 'Robin',
    at: AT,
  });
  return { ...evidence, answers: [...evidence.answers, answer] };
}

/** What the form of the question posts, where this answer is chosen and nothing is written beside it. */
function postedOf(evidence: Evidence, question: AssessedQuestion, answer: string) {
  const call = callOf(evidence);
  const context = contextOf(askedBy('desk', call.id), call.id, recordOf(evidence));
  const { id, ask, code, step, answers, about } = question;
  const { hidden } = answerForm(context, {
    ...{ name: 'answer', ask, code, step, answers, questionId: id },
    ...(about.of === 'set-up' ? { setUpId: crypto.randomUUID() } : {}),
  });
  return { ...hidden, answer, words: '', value: '', lean: '', cylinder: '', valve: '' };
}

/** One question of each code, with the longest words that it has. */
function longest(): { evidence: Evidence; question: AssessedQuestion }[] {
  const found = new Map<string, { evidence: Evidence; question: AssessedQuestion }>();
  for (const { evidence, questions } of BUILDS)
    for (const question of questions) {
      const key = `${question.code} ${question.answers.map(({ code }) => code).join()}`;
      const known = found.get(key);
      if (known === undefined || question.ask.length > known.question.ask.length)
        found.set(key, { evidence, question });
    }
  return [...found.values()];
}

test('every answer to every question of the builds is taken over JSON, as the assessment shows it', () => {
  const refused = BUILDS.flatMap(({ questions }) =>
    questions.flatMap((question) =>
      question.answers.flatMap((choice) => {
        const read = answerQuestion.safeParse(bodyOf(question, choice));
        return read.success ? [] : [`${question.code} ${choice.code}: ${read.error.issues[0]?.message}`];
      }),
    ),
  );
  expect([...new Set(refused)]).toEqual([]);
});

describe('the longest question of each word', () => {
  test.each(longest().map((each) => [each.question.code, each] as const))(
    '%s',
    (_, { evidence, question }) => {
      for (const choice of question.answers) {
        const byJson = answerQuestion.parse(bodyOf(question, choice));
        const posted = postedOf(evidence, question, choice.code);
        const read = readForm(answerQuestion, answerFields(posted), { lengths: 'in' });
        if (!read.ok) throw new Error(`${choice.code}: ${JSON.stringify(read.faults)}`);
        const words = (said: Said) => said.answer.replaceAll(' ', '-');
        expect(words(read.data)).toBe(words(byJson));
        const [one, other] = [byJson, read.data].map((said) => {
          const { questions, ...all } = assess(answeredBy(evidence, question, said));
          const now = questions.find(({ id }) => id === question.id);
          return { found: now?.answered?.found, headlines: all.headlines, stop: all.stop, next: all.next };
        });
        expect(other, choice.code).toEqual(one);
      }
    },
  );
});
