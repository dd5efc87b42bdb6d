import { ADJUSTER_WORDS, adjusterKind } from '../../lash/adjuster-words.ts';
import type { AssessedQuestion, NextAction } from '../assessment.ts';
import { chosenOf } from '../common/chosen.ts';
import type { NotSet } from '../common/not-set.ts';
import { keyOf, lowerFirst, placeOf, valveSubject } from '../common/said.ts';
import type { SidesSwapped } from '../common/sides-swapped.ts';
import type { Evidence, LashEvidence, ValvePlace } from '../evidence.ts';
import { PUT_RIGHT } from './growth-answers.ts';
import { notSetOf } from './not-set.ts';
import type { Closed } from './sinking.ts';
import type { LashValveRead } from './valves.ts';

/** A gap that is read again at the heat that it was set at. */
interface AtHeat {
  readonly place: ValvePlace;
  readonly heat: LashEvidence['engine'];
}

/** What the log leaves to be done, for what is missing and what is next. */
export interface LashWork {
  /** Nothing is set on these, and why. */
  readonly notSet: readonly NotSet[];
  readonly atHeat: readonly AtHeat[];
  /** Gaps that grew and were looked into, and locks that let go: the cause is put right, and the gap set last. */
  readonly mend: readonly NextAction[];
  /** The same where nothing was found yet. */
  readonly lookOn: readonly NextAction[];
  /** How lifters stood whose gap was found: what it says hangs on that. */
  readonly hydraulic: readonly AssessedQuestion[];
  readonly sides?: SidesSwapped;
}

/** Answers by which the two were read at heats that are not one. */
const OTHER_HEAT: ReadonlySet<string> = new Set([
  'lash-heat-differs not-found',
  'lash-heat-unsaid other',
  'lash-closed other-heat',
]);

const isOf = ({ about }: AssessedQuestion, place: ValvePlace): boolean =>
  keyOf(about) === keyOf(valveSubject(place));

function atHeat(valve: LashValveRead, questions: readonly AssessedQuestion[]): AtHeat[] {
  const set = valve.lines.findLast(({ moment }) => moment === 'set');
  const apart = questions.some(
    (each) => isOf(each, valve) && OTHER_HEAT.has(`${each.code} ${chosenOf(each) ?? ''}`),
  );
  return apart && valve.now?.moment === 'found' ? [{ place: valve, heat: set?.engine ?? 'not-said' }] : [];
}

/** What is done once an adjuster is known to have moved: why it did first. */
export const whyMoved = (place: ValvePlace, { engine }: Evidence): string => {
  const { part, mend } = ADJUSTER_WORDS[adjusterKind(engine)];
  return `${placeOf(place)}, why the ${part} moved: ${lowerFirst(mend)} Then set the lash, lock it, and enter it as set.`;
};

/** Of a gap that grew and is as it was found still: what its answer leads to. */
function grown(
  valve: LashValveRead,
  questions: readonly AssessedQuestion[],
  evidence: Evidence,
): { readonly found: boolean; readonly action: NextAction } | undefined {
  const own = questions.find((each) => each.code === 'lash-grew' && isOf(each, valve));
  const chosen = own === undefined ? undefined : chosenOf(own);
  if (own === undefined || chosen === undefined || chosen === PUT_RIGHT) return undefined;
  if (valve.now?.moment === 'set') return undefined;
  const { wears, lets } = ADJUSTER_WORDS[adjusterKind(evidence.engine)];
  const found = chosen === 'found';
  const isLock = found && lets === 'lock' && valve.growth?.nut !== 'held';
  const last =
    lets === 'lock'
      ? 'Set the lash last, lock it, and enter it as set.'
      : 'Measure the gap last, and work its shim out from that.';
  const worn = found
    ? `change what is worn, look at ${wears}, and read that lobe’s lift against the others. ${last}`
    : `look at ${wears}, and read that lobe’s lift against the others. It is not set again before its cause is found.`;
  return {
    found,
    action: {
      id: `next:lash:mend:${keyOf(valveSubject(valve))}`,
      action: isLock ? 'why-moved' : 'lash-cause',
      step: 'adjuster',
      about: valveSubject(valve),
      sentence: isLock ? whyMoved(valve, evidence) : `${placeOf(valve)}: ${worn}`,
      reason: own.ask,
      turns: true,
    },
  };
}

/** A lock that let go, of a gap of which nothing else is told. */
const whyItMoved = (place: ValvePlace, evidence: Evidence): NextAction => ({
  id: `next:lash:mend:${keyOf(valveSubject(place))}`,
  action: 'why-moved',
  step: 'adjuster',
  about: valveSubject(place),
  sentence: whyMoved(place, evidence),
  reason: `The ${ADJUSTER_WORDS[adjusterKind(evidence.engine)].part} had moved.`,
  turns: true,
});

/** What is left to be done by the log and its answers. */
export function workOf(
  valves: readonly LashValveRead[],
  questions: readonly AssessedQuestion[],
  closed: readonly Closed[],
  evidence: Evidence,
): Omit<LashWork, 'sides' | 'hydraulic'> {
  const all = valves.flatMap((valve) => grown(valve, questions, evidence) ?? []);
  const notSet = notSetOf(valves, questions, closed, evidence);
  const told = new Set(all.map(({ action: { about } }) => keyOf(about)));
  const moved = notSet
    .filter((each) => each.moved === true && !told.has(keyOf(valveSubject(each))))
    .map((each) => whyItMoved(each, evidence));
  const of = (found: boolean) => all.filter((each) => each.found === found).map(({ action }) => action);
  return {
    notSet,
    atHeat: valves.flatMap((valve) => atHeat(valve, questions)),
    mend: [...of(true), ...moved],
    lookOn: of(false),
  };
}
