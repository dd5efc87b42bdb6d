import { defined } from '../../../shared/defined.ts';
import { type GapKind, SHEET_KINDS } from '../../../shared/schemas/sheet.ts';
import { EQUAL } from '../kit/nearest.ts';
import type { Verdict } from '../kit/verdict.ts';
import { attempt, type Calculated, type GapCalculation } from './gap-calculation.ts';
import { pistonGap } from './piston-gap.ts';
import { pushrodGap } from './pushrod-gap.ts';
import { coilBind, sealGap } from './spring-gaps.ts';
import type { ConsequenceInput, Gap, GapRow, KnownGap } from './types.ts';

/** Gaps with no entry here follow from nothing that is known: they are measured or not known. */
const CALCULATIONS: Partial<Record<GapKind, (input: ConsequenceInput) => GapCalculation>> = {
  'coil-bind': coilBind,
  'retainer-to-seal': sealGap,
  'piston-to-valve': pistonGap,
  'pushrod-to-head': pushrodGap,
};

/** `clear` when all of the gap lies at or above the limit, `short` when all of it lies below, else `close`. */
export function verdictOfGap(gap: Gap, limit: number): Verdict {
  const low = gap.low ?? Number.NEGATIVE_INFINITY;
  const high = gap.high ?? Number.POSITIVE_INFINITY;
  if (low >= limit - EQUAL) return 'clear';
  // A gauge of the limit's own size that does not go leaves less than the limit.
  const below = gap.value === undefined ? high <= limit + EQUAL : high < limit - EQUAL;
  return below ? 'short' : 'close';
}

const asGap = ({ value, halfWidth, asRead }: Calculated): KnownGap => ({
  value,
  low: value - halfWidth,
  high: value + halfWidth,
  basis: asRead === true ? 'measured' : 'calculated',
});

const asMeasured = ({ value, low, high }: Gap): KnownGap => ({
  ...defined({ value, low, high }),
  basis: 'measured',
});

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
  if (calculation === undefined) return { missing: ['a measured gap'] };
  const earlier = input.readBefore[name];
  const ratios = [
    ...(after === undefined ? ['a ratio to calculate with'] : []),
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
  const earlier = input.readBefore[name];
  if (earlier !== undefined) return asMeasured(earlier);
  const { before } = input;
  if (calculation === undefined || before === undefined || calculation.missing.length > 0) return undefined;
  const found = attempt(() => asGap(calculation.gap(before)));
  return found.ok ? found.value : undefined;
}

/** The gap after alone: for a caller that asks it at several ratios. */
export const gapAfterOf = (input: ConsequenceInput, name: GapKind): KnownGap | undefined =>
  gapAfter(input, CALCULATIONS[name]?.(input), name).gap;

/** The gap before, which hangs on nothing of the ratio after. */
export const gapBeforeOf = (input: ConsequenceInput, name: GapKind): KnownGap | undefined =>
  gapBefore(input, CALCULATIONS[name]?.(input), name);

/** One gap after the change, beside its limit; no word is given here. */
export function gapRow(input: ConsequenceInput, name: GapKind): GapRow {
  const calculation = CALCULATIONS[name]?.(input);
  const { gap: after, missing } = gapAfter(input, calculation, name);
  // Of one that was read nobody said which of two it was.
  const of = input.readBefore[name] === undefined && after !== undefined ? calculation?.of : undefined;
  return {
    name,
    title: SHEET_KINDS[name],
    ...defined({ of, after }),
    limit: input.limits[name],
    missing,
    measure: calculation === undefined && after === undefined,
  };
}
