import { defined } from '../../../shared/defined.ts';
import { GAP_KINDS, type GapKind, SHEET_KINDS } from '../../../shared/schemas/sheet.ts';
import { IN } from '../kit/si.ts';
import type { Verdict } from '../kit/verdict.ts';
import { attempt, type Calculated, type GapCalculation } from './gap-calculation.ts';
import { pistonGap } from './piston-gap.ts';
import { pushrodGap } from './pushrod-gap.ts';
import { coilBind, sealGap } from './spring-gaps.ts';
import type { ConsequenceInput, Gap, GapRow, KnownGap, MeasuredGap } from './types.ts';

/** Gaps with no entry here follow from nothing that is known: they are measured or not known. */
const CALCULATIONS: Partial<Record<GapKind, (input: ConsequenceInput) => GapCalculation>> = {
  'coil-bind': coilBind,
  'retainer-to-seal': sealGap,
  'piston-to-valve': pistonGap,
  'pushrod-to-head': pushrodGap,
};

const EQUAL = 1e-9 * IN;

/** `clear` when all of the gap lies at or above the limit, `short` when all of it lies below, else `close`. */
export function verdictOfGap(gap: Gap, limit: number): Verdict {
  const low = gap.low ?? Number.NEGATIVE_INFINITY;
  const high = gap.high ?? Number.POSITIVE_INFINITY;
  if (low >= limit - EQUAL) return 'clear';
  // A gauge of the limit's own size that does not go leaves less than the limit.
  const below = gap.value === undefined ? high <= limit + EQUAL : high < limit - EQUAL;
  return below ? 'short' : 'close';
}

const asGap = ({ value, halfWidth }: Calculated): KnownGap => ({
  value,
  low: value - halfWidth,
  high: value + halfWidth,
  basis: 'calculated',
});

function asMeasured({ value, low, high }: MeasuredGap): KnownGap {
  return {
    ...defined({ value, low, high }),
    basis: 'measured',
  };
}

/** A gap that was read with the arms before, moved by what the ratio changes. */
function moved(from: Gap, by: Calculated): KnownGap {
  return {
    ...(from.value === undefined ? {} : { value: from.value + by.value }),
    ...(from.low === undefined ? {} : { low: from.low + by.value - by.halfWidth }),
    ...(from.high === undefined ? {} : { high: from.high + by.value + by.halfWidth }),
    basis: 'calculated',
  };
}

interface Found {
  readonly gap?: KnownGap;
  readonly missing: readonly string[];
}

function gapAfter(input: ConsequenceInput, calculation: GapCalculation | undefined, name: GapKind): Found {
  const { before, after } = input;
  const here = input.measured.these[name];
  if (here !== undefined) return { gap: asMeasured(here), missing: [] };
  if (calculation === undefined) return { missing: ['a measured gap'] };
  const earlier = input.measured.before[name];
  const ratios = [
    ...(after === undefined ? ['a measured ratio'] : []),
    ...(earlier !== undefined && before === undefined ? ['ratio the card assumes'] : []),
  ];
  const missing = [
    ...ratios,
    ...(earlier === undefined ? calculation.missing : calculation.missingForChange),
  ];
  if (missing.length > 0 || after === undefined) return { missing: [...new Set(missing)] };
  const found = attempt(() =>
    earlier !== undefined && before !== undefined
      ? moved(earlier, calculation.change(before, after))
      : asGap(calculation.gap(after)),
  );
  return found.ok
    ? { gap: found.value, missing: [] }
    : { missing: [`figures that fit together: ${found.why}`] };
}

function gapBefore(
  input: ConsequenceInput,
  calculation: GapCalculation | undefined,
  name: GapKind,
): KnownGap | undefined {
  const earlier = input.measured.before[name];
  if (earlier !== undefined) return asMeasured(earlier);
  const { before } = input;
  if (calculation === undefined || before === undefined || calculation.missing.length > 0) return undefined;
  const found = attempt(() => asGap(calculation.gap(before)));
  return found.ok ? found.value : undefined;
}

/** Why a gap that was read may read too large: a hydraulic lifter sinks under it. */
function sinkingReasons(
  reading: Pick<MeasuredGap, 'lifter'> | undefined,
  engine: ConsequenceInput['lifter'],
): string[] {
  if (reading?.lifter === 'hydraulic')
    return [
      'it was read on a hydraulic lifter, which sinks: it reads too large. Read it on a solid or locked one',
    ];
  if (reading?.lifter === 'not-said' && engine !== 'solid')
    return ['which lifter it was read on was not said; a hydraulic one sinks and reads too large'];
  return [];
}

/** What keeps a gap from being called clear, whatever its size. */
function heldBack(input: ConsequenceInput, name: GapKind, gap: KnownGap): string[] {
  const reading = input.measured.these[name] ?? input.measured.before[name];
  return [
    ...sinkingReasons(reading, input.lifter),
    ...(gap.basis === 'calculated' && input.after?.spring === 'running'
      ? [
          'the ratio is a running-spring ratio: it takes credit for what the train bends. Take a light-spring ratio',
        ]
      : []),
  ];
}

function reasons(
  gap: KnownGap,
  verdict: Verdict,
  held: readonly string[],
  from: MeasuredGap | undefined,
): string[] {
  return [
    ...(gap.basis === 'calculated' && from !== undefined
      ? [`calculated from ${from.readAs}, read with the arms before, and what the ratio changes`]
      : []),
    ...held,
    ...(verdict === 'close' && gap.basis === 'calculated' && held.length === 0
      ? ['it can’t be told from the limit within its uncertainty: measure it']
      : []),
    ...(verdict === 'close' && gap.basis === 'measured' && held.length === 0
      ? ['the reading does not tell it from the limit: gauge it closer']
      : []),
    ...(verdict === 'short' ? ['stop, and have a qualified shop look'] : []),
  ];
}

/** The gap after alone: for a caller that asks it at several ratios. */
export const gapAfterOf = (input: ConsequenceInput, name: GapKind): KnownGap | undefined =>
  gapAfter(input, CALCULATIONS[name]?.(input), name).gap;

/** One gap before and after the change, against its limit. */
export function gapRow(input: ConsequenceInput, name: GapKind): GapRow {
  const calculation = CALCULATIONS[name]?.(input);
  const limit = input.limits[name];
  const before = gapBefore(input, calculation, name);
  const { gap: after, missing } = gapAfter(input, calculation, name);
  const row = {
    name,
    title: SHEET_KINDS[name],
    ...defined({ before }),
    limit,
    missing,
    measure: calculation === undefined && after === undefined,
  };
  if (after === undefined) return { ...row, because: [] };
  const held = heldBack(input, name, after);
  const bare = verdictOfGap(after, limit.value);
  const verdict = bare === 'clear' && held.length > 0 ? 'close' : bare;
  const from = after.basis === 'calculated' ? input.measured.before[name] : undefined;
  return { ...row, after, verdict, because: reasons(after, verdict, held, from) };
}

export const gapRows = (input: ConsequenceInput): GapRow[] => GAP_KINDS.map((name) => gapRow(input, name));
