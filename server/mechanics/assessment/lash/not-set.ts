import { ADJUSTER_WORDS, adjusterKind } from '../../lash/adjuster-words.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { chosenOf } from '../common/chosen.ts';
import type { NotSet } from '../common/not-set.ts';
import { keyOf, placeOf, valveSubject } from '../common/said.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';
import { OF_CLOSING, PUT_RIGHT } from './growth-answers.ts';
import { type Closed, sinkingOf } from './sinking.ts';
import type { LashValveRead } from './valves.ts';

type Why = Omit<NotSet, keyof ValvePlace>;

/** Its gap closed: for its seat, by its lock, or nobody has looked yet. */
function closedWhy(
  valve: LashValveRead,
  own: readonly AssessedQuestion[],
  closed: readonly Closed[],
): Why | undefined {
  const at = placeOf(valve);
  if (sinkingOf(closed).some((each) => each.valve === valve))
    return {
      why: `${at} may be sinking into its seat, and a qualified shop looks at valve and seat first`,
      first: 'what a qualified shop finds at valve and seat',
      settles: 'seat-looked',
    };
  const open = own.find(({ code, answered }) => OF_CLOSING.has(code) && answered === undefined);
  return open === undefined || valve.now?.moment === 'set'
    ? undefined
    : {
        why: `why the gap of ${at} closed is looked into first`,
        first: 'why its gap closed',
        settles: open.code,
      };
}

/** Its gap grew, and what did it is not put right yet. */
function grewWhy(valve: LashValveRead, own: readonly AssessedQuestion[]): Why | undefined {
  const grew = own.find(({ code }) => code === 'lash-grew' || code === 'lash-grew-everywhere');
  if (grew === undefined || valve.now?.moment === 'set') return undefined;
  const chosen = chosenOf(grew);
  // One of all is set again step by step to see what it does.
  if (chosen === PUT_RIGHT || (grew.code === 'lash-grew-everywhere' && chosen === 'found')) return undefined;
  const at = placeOf(valve);
  return {
    why:
      chosen === 'found'
        ? `what made the gap of ${at} grow is put right first, and the gap is set last`
        : `why the gap of ${at} grew is looked into first, and the gap is set last`,
    first: chosen === 'found' ? 'what made its gap grow, put right' : 'why its gap grew',
    settles: grew.code,
  };
}

/** Its lock was found moved, and nothing was set or looked at since. */
function movedWhy(valve: LashValveRead, { engine }: Evidence): Why | undefined {
  const { part, lets } = ADJUSTER_WORDS[adjusterKind(engine)];
  const { now } = valve;
  const moved = now?.moment === 'found' && now.nut === 'moved' && lets === 'lock';
  return moved
    ? {
        why: `the ${part} of ${placeOf(valve)} had moved: why it did is put right first, and the gap is set last`,
        first: `why its ${part} moved`,
        moved: true,
      }
    : undefined;
}

/**
 * Valves that nobody sets yet, each with why: one that may be sinking, whose gap closed or grew for what nobody has found,
 * or whose lock let go. Setting it would hide what is looked at first.
 */
export function notSetOf(
  valves: readonly LashValveRead[],
  questions: readonly AssessedQuestion[],
  closed: readonly Closed[],
  evidence: Evidence,
): NotSet[] {
  return valves.flatMap((valve) => {
    const own = questions.filter(
      ({ about }) => about.of === 'build' || keyOf(about) === keyOf(valveSubject(valve)),
    );
    const why = closedWhy(valve, own, closed) ?? grewWhy(valve, own) ?? movedWhy(valve, evidence);
    return why === undefined ? [] : [{ cylinder: valve.cylinder, valve: valve.valve, ...why }];
  });
}
