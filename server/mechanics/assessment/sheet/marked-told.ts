import { sideOfValve } from '../../../../shared/schemas/words.ts';
import type { Judgement } from '../assessment.ts';
import { lowOrHigh, nominalSaid, placeOf, valveSubject } from '../common/said.ts';
import { sameRatio } from '../common/same-ratio.ts';
import type { ValvePlace } from '../evidence.ts';
import type { SheetOddDetail, SheetSideDetail } from './detail.ts';
import { plural } from './side-words.ts';

type Marked = SheetOddDetail & Required<Pick<SheetOddDetail, 'asMarked'>>;

/** Whether an odd valve reads as the stamp of its own arm has it. */
export const isMarked = (odd: SheetOddDetail): odd is Marked => odd.asMarked !== undefined;

/** Each has the mark that the others of the other have: of several the one on the same cylinder. */
function crossedWith(odd: Marked, all: readonly Marked[]): Marked | undefined {
  const fit = all.filter(
    (each) =>
      each !== odd &&
      sameRatio(each.asMarked.mark, odd.asMarked.others) &&
      sameRatio(each.asMarked.others, odd.asMarked.mark),
  );
  return fit.find(({ cylinder }) => cylinder === odd.cylinder) ?? (fit.length === 1 ? fit[0] : undefined);
}

function said(odd: Marked, all: readonly Marked[]): string {
  const { asMarked, valveOff = 0, armName = 'its arm' } = odd;
  const other = crossedWith(odd, all);
  const side = sideOfValve(odd.valve);
  const reads = `${placeOf(odd)} reads ${lowOrHigh(valveOff)}, as the ${nominalSaid(asMarked.mark)} stamped on ${armName} has it: the other ${plural(side)} are held to be ${nominalSaid(asMarked.others)}.`;
  return other === undefined
    ? `${reads} It is another arm by its mark: look whether it belongs there.`
    : `${reads} By their marks its arm and that of ${placeOf(other)} sit crossed: look whether they changed places.`;
}

/** Valves that are unlike the others because their arms are marked so: told as that, and nothing is swapped for it. */
export const markedTold = (
  sides: readonly SheetSideDetail[],
  restsOn: (place: ValvePlace) => readonly string[],
): Judgement[] =>
  sides.flatMap(({ spring, odd }) => {
    const all = sides.filter((side) => side.spring === spring).flatMap((side) => side.odd.filter(isMarked));
    return odd.filter(isMarked).map((each) => ({
      id: each.judgementId,
      about: valveSubject(each),
      against: { to: 'siblings' as const },
      sentence: said(each, all),
      lacks: [],
      restsOn: restsOn(each),
    }));
  });
