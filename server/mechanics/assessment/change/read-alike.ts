import { defined } from '../../../../shared/defined.ts';
import { placeOf } from '../common/said.ts';
import type { Evidence, GapName, SheetEvidence, ValvePlace } from '../evidence.ts';
import type { JudgedGap } from '../sheet/gap.ts';
import type { ChangeGap } from './detail.ts';
import { gapsBefore } from './known.ts';
import { worstFirst } from './worst-first.ts';

/** Gaps of one valve that were read with arms which were sold alike. */
export interface ReadAlike {
  /** What they were sold as, where they are off since and are sold as another ratio now. */
  readonly soldAs?: number;
  /** The worst reading of each gap. */
  readonly before: readonly JudgedGap[];
}

/** What the arms of a gap were sold as, of one that was read with arms which are off since. */
const soldOf = ({ otherArms, soldAsThen }: SheetEvidence): number | undefined =>
  otherArms === 'off-since' ? soldAsThen : undefined;

/**
 * The gaps of a valve that were read with other arms, by what those were sold as: each is worked out from its own. Arms
 * that were before, and nobody said of what ratio, are those that came off since where those are of one.
 */
export function readAlike(evidence: Evidence, place: ValvePlace | undefined): readonly ReadAlike[] {
  const here = evidence.sheet.filter(
    (each) =>
      each.standing && each.arms === 'before' && place !== undefined && placeOf(each) === placeOf(place),
  );
  const known = [...new Set(here.flatMap((each) => soldOf(each) ?? []))].toSorted((a, b) => a - b);
  const [only] = known;
  const soldAs = (each: SheetEvidence): number | undefined =>
    soldOf(each) ?? (each.otherArms === undefined && known.length === 1 ? only : undefined);
  const all = [...new Set([...known, ...here.map(soldAs)])];
  if (all.length === 0) return [{ before: [] }];
  return all.map((sold) => ({
    ...defined({ soldAs: sold }),
    before: gapsBefore(evidence, place, (each) => soldAs(each) === sold),
  }));
}

const readsOf = ({ before }: ReadAlike): ReadonlySet<GapName> =>
  new Set(before.map(({ entry }) => entry.kind));

/** Each gap as it is worst: worked out from every reading with the arms of that reading, else as it is without one. */
export function worstOfAll(
  without: readonly ChangeGap[],
  ways: readonly { readonly way: ReadAlike; readonly gaps: readonly ChangeGap[] }[],
): ChangeGap[] {
  const own = ways.flatMap(({ way, gaps }) => {
    const read = readsOf(way);
    return gaps.filter(({ name }) => read.has(name));
  });
  return worstFirst(without.map((gap) => worstFirst(own.filter(({ name }) => name === gap.name))[0] ?? gap));
}
