import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import type { Evidence, SetUpEvidence } from '../../../../server/mechanics/assessment/evidence.ts';
import type { Law } from './law.ts';
import { parting, withoutLines } from './order.ts';

/** The set-up as if everything that was said of it later had been said before the first reading. */
function saidAtOnce(setUp: SetUpEvidence, { statements }: Evidence): SetUpEvidence {
  const facts = new Map<string, unknown>(Object.entries(setUp));
  const own = statements.filter(({ setUpId }) => setUpId === setUp.id).toSorted((a, b) => a.line - b.line);
  for (const { says, notKnown } of own) {
    for (const [fact, value] of Object.entries(says)) facts.set(fact, value);
    for (const fact of notKnown) facts.delete(fact);
  }
  return setUpOf(facts);
}

function setUpOf(facts: ReadonlyMap<string, unknown>): SetUpEvidence;
function setUpOf(facts: ReadonlyMap<string, unknown>): object {
  return Object.fromEntries(facts);
}

/** Law 1, for what is said of a set-up: told late it gives what it gives when it is told at once. */
export const toldLateCounts: Law = ({ evidence, assessment }) => {
  if (evidence.statements.length === 0) return [];
  const late = { ...evidence, answers: [] };
  const setUps = evidence.setUps.map((setUp) => saidAtOnce(setUp, evidence));
  const atOnce = { ...late, setUps, statements: [] };
  const told = evidence.answers.length === 0 ? assessment : assess(late);
  const found = parting(withoutLines(told), withoutLines(assess(atOnce)), '');
  return found === undefined ? [] : [found.replace('in another order', 'told at once')];
};
