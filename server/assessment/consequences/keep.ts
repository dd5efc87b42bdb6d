import { defined } from '../../../shared/defined.ts';
import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { changeBuild } from '../../events/change-build.ts';
import type { DataOf } from '../../events/define-events.ts';
import type { Assessment } from '../../mechanics/assessment/assessment.ts';
import type { ChangeDetail } from '../../mechanics/assessment/change/detail.ts';
import { gapSaid } from '../../mechanics/assessment/common/gap-said.ts';
import { lacksSaid } from '../../mechanics/assessment/common/lack.ts';
import { Failure } from '../../problems/failure.ts';
import { CONSEQUENCE_EVENTS } from '../../records/consequences/events.ts';
import { type BuildRecord, setUpOf } from '../../records/whole-build/build-record.ts';
import { loadBuildRecord } from '../../records/whole-build/load-build.ts';
import { assessed } from '../assessed.ts';
import { changeNamed, changeOn, limitsUsed, setUpRead, sideOf } from './of-valve.ts';

/** The valve of a set-up, or what a change is named by: `1-intake`, `exhaust:planned-1.7`. */
type KeptOf = { readonly setUpId: string } | { readonly key: string; readonly callId?: string };

type Kept = DataOf<(typeof CONSEQUENCE_EVENTS)['consequences-kept']>;

const gapsKept = ({ gaps }: ChangeDetail): Kept['gaps'] =>
  gaps.map(({ name, before, after, word, lacks }) => ({
    name,
    ...defined({
      before: before && gapSaid(before),
      after: after && gapSaid(after),
      basis: after?.basis,
      verdict: word,
      lacks: word === undefined ? lacksSaid(lacks) : undefined,
    }),
  }));

/** What the assessment says of a valve now, as it is put on the record with the limits it was judged by. */
function keptOf(record: BuildRecord, detail: ChangeDetail, setUpId: string | undefined): Kept {
  const { about, before, after } = detail;
  const setUp = record.setUps.find(({ id }) => id === setUpId);
  return {
    valve: sideOf(detail) ?? 'intake',
    revision: { now: record.build.revision, ...defined({ setUp: setUp?.revision }) },
    ...defined({
      setUpId,
      cylinder: 'cylinder' in about ? about.cylinder : undefined,
      ratioBefore: before?.value,
      ratioAfter: after?.value,
      ratioHalfWidth: after && Math.max(after.high - after.value, after.value - after.low),
      spring: after?.spring,
    }),
    stop: detail.gaps.some(({ word }) => word === 'short'),
    gaps: gapsKept(detail),
    limits: limitsUsed(record, detail).map(({ name, value, source, revision }) => ({
      name,
      value: value.readAs,
      source,
      revision,
    })),
  };
}

function meant(record: BuildRecord, of: KeptOf): { assessment: Assessment; detail?: ChangeDetail } {
  if ('key' in of) {
    const assessment = assessed(record, of.callId);
    return { assessment, detail: changeNamed(assessment, of.key) };
  }
  const assessment = assessed(record);
  return { assessment, ...defined({ detail: changeOn(assessment, setUpOf(record, of.setUpId)) }) };
}

/** Puts what a ratio does on one valve on the record of the build. */
export function keepConsequences(tx: Tx, principal: Principal, buildId: string, of: KeptOf) {
  return changeBuild(tx, principal, buildId, async ({ emit }) => {
    // Read while the build is locked: nothing of it can change before the figures are on the record.
    const record = await loadBuildRecord(tx, principal, { buildId }, { access: 'write' });
    const { assessment, detail } = meant(record, of);
    if (detail?.after === undefined)
      throw new Failure('conflict', 'no ratio is known of this valve yet, so there is nothing to keep');
    const setUpId = 'setUpId' in of ? of.setUpId : setUpRead(record, detail)?.id;
    const seq = await emit(CONSEQUENCE_EVENTS['consequences-kept'], keptOf(record, detail, setUpId));
    return { seq, record, assessment };
  });
}
