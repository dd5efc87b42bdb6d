import type { Caller } from '../../access/caller.ts';
import { type Answer, listAnswers } from '../../answers/answers.ts';
import { type Arm, listArms } from '../../builds/arms.ts';
import { type Build, getBuild } from '../../builds/builds.ts';
import { listPlacements, nowOnValves, type Placement } from '../../builds/placements.ts';
import type { Tx } from '../../database/database.ts';
import type { PageRequest, PageSide } from '../../http/page-route.ts';
import { listPartReadings, type PartReading } from '../../identification/part-readings.ts';
import { listNotes, type Note } from '../../notes/notes.ts';
import { Failure } from '../../problems/failure.ts';
import { type SetUpRatio, setUpRatio } from '../../readings/ratio.ts';
import { listReadings, type Reading } from '../../readings/readings.ts';
import { eventsAfter, type RecordedEvent } from '../../record/events.ts';
import { listSetUps, type SetUp } from '../../set-ups/set-ups.ts';
import { type Call, getCall } from '../calls.ts';

/** A call with its build as one of the two sides sees it; what every page of a call is made from. */
export interface Sight {
  readonly caller: Caller;
  readonly side: PageSide;
  /** Where the pages of this side begin: `/calls/{id}` or `/bench`. */
  readonly base: string;
  readonly call: Call;
  readonly build: Build;
  readonly arms: readonly Arm[];
  readonly placements: readonly Placement[];
  /** Which arm sits on which valve now. */
  readonly now: readonly Placement[];
  /** What was read of a part in the hand. */
  readonly partReadings: readonly PartReading[];
  readonly setUps: readonly SetUp[];
  readonly readings: readonly Reading[];
  readonly ratios: readonly SetUpRatio[];
  readonly answers: readonly Answer[];
  readonly notes: readonly Note[];
  readonly events: readonly RecordedEvent[];
}

/** The record of one call is read in whole; past this many lines the older ones are in the export. */
const MOST_EVENTS = 10_000;

/** The call that a page is about: the one in the desk's address, or the one the builder's link is for. */
export function callIdOf(given: PageRequest): string {
  if (given.side === 'desk') return given.params.callId ?? '';
  if (given.caller.kind !== 'builder') throw new Failure('not-found', 'nothing is here');
  return given.caller.callId;
}

export const baseOf = (given: PageRequest): string =>
  given.side === 'desk' ? `/calls/${callIdOf(given)}` : '/bench';

export async function lookAt(tx: Tx, given: PageRequest): Promise<Sight> {
  const { caller, side } = given;
  const call = await getCall(tx, caller, callIdOf(given));
  const { buildId } = call;
  const placements = await listPlacements(tx, caller, buildId);
  const setUps = await listSetUps(tx, caller, buildId);
  const ratios = [];
  for (const setUp of setUps) ratios.push(await setUpRatio(tx, caller, buildId, setUp.id));
  return {
    caller,
    side,
    base: baseOf(given),
    call,
    build: await getBuild(tx, caller, buildId),
    arms: await listArms(tx, caller, buildId),
    placements,
    now: nowOnValves(placements),
    partReadings: await listPartReadings(tx, caller, buildId),
    setUps,
    readings: await listReadings(tx, caller, buildId),
    ratios,
    answers: await listAnswers(tx, caller, buildId),
    notes: await listNotes(tx, caller, buildId),
    events: await eventsAfter(tx, caller, buildId, 0, MOST_EVENTS),
  };
}

/** `1 intake` */
export const valveName = (of: { readonly cylinder: number; readonly valve: string }): string =>
  `${of.cylinder} ${of.valve}`;
