import { assess } from '../mechanics/assessment/assess.ts';
import type { Assessment } from '../mechanics/assessment/assessment.ts';
import { notFound } from '../problems/failure.ts';
import type { Call } from '../records/calls/calls.ts';
import { type BuildRecord, callOf } from '../records/whole-build/build-record.ts';
import { evidenceOf } from './evidence.ts';

/** The call that is talked about: the one that is named, else the newest open one, else the newest. */
function callMeant(record: BuildRecord, callId: string | undefined): Call {
  if (callId !== undefined) return callOf(record, callId);
  const { calls } = record;
  const call = calls.findLast(({ closedAt }) => closedAt === undefined) ?? calls.at(-1);
  if (call === undefined) throw notFound('call');
  return call;
}

/** Everything that is said about a build, for one of its calls. */
export const assessed = (record: BuildRecord, callId?: string): Assessment =>
  assess(evidenceOf(record, callMeant(record, callId)));
