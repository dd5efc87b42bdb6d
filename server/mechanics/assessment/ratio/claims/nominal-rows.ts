import { defined } from '../../../../../shared/defined.ts';
import { sameRatio } from '../../common/same-ratio.ts';
import type { Evidence, SetUpEvidence } from '../../evidence.ts';
import type { NominalRow, NominalsDetail, RatioResult } from '../read/detail.ts';
import type { LobeInUse } from '../read/lobe.ts';
import { claimsOn } from './marks.ts';

type Named = NonNullable<NominalRow['named']>;

/** The arm, and what it was sold as then, where another set is on now. */
type Held = Pick<SetUpEvidence, 'armId' | 'soldAsThen'>;

/** What the call has named a nominal as: on the arm first. */
function namedAs(evidence: Evidence, { armId, soldAsThen }: Held): (nominal: number) => Named | undefined {
  const { planned } = evidence.rockers;
  const named = [
    ...claimsOn(evidence, armId, soldAsThen).map(({ to, ratio }) => ({ to, ratio })),
    ...(planned === undefined ? [] : [{ to: 'planned' as const, ratio: planned }]),
  ];
  return (nominal) => named.find(({ ratio }) => sameRatio(ratio, nominal))?.to;
}

/**
 * Nominals beside the interval of a set-up: those that it holds, the nearest below and above it, and what the call has
 * named. The others are counted, since a list of all of them says no more.
 */
export function nominalRows(
  evidence: Evidence,
  held: Held,
  nominals: readonly number[],
  lobe: LobeInUse,
  result: RatioResult | undefined,
): NominalsDetail | undefined {
  const lobeLift = lobe.value;
  if (result === undefined || lobeLift === undefined) return undefined;
  const [low, high] = result.interval95;
  const nameOf = namedAs(evidence, held);
  const below = nominals.findLast((each) => each < low);
  const above = nominals.find((each) => each > high);
  const inside = (each: number) => each >= low && each <= high;
  const shown = nominals.filter(
    (each) => inside(each) || each === below || each === above || nameOf(each) !== undefined,
  );
  return {
    rows: shown.map((ratio) => ({
      ratio,
      ...defined({ named: nameOf(ratio) }),
      inside: inside(ratio),
      needsValveLift: ratio * lobeLift,
    })),
    others: nominals.length - shown.length,
  };
}
