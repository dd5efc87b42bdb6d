import { defined } from '../../../../shared/defined.ts';
import { byText } from '../../kit/by-text.ts';
import { listed, nominalSaid, placeOf } from '../common/said.ts';
import { sameRatio } from '../common/same-ratio.ts';
import type { ValveRatio } from '../common/valve-ratio.ts';
import type { Evidence, GapName, SheetEvidence, Side, ValvePlace } from '../evidence.ts';
import type { JudgedGap } from '../gaps/gap.ts';
import { ratioSaidThen } from './arms-asked.ts';
import { ratioThen } from './arms-then.ts';
import type { ChangeGap, ChangeRatio } from './detail.ts';
import { gapsBefore } from './known.ts';
import { cardsRatio, notMeasured, onThen, soldBefore, soldRatio } from './stated-ratios.ts';
import { worstFirst } from './worst-first.ts';

/** Gaps of one valve that were read with arms of one ratio. */
export interface ReadAlike {
  /** That ratio; the card’s, where nobody said what they were. */
  readonly ratio?: ChangeRatio;
  /** No entry says it: it is asked. */
  readonly asked: boolean;
  /** And it was not answered. */
  readonly unsaid: boolean;
  /** The worst reading of each gap. */
  readonly before: readonly JudgedGap[];
}

interface OfValve {
  readonly side: Side;
  readonly place: ValvePlace | undefined;
  readonly plan: number | undefined;
  readonly ratios: readonly ValveRatio[];
  readonly all: readonly ValveRatio[];
}

const isSame = (one: ChangeRatio | undefined, other: ChangeRatio | undefined): boolean =>
  one === other ||
  (one !== undefined &&
    other !== undefined &&
    (one.from === 'measured') === (other.from === 'measured') &&
    sameRatio(one.value, other.value));

/** Each ratio once, the smallest first, whatever was entered first. */
const eachOnce = (ratios: readonly ChangeRatio[]): ChangeRatio[] =>
  ratios
    .toSorted((a, b) => a.value - b.value || byText(a.said, b.said))
    .filter((each, index, all) => all.findIndex((other) => isSame(other, each)) === index);

/**
 * The gaps of a valve that were read with other arms, by the ratio of those: each is worked out from its own. Arms that
 * were before, and nobody said of what ratio, are those that came off since where those are of one; else it is asked, and
 * until then they are of the card’s.
 */
export function readAlike(evidence: Evidence, of: OfValve): readonly ReadAlike[] {
  const { place, side } = of;
  const here = evidence.sheet.filter(
    (each) =>
      each.standing && each.arms === 'before' && place !== undefined && placeOf(each) === placeOf(place),
  );
  if (here.length === 0) return [];
  const told = new Map(here.map((each) => [each.id, ratioThen(each, evidence, of)]));
  const [only, ...others] = eachOnce(
    here.flatMap((each) => (each.otherArms === 'off-since' ? (told.get(each.id) ?? []) : [])),
  );
  const alone = others.length === 0 ? only : undefined;
  const said = ratioSaidThen(evidence, side);
  const answered = said === undefined ? undefined : notMeasured(soldBefore(said));
  const card = onThen(cardsRatio(evidence, side));
  // While others are planned, and nobody said what is on, that is taken to be of the card’s ratio.
  const hangsOnIt = of.plan === undefined || soldRatio(evidence) !== undefined;
  const known = (each: SheetEvidence): ChangeRatio | undefined => told.get(each.id) ?? alone;
  const ratioOf = (each: SheetEvidence): ChangeRatio | undefined => known(each) ?? answered ?? card;
  const ratios = eachOnce(here.flatMap((each) => ratioOf(each) ?? []));
  return [...ratios, ...(here.every(ratioOf) ? [] : [undefined])].map((ratio) => {
    const isOfIt = (each: SheetEvidence): boolean => isSame(ratioOf(each), ratio);
    const isAsked = hangsOnIt && here.filter(isOfIt).some((each) => known(each) === undefined);
    return {
      ...defined({ ratio }),
      asked: isAsked,
      unsaid: isAsked && answered === undefined,
      before: gapsBefore(evidence, place, isOfIt),
    };
  });
}

/** Of gaps that were read with arms of other ratios than the one before: what each is worked out from. */
export function waysSaid(ways: readonly ReadAlike[], before: ChangeRatio | undefined): string[] {
  const own = ways.flatMap(({ ratio }) => ratio ?? []);
  if (own.every((each) => isSame(each, before))) return [];
  const names = [...new Set(own.map(({ value }) => nominalSaid(value)))];
  return [`a gap that was read with arms of ${listed(names)} is worked out from the ratio of its own arms`];
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
