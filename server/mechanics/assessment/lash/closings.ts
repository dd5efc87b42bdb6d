import type { AdjusterKind } from '../../lash/adjuster-words.ts';
import { lashGrowths } from '../../lash/growth.ts';
import { hasClosed, lashQuestions } from '../../lash/lash-questions.ts';
import type { LashGrowth } from '../../lash/types.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { chosenOf } from '../common/chosen.ts';
import { isLashDoubted } from '../common/lash-doubt.ts';
import { byArm } from '../common/lash-log-of.ts';
import type { Evidence, LashEvidence } from '../evidence.ts';
import { question } from './questions.ts';
import { asLine, type LashValveRead } from './valves.ts';

/** A gap that was found closed by more than is ordinary. */
export interface Closing {
  readonly growth: LashGrowth;
  /** What it was set to, or first found at. */
  readonly base: LashEvidence;
  /** Its lock, or its heat, was not on record: what is asked of it. */
  readonly question?: AssessedQuestion;
  /** What that was answered. */
  readonly chosen?: string;
  /** It was set again since, or another arm is on. */
  readonly past: boolean;
}

/** What was found from one setting to the next, each with the setting that it is set against. */
function lotsOf(lines: readonly LashEvidence[]): LashEvidence[][] {
  const lots: LashEvidence[][] = [];
  for (const line of lines) {
    if (line.moment === 'set' || lots.length === 0) lots.push([line]);
    else lots.at(-1)?.push(line);
  }
  return lots;
}

/**
 * Every time that the gap of one valve had closed, oldest first: of each setting what was found of it last. Setting it
 * again undoes none of them.
 */
export function closingsOf(
  valve: LashValveRead,
  limit: number,
  kind: AdjusterKind,
  evidence: Evidence,
): Closing[] {
  const sure = valve.counted.filter((line) => !isLashDoubted(evidence, line));
  return byArm(sure)
    .flatMap(lotsOf)
    .flatMap((lot): Closing[] => {
      const [base] = lot;
      const [growth] = lashGrowths(lot.map(asLine), limit);
      if (base === undefined || growth === undefined || !hasClosed(growth, limit)) return [];
      const [raised] = lashQuestions([growth], limit, kind);
      const own = raised === undefined ? undefined : question(raised, [], [valve], evidence);
      const chosen = own === undefined ? undefined : chosenOf(own);
      return [
        {
          growth,
          base,
          past: lot.at(-1) !== sure.at(-1) || valve.now === undefined,
          ...(own === undefined ? {} : { question: own }),
          ...(chosen === undefined ? {} : { chosen }),
        },
      ];
    });
}

/** What is asked still of a gap that had closed before it was set again: setting it answers nothing. */
export function pastQuestions(
  valves: readonly LashValveRead[],
  raised: readonly AssessedQuestion[],
  limit: number,
  kind: AdjusterKind,
  evidence: Evidence,
): AssessedQuestion[] {
  const asked = new Set(raised.map(({ id }) => id));
  return valves.flatMap((valve) =>
    closingsOf(valve, limit, kind, evidence)
      .flatMap((each) => (each.past && each.question !== undefined ? [each.question] : []))
      .filter(({ id, answered }) => answered === undefined && !asked.has(id))
      .slice(-1),
  );
}
