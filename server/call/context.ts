import { type GoalPlan, planOf } from '../../shared/goals.ts';
import { type SetUpRatio, setUpRatio } from '../assessment/ratio/ratio.ts';
import type { Principal } from '../auth/principal.ts';
import type { Tx } from '../database/database.ts';
import { eventsAfter, type RecordedEvent } from '../events/build-events.ts';
import { Failure } from '../problems/failure.ts';
import { type Answer, listAnswers } from '../records/answers/answers.ts';
import { type Arm, listArms } from '../records/arms/arms.ts';
import { listPlacements, nowOnValves, type Placement } from '../records/arms/placements.ts';
import { type Build, getBuild } from '../records/builds/builds.ts';
import { listRevisions, type Revision } from '../records/builds/revisions.ts';
import { type Call, getCall } from '../records/calls/calls.ts';
import { listNotes, type Note } from '../records/notes/notes.ts';
import { listPartReadings, type PartReading } from '../records/part-readings/part-readings.ts';
import { listPhotographs, type Photograph } from '../records/photographs/photographs.ts';
import { listReadings, type Reading } from '../records/readings/readings.ts';
import { listSetUps, type SetUp } from '../records/set-ups/set-ups.ts';
import { listWorkings, type Working } from '../records/workings/workings.ts';
import type { PageRequest, PageSide } from '../web/page-route.ts';

/** A call with its build as one of the two sides sees it; what every page of a call is made from. */
export interface CallContext {
  readonly principal: Principal;
  readonly side: PageSide;
  /** Where the pages of this side begin: `/calls/{id}` or `/bench`. */
  readonly base: string;
  readonly call: Call;
  /** What the goal of the call asks for. */
  readonly plan: GoalPlan;
  readonly build: Build;
  /** Every revision of the build, oldest first. */
  readonly revisions: readonly Revision[];
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
  readonly photographs: readonly Photograph[];
  /** Computations kept with the build. */
  readonly workings: readonly Working[];
  readonly events: readonly RecordedEvent[];
}

/** The record of one call is read in whole; past this many lines the older ones are in the export. */
const MOST_EVENTS = 10_000;

/** The call that a page is about: the one in the desk's address, or the one the builder's link is for. */
export function callIdOf(req: PageRequest): string {
  if (req.side === 'desk') return req.params.callId ?? '';
  if (req.principal.kind !== 'builder') throw new Failure('not-found', 'nothing is here');
  return req.principal.callId;
}

export const baseOf = (req: PageRequest): string =>
  req.side === 'desk' ? `/calls/${callIdOf(req)}` : '/bench';

export async function loadContext(tx: Tx, req: PageRequest): Promise<CallContext> {
  const { principal, side } = req;
  const call = await getCall(tx, principal, callIdOf(req));
  const { buildId } = call;
  const placements = await listPlacements(tx, principal, buildId);
  const setUps = await listSetUps(tx, principal, buildId);
  const ratios = [];
  for (const setUp of setUps) ratios.push(await setUpRatio(tx, principal, buildId, setUp.id));
  return {
    principal,
    side,
    base: baseOf(req),
    call,
    plan: planOf(call.goal),
    build: await getBuild(tx, principal, buildId),
    revisions: await listRevisions(tx, principal, buildId),
    arms: await listArms(tx, principal, buildId),
    placements,
    now: nowOnValves(placements),
    partReadings: await listPartReadings(tx, principal, buildId),
    setUps,
    readings: await listReadings(tx, principal, buildId),
    ratios,
    answers: await listAnswers(tx, principal, buildId),
    notes: await listNotes(tx, principal, buildId),
    workings: await listWorkings(tx, principal, buildId),
    photographs: await listPhotographs(tx, principal, buildId),
    events: await eventsAfter(tx, principal, buildId, 0, MOST_EVENTS),
  };
}

/** `1 intake` */
export const valveName = (of: { readonly cylinder: number; readonly valve: string }): string =>
  `${of.cylinder} ${of.valve}`;
