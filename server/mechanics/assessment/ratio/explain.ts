import { defined } from '../../../../shared/defined.ts';
import { InputFaults } from '../../../../shared/problems/faults.ts';
import { explainReadings } from '../../explain-readings/explain.ts';
import { toExplainOutput } from '../../explain-readings/json-output.ts';
import type { Evidence } from '../evidence.ts';
import { type ExplainGiven, explainInput } from './explain-input.ts';
import type { ExplanationResult } from './explanation.ts';
import { faultsSaid } from './full-lift.ts';
import type { Group } from './groups.ts';
import type { SetUpKnown } from './known.ts';
import { type Claim, claimsOn } from './marks.ts';

/** One arm on one valve with all that was read of it, and what would explain that. */
export interface GroupExplained {
  readonly group: Group;
  /** Its set-ups, by their number. */
  readonly known: readonly SetUpKnown[];
  /** What the arm is held to be; the first is what the inference was told. */
  readonly claims: readonly Claim[];
  readonly given?: ExplainGiven;
  readonly result?: ExplanationResult;
  /** The fault and the way out, where it cannot be computed. */
  readonly refused?: string;
}

/** Where the figure stands that no reading can have: a reading is entered again, a state or a card is put right. */
function wayOut({ faults }: InputFaults): string {
  const at = (pattern: RegExp) => faults.some(({ pointer }) => pattern.test(pointer));
  if (at(/LobeLift$/) && !at(/^\/readings/)) return 'put the lobe lift on the card right';
  if (at(/^\/lashSetting|\/perTurn$/)) return 'put that right for its set-up';
  return 'enter that one again, or strike it out with the reason';
}

function weighed(given: ExplainGiven): Pick<GroupExplained, 'given' | 'result' | 'refused'> {
  try {
    return { given, result: toExplainOutput(explainReadings(given.input)) };
  } catch (error) {
    if (!(error instanceof InputFaults)) throw error;
    const faults = faultsSaid(error).join('; ');
    return { given, refused: `These readings cannot be weighed (${faults}): ${wayOut(error)}` };
  }
}

/** The inference once for an arm on a valve, whatever the number of its set-ups. */
export function explainGroup(
  evidence: Evidence,
  group: Group,
  all: readonly SetUpKnown[],
  nominals: readonly number[],
): GroupExplained {
  const claims = claimsOn(evidence, group.armId);
  const known = all.filter(({ read }) => group.own.includes(read));
  const counted = new Set(all.flatMap((each) => [...each.counted]));
  const mark = claims[0]?.ratio;
  const given = explainInput(evidence, group, { nominals, counted, ...defined({ mark }) });
  return { group, known, claims, ...(given === undefined ? {} : weighed(given)) };
}
