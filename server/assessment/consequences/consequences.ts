import { formatQuantity } from '../../../shared/quantities/format.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import { type BuildSpec, buildSpec } from '../../../shared/schemas/build-spec.ts';
import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { changeBuild } from '../../events/change-build.ts';
import type { DataOf } from '../../events/define-events.ts';
import { consequences } from '../../mechanics/consequences/consequences.ts';
import type { ConsequenceInput, Consequences, KnownGap } from '../../mechanics/consequences/types.ts';
import { Failure } from '../../problems/failure.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import type { Limit } from '../../records/limits/known-limits.ts';
import type { SheetReading } from '../../records/sheet/sheet-table.ts';
import type { BuildRecord } from '../../records/whole-build/build-record.ts';
import { loadBuildRecord } from '../../records/whole-build/load-build.ts';
import { type SetUpRatio, setUpRatio } from '../ratio/ratio.ts';
import { CONSEQUENCE_EVENTS } from './events.ts';
import { consequenceInput, limitsFor } from './figures.ts';
import { measuredOn } from './measured-gaps.ts';
import { sayPath, specInForce } from './spec-in-force.ts';

/** What the ratio of one set-up does in its engine, with everything that rests on. */
export interface SetUpConsequences extends Consequences {
  readonly found: SetUpRatio;
  readonly input: ConsequenceInput;
  readonly spec: BuildSpec;
  readonly revision: { readonly setUp: number; readonly now: number };
  readonly limits: readonly Limit[];
  readonly measured: readonly SheetReading[];
  readonly notes: readonly string[];
}

function notesOf(
  force: { filled: readonly string[]; changed: readonly string[] },
  revision: { setUp: number; now: number },
  otherArm: readonly SheetReading[],
): string[] {
  return [
    ...(force.filled.length === 0
      ? []
      : [`Entered after revision ${revision.setUp} and used: ${force.filled.map(sayPath).join('; ')}.`]),
    ...(force.changed.length === 0
      ? []
      : [
          `Changed since revision ${revision.setUp}: ${force.changed.map(sayPath).join('; ')}. The set-up’s own revision counts here; start a set-up on the build as it is now to calculate with the new figures.`,
        ]),
    ...otherArm.map(
      (each) =>
        `${each.reading.readAs} (${each.kind.replaceAll('-', ' ')}) was read with another arm on this valve and is not used.`,
    ),
  ];
}

/** What the ratio of a set-up does: the service behind the JSON route and the page. */
export function consequencesOf(record: BuildRecord, setUpId: string): SetUpConsequences {
  const { build } = record;
  const found = setUpRatio(record, setUpId);
  const force = specInForce(found.spec, build.spec);
  const spec = buildSpec.parse(force.spec);
  const measured = measuredOn(found.setUp, stillStanding(record.sheetReadings));
  const limits = limitsFor(record.limits, found.setUp.valve);
  const input = consequenceInput(found, spec, measured, limits.figures);
  const revision = { setUp: found.setUp.revision, now: build.revision };
  return {
    ...consequences(input),
    found,
    input,
    spec,
    revision,
    limits: limits.used,
    measured: measured.used,
    notes: notesOf(force, revision, measured.otherArm),
  };
}

/** A gap as it is read out: `.041 in ± .006`, or its bounds; no digit is finer than a thousandth. */
export function sayGap(gap: KnownGap): string {
  const say = (si: number) => formatQuantity(fromSi(si, 'in'), { places: 3 });
  if (gap.value !== undefined) {
    const half = Math.max((gap.high ?? gap.value) - gap.value, gap.value - (gap.low ?? gap.value));
    return `${say(gap.value).slice(0, -3)} ± ${say(half)}`;
  }
  if (gap.low !== undefined && gap.high !== undefined)
    return `${say(gap.low).slice(0, -3)} to ${say(gap.high)}`;
  return gap.low === undefined ? `less than ${say(gap.high ?? 0)}` : `more than ${say(gap.low)}`;
}

/** The figures as they are put on the record, with the limits they were judged by. */
function recordOf(found: SetUpConsequences): DataOf<(typeof CONSEQUENCE_EVENTS)['consequences-kept']> {
  const { after } = found.input;
  return {
    setUpId: found.found.setUp.id,
    cylinder: found.found.setUp.cylinder,
    valve: found.found.setUp.valve,
    revision: found.revision,
    ...(found.input.before === undefined ? {} : { ratioBefore: found.input.before.value }),
    ...(after === undefined
      ? {}
      : { ratioAfter: after.value, ratioHalfWidth: after.halfWidth, spring: after.spring }),
    stop: found.stop,
    gaps: found.gaps.map((gap) => ({
      name: gap.name,
      ...(gap.before === undefined ? {} : { before: sayGap(gap.before) }),
      ...(gap.after === undefined ? {} : { after: sayGap(gap.after), basis: gap.after.basis }),
      ...(gap.verdict === undefined ? { lacks: [...gap.missing] } : { verdict: gap.verdict }),
    })),
    limits: found.limits.map((limit) => ({
      name: limit.name,
      value: limit.value.readAs,
      source: limit.source,
      revision: limit.revision,
    })),
  };
}

/** Puts the figures on the record of the build, with the limits as they are now. */
export async function keepConsequences(tx: Tx, principal: Principal, buildId: string, setUpId: string) {
  return changeBuild(tx, principal, buildId, async ({ emit }) => {
    // Read while the build is locked: nothing of it can change before the figures are on the record.
    const found = consequencesOf(await loadBuildRecord(tx, principal, { buildId }), setUpId);
    if (found.input.after === undefined)
      throw new Failure('conflict', 'this set-up has no ratio yet, so there is nothing to keep');
    const seq = await emit(CONSEQUENCE_EVENTS['consequences-kept'], recordOf(found));
    return { seq, found };
  });
}
