import { createHash } from 'node:crypto';
import { KeptFew } from '../../shared/kept-few.ts';
import type { Principal } from '../auth/principal.ts';
import { assess } from '../mechanics/assessment/assess.ts';
import type { Assessment } from '../mechanics/assessment/assessment.ts';
import type { Evidence } from '../mechanics/assessment/evidence.ts';
import { forBench } from '../mechanics/assessment/for-bench.ts';
import { notFound } from '../problems/failure.ts';
import type { Call } from '../records/calls/calls.ts';
import { type BuildRecord, callOf } from '../records/whole-build/build-record.ts';
import { catalogueEvidence } from './evidence/families.ts';
import { evidenceOf } from './evidence.ts';

/** As many as the calls that a few desks have open at a time. */
const MOST_KEPT = 300;
const kept = new KeptFew<Assessment>(MOST_KEPT);

/** The catalogue is hashed once for all builds: it is longer than they are. */
function keyOf({ families, ...evidence }: Evidence, { catalogue = [] }: BuildRecord): string {
  const hash = createHash('sha256').update(JSON.stringify(evidence));
  if (families !== undefined) hash.update(catalogueEvidence(catalogue).digest);
  return hash.digest('base64');
}

/**
 * Everything that is said about a build, for one of its calls. Evidence that is the same to the letter has the same
 * assessment, whoever asks: weighing it again for every page of a call would cost more than the page.
 */
export function assessedFor(record: BuildRecord, call: Call): Assessment {
  const evidence = evidenceOf(record, call);
  return kept.getOr(keyOf(evidence, record), () => assess(evidence));
}

/** The call that is talked about: the one that is named, else the newest open one, else the newest. */
export function callMeant(record: BuildRecord, callId?: string): Call {
  if (callId !== undefined) return callOf(record, callId);
  const { calls } = record;
  const call = calls.findLast(({ closedAt }) => closedAt === undefined) ?? calls.at(-1);
  if (call === undefined) throw notFound('call');
  return call;
}

export const assessed = (record: BuildRecord, callId?: string): Assessment =>
  assessedFor(record, callMeant(record, callId));

/** The same in the words of the side that asks: whoever has a builder’s link stands at the engine. */
export function assessedAs({ kind }: Principal, record: BuildRecord, callId?: string): Assessment {
  const told = assessed(record, callId);
  return kind === 'builder' ? forBench(told) : told;
}
