import { isAnswer } from '../../../shared/begins-with.ts';
import { defined } from '../../../shared/defined.ts';
import { InputFaults } from '../../../shared/problems/faults.ts';
import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { AssessedQuestion } from '../../mechanics/assessment/assessment.ts';
import { isAnswered } from '../../mechanics/assessment/common/asked.ts';
import { loadBuildRecord } from '../../records/whole-build/load-build.ts';
import { assessed } from '../assessed.ts';

interface Said {
  readonly code?: string | undefined;
  readonly questionId?: string | undefined;
  readonly answer: string;
  readonly found?: boolean | undefined;
}

/** The word of a question, as its id has it: `question:turn-miscounted:5-intake:…`. */
const wordOf = (questionId: string | undefined): string | undefined =>
  /^question:([a-z0-9-]+):/.exec(questionId ?? '')?.[1];

function refuse(code: string, allowed: string): never {
  throw new InputFaults([
    {
      pointer: '/code',
      code: 'not-allowed',
      detail: `must be the word of the question${allowed}. What was found goes into answer, which begins with the code of one of the question’s answers`,
      received: code,
    },
  ]);
}

const plain = (text: string): string => text.trim().toLowerCase();

/** An answer that this question has no use for: it would be kept, and change nothing. */
function refuseUnfit({ answers, code }: AssessedQuestion, said: Said): void {
  const labelled = answers.find(({ label }) => plain(label) === plain(said.answer));
  // A label that begins with its own code says nothing else than that.
  const isLabel = labelled !== undefined && !isAnswer(said.answer, labelled.code);
  if (isAnswered({ answer: said.answer, ...defined({ found: said.found }) }, answers) && !isLabel) return;
  if (isLabel && said.found !== undefined) return;
  throw new InputFaults([
    {
      pointer: '/answer',
      code: 'not-allowed',
      detail: `begins with the code of one of the answers to ${code}: ${answers
        .map((each) => `${each.code} (${each.label})`)
        .join(', ')}`,
      received: said.answer,
    },
  ]);
}

/**
 * Refuses an answer that no question would know for its own: one sent under the code of an answer instead of the word of
 * its question, or one that is none of those its question has.
 */
export async function refuseUnknownAnswer(
  tx: Tx,
  principal: Principal,
  buildId: string,
  said: Said,
): Promise<void> {
  const { code = '', questionId } = said;
  if (code === '' && questionId === undefined) return;
  const word = wordOf(questionId);
  if (code !== '' && word !== undefined && code !== word) refuse(code, `: ${word}`);
  const record = await loadBuildRecord(tx, principal, { buildId }, { access: 'write' });
  const { questions } = assessed(record);
  const own = questions.find(({ id }) => id === questionId);
  if (own !== undefined) refuseUnfit(own, said);
  if (word !== undefined || questions.some((each) => each.code === code)) return;
  const meant = questions.filter(({ answers }) => answers.some((each) => each.code === code));
  if (meant.length > 0) refuse(code, `: ${[...new Set(meant.map((each) => each.code))].join(', ')}`);
}
