import { type AdjusterKind, firstAtGrowth, lookAt } from '../../lash/adjuster-words.ts';
import type { LashGrowth } from '../../lash/types.ts';
import type { AssessedQuestion, StopReason } from '../assessment.ts';
import { keyOf, placeOf, valveSubject } from '../common/said.ts';
import { wayOutOf } from '../common/way-out.ts';
import type { ValvePlace } from '../evidence.ts';
import type { LashValveDetail } from './detail.ts';
import { grewAgainStop, idsAt } from './valves.ts';

const aboutValve = (each: AssessedQuestion, growth: ValvePlace): boolean =>
  each.about.of === 'build' || keyOf(each.about) === keyOf(valveSubject(growth));

/** A gap that grew again after it was set again. */
export function stopOf(
  growth: LashGrowth,
  questions: readonly AssessedQuestion[],
  valves: readonly LashValveDetail[],
  kind: AdjusterKind,
): StopReason {
  const about = valveSubject(growth);
  const own = questions.filter((each) => aboutValve(each, growth));
  const line = valves.find((valve) => placeOf(valve) === placeOf(growth))?.grewAgain;
  const answered = own.some((each) => each.answered !== undefined);
  return {
    id: grewAgainStop(growth),
    code: 'lash-grew-again',
    about,
    sentence: `Do not turn it: the lash of ${placeOf(growth)} grew again after it was set again.`,
    ...wayOutOf(lookAt(kind), answered),
    first: firstAtGrowth(kind),
    from: 'readings',
    ...(line === undefined ? {} : { entryId: line.id, line: line.line }),
    answered,
    restsOn: idsAt(valves, growth),
  };
}
