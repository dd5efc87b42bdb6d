import { EQUAL } from '../../kit/nearest.ts';
import { ADJUSTER_WORDS, type AdjusterKind, adjusterKind } from '../../lash/adjuster-words.ts';
import { closedSaid } from '../../lash/lash-questions.ts';
import type { AssessedQuestion, Headline, NotToRun } from '../assessment.ts';
import { chosenOf } from '../common/chosen.ts';
import { lashSaid } from '../common/gap-said.ts';
import { keyOf, lowerFirst, placeOf, valveSubject } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { type Closing, closingsOf } from './closings.ts';
import { HELD, ONE_HEAT } from './growth-answers.ts';
import { tellsOfAdjuster } from './on-hydraulic.ts';
import { SEAT, seatQuestion } from './seat-looked.ts';
import type { LashValveRead } from './valves.ts';

/** What a gap that closed comes to. */
type How = 'sinks' | 'lock' | 'at-other-heat';

/** Valves whose gap closed at one heat, with their question where one was asked. */
export interface Closed {
  readonly valve: LashValveRead;
  readonly closing: Closing;
  readonly how: How;
  /** Somebody looked at its lock. */
  readonly held: boolean;
  /** What was found at valve and seat, where it may be sinking. */
  readonly seat?: AssessedQuestion;
}

function howOf({ growth, chosen }: Closing, kind: AdjusterKind): How | undefined {
  if (chosen === 'other-heat') return 'at-other-heat';
  if (growth.nut === 'moved' || chosen === 'moved') return growth.heatsSaid === true ? 'lock' : undefined;
  if (chosen === ONE_HEAT || chosen === HELD) return 'sinks';
  // A shim has no lock that could have moved.
  const held = growth.nut === 'held' || ADJUSTER_WORDS[kind].lets === 'nothing';
  return growth.heatsSaid === true && held ? 'sinks' : undefined;
}

/** Nobody has looked, or what was found wants putting right. */
export const isSeatOpen = ({ how, seat }: Closed): boolean =>
  how === 'sinks' && (seat === undefined || !SEAT.settled.has(chosenOf(seat) ?? ''));

/**
 * Gaps that closed, once it is known what that says. One that was set again since is told until somebody has looked at
 * valve and seat; a lock that let go is put right by setting it.
 */
export function closedGaps(
  valves: readonly LashValveRead[],
  limit: number,
  kind: AdjusterKind,
  evidence: Evidence,
): Closed[] {
  return valves.flatMap((valve) => {
    // With no gap at all the adjuster is backed off first.
    if ((valve.newest.value ?? valve.newest.high ?? 1) <= EQUAL) return [];
    if (!tellsOfAdjuster(valve.hydraulic)) return [];
    const all = closingsOf(valve, limit, kind, evidence).flatMap((closing): Closed[] => {
      const how = howOf(closing, kind);
      if (how === undefined) return [];
      const held = closing.growth.nut === 'held' || closing.chosen === HELD;
      const seat = how === 'sinks' ? seatQuestion(valve, closing, limit, evidence) : undefined;
      return [{ valve, closing, how, held, ...(seat === undefined ? {} : { seat }) }];
    });
    // What was found of the last one stays told with its answer.
    const last = all.at(-1);
    return all
      .filter((each) => !each.closing.past || isSeatOpen(each) || (each === last && each.how === 'sinks'))
      .toReversed();
  });
}

const SAID: Readonly<Record<How, (part: string, closed: Closed) => string>> = {
  sinks: (part, { held, closing: { past }, seat }) => {
    const told = SEAT.said[(seat === undefined ? undefined : chosenOf(seat)) ?? ''];
    if (told !== undefined) return told(past);
    const at = `At one heat and with its ${part} ${held ? 'held' : 'where it was, if nobody moved it'} the valve may be sinking into its seat`;
    return past
      ? `${at}, and no setting undoes that: a qualified shop looks at valve and seat before it runs.`
      : `${at}. Do not set it away: a qualified shop looks at valve and seat first.`;
  },
  lock: (part) => `The ${part} moved: its lock is put right before the gap is set again.`,
  'at-other-heat': () => 'It was not read at the heat it was set at: nothing is told of it before it is.',
};

/** Nothing was set or found since another arm is on. */
export const WITH_OTHER_ARM = 'not read with the arm that is on';

/** What it is now; what it did before it was set again stays told. */
function nowSaid({ valve: { newest, now }, closing: { past, growth } }: Closed, limit: number): string {
  const said = closedSaid(growth, limit);
  if (now === undefined) return `${WITH_OTHER_ARM}. Before that: ${lowerFirst(said)}`;
  if (!past) return `${lashSaid(newest)} now. ${said}`;
  return now?.moment === 'set'
    ? `set again to ${lashSaid(newest)}. Before that: ${lowerFirst(said)}`
    : `${lashSaid(newest)} now. Before it was set again: ${lowerFirst(said)}`;
}

/** What a gap that closed says, in one line. */
export function closedHeadline(closed: Closed, evidence: Evidence, limit: number): Headline[] {
  const about = valveSubject(closed.valve);
  const { part } = ADJUSTER_WORDS[adjusterKind(evidence.engine)];
  return [
    {
      id: `headline:lash:${keyOf(about)}`,
      about,
      step: 'adjuster',
      sentence: `Lash of ${placeOf(closed.valve)}, ${nowSaid(closed, limit)} ${SAID[closed.how](part, closed)}`,
      quantityId: `lash:${keyOf(about)}`,
    },
  ];
}

/** The last time that each valve closed for its seat, where nobody has looked since. */
export const sinkingOf = (closed: readonly Closed[]): Closed[] => {
  const open = closed.filter(isSeatOpen);
  return open.filter((each, at) => open.findIndex(({ valve }) => valve === each.valve) === at);
};

/** A valve that may be sinking into its seat is not run until somebody has looked. */
export const sinkingNotToRun = (closed: readonly Closed[]): NotToRun[] =>
  sinkingOf(closed).map(({ valve, closing: { past } }) => ({
    id: `not-to-run:lash-closed:${keyOf(valveSubject(valve))}`,
    what: 'run',
    about: valveSubject(valve),
    sentence: `Do not run it: ${placeOf(valve)} ${past ? 'had closed up at one heat before it was set again' : 'has closed up at one heat'}, and may be sinking into its seat.`,
    wayOut: 'Leave the gap alone, and have a qualified shop look at valve and seat.',
  }));
