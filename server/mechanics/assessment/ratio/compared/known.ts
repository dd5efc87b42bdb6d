import { defined } from '../../../../../shared/defined.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import type { Evidence } from '../../evidence.ts';
import { questionsOfSetUp } from '../asked/asked.ts';
import { doubtsOf, lacksOf, noMean } from '../asked/conditions.ts';
import { countedPasses, withCountsThatDoNotFit } from '../asked/counted.ts';
import { withoutMoot, withoutTwice } from '../asked/moot.ts';
import { nominalRows } from '../claims/nominal-rows.ts';
import type { NominalsDetail, RatioInput, RatioResult } from '../read/detail.ts';
import { ratioInput, ratioResult } from '../read/full-lift.ts';
import type { RatioLack } from '../read/lack.ts';
import type { SetUpRead } from '../read/set-up-read.ts';
import type { Differs } from './set-ups-differ.ts';

/** A set-up with what it is asked, what it lacks and what comes of it. */
export interface SetUpKnown {
  readonly read: SetUpRead;
  readonly questions: readonly AssessedQuestion[];
  readonly counted: ReadonlySet<string>;
  /** What must be known or done before a word stands against it, open doubts among it. */
  readonly lacks: readonly RatioLack[];
  readonly doubts: readonly RatioLack[];
  readonly input?: RatioInput;
  readonly result?: RatioResult;
  readonly nominals?: NominalsDetail;
  /** Another set-up of the same arm on the same valve came out otherwise. */
  readonly differs?: Differs;
  /** The per-valve sheet has the lift otherwise: that holds, or nobody knows yet which does, and which is the higher. */
  readonly besideSheet?: 'aside' | 'higher' | 'lower';
  /** One pass, and not what a set-up of three beside it comes to: its other passes are read first. */
  readonly begun?: true;
  /** Its own passes speak against it, and another set-up of the same reading is sound; what they show. */
  readonly poor?: { readonly facts?: string };
}

export function knownOf(
  evidence: Evidence,
  read: SetUpRead,
  all: readonly SetUpRead[],
  nominals: readonly number[],
): SetUpKnown {
  const asked = questionsOfSetUp(evidence, read, all);
  const counted = countedPasses(read, asked);
  const questions = withoutMoot(withCountsThatDoNotFit(asked, counted, read.setUp.answers));
  const doubts = doubtsOf(read, questions);
  const input = ratioInput(read.setUp, read.valve, read.lobe);
  const { result, refused } = ratioResult(noMean(read, questions) ? undefined : input);
  return {
    read,
    questions,
    counted,
    lacks: withoutTwice([...lacksOf(read, questions), ...refused, ...doubts]),
    doubts,
    ...defined({ input, result }),
    ...defined({ nominals: nominalRows(evidence, read.setUp, nominals, read.lobe, result) }),
  };
}
