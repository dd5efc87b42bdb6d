import { type GoalPlan, planOf } from '../../shared/schemas/goals.ts';
import { valveSaid } from '../../shared/schemas/words.ts';
import { assessedFor } from '../assessment/assessed.ts';
import type { Principal } from '../auth/principal.ts';
import type { Tx } from '../database/database.ts';
import type { RecordedEvent } from '../events/build-events.ts';
import type { Assessment } from '../mechanics/assessment/assessment.ts';
import { forBench } from '../mechanics/assessment/for-bench.ts';
import { Failure } from '../problems/failure.ts';
import type { Answer } from '../records/answers/answers.ts';
import type { Arm } from '../records/arms/arms.ts';
import { nowOnValves, type Placement } from '../records/arms/placements.ts';
import type { Build } from '../records/builds/builds.ts';
import type { Revision } from '../records/builds/revisions.ts';
import type { Call } from '../records/calls/calls.ts';
import { stillStanding } from '../records/corrections/entries.ts';
import type { Note } from '../records/notes/notes.ts';
import type { PartReading } from '../records/part-readings/part-readings.ts';
import type { Photograph } from '../records/photographs/photographs.ts';
import type { Reading } from '../records/readings/readings.ts';
import type { SetUp } from '../records/set-ups/set-ups.ts';
import { type BuildRecord, callOf } from '../records/whole-build/build-record.ts';
import { type RecordWanted, readBuildRecord } from '../records/whole-build/load-build.ts';
import type { Working } from '../records/workings/workings.ts';
import type { PageAsked, PageSide } from '../web/page-request.ts';

/** A call with its build as one of the two sides sees it; what every page of a call is made from. */
export interface CallContext {
  readonly principal: Principal;
  readonly side: PageSide;
  /** Where the pages of this side begin: `/calls/{id}` or `/bench`. */
  readonly base: string;
  /** Everything of the build, as it stood at one moment. */
  readonly record: BuildRecord;
  /** Everything that is said about the build. */
  readonly assessment: Assessment;
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
  readonly answers: readonly Answer[];
  readonly notes: readonly Note[];
  readonly photographs: readonly Photograph[];
  /** Computations kept with the build that stand; the record has struck ones too. */
  readonly workings: readonly Working[];
  readonly events: readonly RecordedEvent[];
  /** The line that was kept by the form that led here. */
  readonly kept?: number;
}

/** The call that a page is about: the one in the desk's address, or the one the builder's link is for. */
export function callIdOf(req: PageAsked): string {
  if (req.side === 'desk') return req.params.callId ?? '';
  if (req.principal.kind !== 'builder') throw new Failure('not-found', 'nothing is here');
  return req.principal.callId;
}

export const baseOf = (req: PageAsked): string =>
  req.side === 'desk' ? `/calls/${callIdOf(req)}` : '/bench';

/** Reads the call's build in whole, as all that its page reads: nothing more can be asked in this transaction. */
export async function loadContext(
  tx: Tx,
  req: PageAsked,
  wanted: Pick<RecordWanted, 'catalogue'> = {},
): Promise<CallContext> {
  const callId = callIdOf(req);
  return contextOf(req, callId, await readBuildRecord(tx, req.principal, { callId }, wanted));
}

/** The valve that a set-up was read on, as it is known now: an answer may have told that it was another. */
function onKnownValve(setUp: SetUp, { details }: Assessment): SetUp {
  const known = details.setUps.find((each) => each.setUp.id === setUp.id)?.setUp;
  return known === undefined ? setUp : { ...setUp, cylinder: known.cylinder, valve: known.valve };
}

const keptOf = ({ query }: PageAsked): Pick<CallContext, 'kept'> =>
  /^\d{1,9}$/.test(query.kept ?? '') ? { kept: Number(query.kept) } : {};

/** The call of a record as the side of the request sees it. */
export function contextOf(req: PageAsked, callId: string, record: BuildRecord): CallContext {
  const call = callOf(record, callId);
  const told = assessedFor(record, call);
  const assessment = req.side === 'bench' ? forBench(told) : told;
  return {
    principal: req.principal,
    side: req.side,
    base: baseOf(req),
    record,
    assessment,
    call,
    plan: planOf(call.goal),
    build: record.build,
    revisions: record.revisions,
    arms: record.arms,
    placements: record.placements,
    now: nowOnValves(record.placements),
    partReadings: record.partReadings,
    setUps: record.setUps.map((setUp) => onKnownValve(setUp, assessment)),
    readings: record.readings,
    answers: record.answers,
    notes: record.notes,
    workings: stillStanding(record.workings),
    photographs: record.photographs,
    events: record.events,
    ...keptOf(req),
  };
}

/** `1 intake` */
export const valveName = (of: { readonly cylinder: number; readonly valve: string }): string =>
  `${of.cylinder} ${valveSaid(of.valve)}`;
