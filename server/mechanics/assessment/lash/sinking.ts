import { EQUAL } from '../../kit/nearest.ts';
import { ADJUSTER_WORDS, type AdjusterKind, adjusterKind } from '../../lash/adjuster-words.ts';
import { closedSaid, hasClosed } from '../../lash/lash-questions.ts';
import type { AssessedQuestion, Headline, NotToRun } from '../assessment.ts';
import { chosenOf } from '../common/chosen.ts';
import { gapSaid } from '../common/gap-said.ts';
import { keyOf, placeOf, valveSubject } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { LashValveDetail } from './detail.ts';
import { HELD, ONE_HEAT } from './growth-answers.ts';

const CODES: ReadonlySet<string> = new Set(['lash-closed', 'lash-closed-nut']);

/** Valves whose gap closed at one heat, with their question where one was asked; one that was set since has none. */
export interface Closed {
  readonly valve: LashValveDetail;
  readonly how: 'sinks' | 'lock' | 'at-other-heat';
  /** Somebody looked at its lock. */
  readonly held: boolean;
}

function howOf(
  { growth, lines, newest }: LashValveDetail,
  question: AssessedQuestion | undefined,
  limit: number,
  kind: AdjusterKind,
): Closed['how'] | undefined {
  if (growth === undefined || !hasClosed(growth, limit) || lines.at(-1)?.moment === 'set') return undefined;
  // With no gap at all the adjuster is backed off first.
  if ((newest.value ?? newest.high ?? 0) <= EQUAL) return undefined;
  const chosen = question === undefined ? undefined : chosenOf(question);
  if (chosen === 'other-heat') return 'at-other-heat';
  if (growth.nut === 'moved' || chosen === 'moved') return growth.heatsSaid === true ? 'lock' : undefined;
  if (chosen === ONE_HEAT || chosen === HELD) return 'sinks';
  // A shim has no lock that could have moved.
  const held = growth.nut === 'held' || ADJUSTER_WORDS[kind].lets === 'nothing';
  return growth.heatsSaid === true && held ? 'sinks' : undefined;
}

/** Gaps that closed, once it is known what that says. */
export function closedGaps(
  valves: readonly LashValveDetail[],
  questions: readonly AssessedQuestion[],
  limit: number,
  kind: AdjusterKind,
): Closed[] {
  return valves.flatMap((valve) => {
    const own = questions.find(
      ({ code, about }) => CODES.has(code) && keyOf(about) === keyOf(valveSubject(valve)),
    );
    const how = howOf(valve, own, limit, kind);
    const held = valve.growth?.nut === 'held' || (own !== undefined && chosenOf(own) === HELD);
    return how === undefined ? [] : [{ valve, how, held }];
  });
}

const SAID: Readonly<Record<Closed['how'], (part: string, held: boolean) => string>> = {
  sinks: (part, held) =>
    `At one heat and with its ${part} ${held ? 'held' : 'where it was, if nobody moved it'} the valve may be sinking into its seat. Do not set it away: a qualified shop looks at valve and seat first.`,
  lock: (part) => `The ${part} moved: its lock is put right before the gap is set again.`,
  'at-other-heat': () => 'It was not read at the heat it was set at: nothing is told of it before it is.',
};

/** What a gap that closed says, in one line. */
export function closedHeadline({ valve, how, held }: Closed, evidence: Evidence, limit: number): Headline[] {
  const { growth, newest } = valve;
  if (growth === undefined) return [];
  const about = valveSubject(valve);
  const { part } = ADJUSTER_WORDS[adjusterKind(evidence.engine)];
  return [
    {
      id: `headline:lash:${keyOf(about)}`,
      about,
      step: 'adjuster',
      sentence: `Lash of ${placeOf(valve)}, ${gapSaid(newest)} now. ${closedSaid(growth, limit)} ${SAID[how](part, held)}`,
      quantityId: `lash:${keyOf(about)}`,
    },
  ];
}

/** Valves that may be sinking into their seats: nothing is set on them. */
export const sinkingPlaces = (closed: readonly Closed[]): string[] =>
  closed.filter(({ how }) => how === 'sinks').map(({ valve }) => placeOf(valve));

/** A valve that may be sinking into its seat is not run until somebody has looked. */
export const sinkingNotToRun = (closed: readonly Closed[]): NotToRun[] =>
  closed
    .filter(({ how }) => how === 'sinks')
    .map(({ valve }) => ({
      id: `not-to-run:lash-closed:${keyOf(valveSubject(valve))}`,
      what: 'run',
      about: valveSubject(valve),
      sentence: `Do not run it: ${placeOf(valve)} has closed up at one heat, and may be sinking into its seat.`,
      wayOut: 'Leave the gap alone, and have a qualified shop look at valve and seat.',
    }));
