import { InputFaults } from '../../../shared/problems/faults.ts';
import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { loadBuildRecord } from '../../records/whole-build/load-build.ts';
import { assessed } from '../assessed.ts';

interface Named {
  readonly code?: string | undefined;
  readonly questionId?: string | undefined;
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

/**
 * Refuses an answer that is sent under the code of an answer instead of the word of its question: it would be kept, and
 * no question would know it for its own.
 */
export async function refuseAnswersCode(
  tx: Tx,
  principal: Principal,
  buildId: string,
  { code = '', questionId }: Named,
): Promise<void> {
  if (code === '') return;
  const word = wordOf(questionId);
  if (word !== undefined) {
    if (code !== word) refuse(code, `: ${word}`);
    return;
  }
  const record = await loadBuildRecord(tx, principal, { buildId }, { access: 'write' });
  const { questions } = assessed(record);
  if (questions.some((each) => each.code === code)) return;
  const meant = questions.filter(({ answers }) => answers.some((each) => each.code === code));
  if (meant.length > 0) refuse(code, `: ${[...new Set(meant.map((each) => each.code))].join(', ')}`);
}
