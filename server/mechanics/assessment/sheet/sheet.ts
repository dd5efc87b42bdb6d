import { sideOfValve } from '../../../../shared/schemas/words.ts';
import type { Tolerances } from '../../questions/tolerances.ts';
import { cylinderOrder } from '../../valve-sheet/orders.ts';
import type { Headline, Judgement, NotToRun } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import type { PartSaid } from '../common/part-said.ts';
import { placeOf } from '../common/said.ts';
import { valveNames } from '../common/valve-names.ts';
import type { Evidence } from '../evidence.ts';
import type { SetUpKnown } from '../ratio/known.ts';
import { lobesOfSetUps } from '../ratio/lobes-read.ts';
import { gapCells } from './cells.ts';
import { compare } from './compare.ts';
import type { SheetDetail } from './detail.ts';
import { doubtedLifts } from './doubted.ts';
import { shortGap } from './gap-stops.ts';
import { groupsTold } from './group-off.ts';
import { heldOf } from './held.ts';
import { lashAskedOf } from './lash-of-one.ts';
import { lobesUnderCard, sidesOffCard } from './lobe-under-card.ts';
import { wornLobes, wornNotToRun } from './lobe-worn.ts';
import { isMarked, markedTold } from './marked-told.ts';
import { oddBefore } from './odd-before.ts';
import { inDoubtJudgements, oddJudgements } from './odd-judgement.ts';
import { withoutOneSided } from './one-sided.ts';
import { rowQuantities } from './quantities.ts';
import { raisedByRows } from './raised.ts';
import { ratioQuantities, ratiosOf } from './ratios.ts';
import { isOf, rowDetail } from './row-detail.ts';
import { rowsOf, type SheetRow } from './rows.ts';
import { saidOfSheet } from './said-of-sheet.ts';
import { coarseTold } from './side-coarse.ts';
import { unlikeSprings } from './side-springs.ts';
import { sidesTold } from './side-told.ts';
import { swapJudgement } from './swaps.ts';
import { besidesWorn, wornTold } from './worn-told.ts';

/** One line for each thing on the sheet that needs somebody: odd valves and swaps; gaps are told by the change. */
const headlinesOf = (judgements: readonly Judgement[]): Headline[] =>
  judgements.map(({ id, about, sentence }) => ({
    id: `headline:${id}`,
    about,
    step: 'sheet',
    sentence,
    judgementId: id,
  }));

/** The per-valve sheet: figures of each row, what the rows are asked, which valves are odd, what swaps decide, gaps. */
export function sheetPart(
  entered: Evidence,
  known: readonly SetUpKnown[] = [],
  tolerances?: Tolerances,
): PartSaid<SheetDetail> & { readonly notToRun: readonly NotToRun[] } {
  const { evidence, questions: ofReading } = saidOfSheet(entered);
  const rows = rowsOf(evidence);
  const raised = raisedByRows(evidence, rows, known, tolerances);
  const doubtsOf = (row: SheetRow) => raised.filter((each) => inDoubt(each) && isOf(each, row));
  const doubtful = new Set(rows.filter((row) => doubtsOf(row).length > 0).map(placeOf));
  const doubted = new Set(rows.flatMap((row) => doubtedLifts(row, doubtsOf(row))));
  const lashAsked = lashAskedOf(raised);
  const { sides: all, swaps, ofPositions } = compare(evidence, rows, { doubtful, doubted, lashAsked }, known);
  const ratios = ratiosOf(evidence, rows);
  const worn = wornLobes(evidence, all, rows, lobesOfSetUps(known));
  const sides = besidesWorn(all, worn);
  const certain = rows.filter((row) => !doubtful.has(placeOf(row)));
  const before = oddBefore(evidence, rows, swaps, doubted);
  const waiting = [
    ...rows.filter((row) => doubtful.has(placeOf(row))).map(({ valve }) => sideOfValve(valve)),
    // An odd valve whose arm was moved stays the odd one till it is read again.
    ...swaps
      .filter(({ because, readOdd }) => because === 'not-read' && readOdd.length > 0)
      .map(({ side }) => side),
    ...before.map(({ place }) => sideOfValve(place.valve)),
  ];
  // What is another arm by its mark is no part of what the others come to.
  const marked = new Set(sides.flatMap(({ odd }) => odd.filter(isMarked)).map(placeOf));
  const ofSet = certain.filter((row) => !marked.has(placeOf(row)));
  const told = sidesTold(evidence, ofSet, { sides: all, ratios, waiting }, raised);
  const grouped = groupsTold(evidence, rows, sides);
  const offCard = sidesOffCard(told.judgements);
  const underCard = lobesUnderCard(evidence, rows, known, {
    told: new Set([
      ...doubtful,
      ...worn.map(({ place }) => placeOf(place)),
      ...rows.filter(({ valve }) => offCard.has(sideOfValve(valve))).map(placeOf),
    ]),
    ratios,
  });
  const gaps = new Map(rows.map((row) => [placeOf(row), gapCells(evidence, row)]));
  const short = [...gaps.values()]
    .flat()
    .flatMap(({ each }) => each.flatMap((one) => shortGap(one, evidence)));
  const ofGaps = [...gaps.values()]
    .flat()
    .flatMap(({ each }) =>
      each.flatMap(({ lash, asksLash, cam }) => [
        ...(cam === undefined ? [] : [cam.question]),
        ...(asksLash && lash !== undefined ? [lash.question] : []),
      ]),
    );
  const questions = [
    ...withoutOneSided(raised, told.questions),
    ...ofReading,
    ...told.questions,
    ...grouped.questions,
    ...ofPositions,
    ...[...underCard, ...worn, ...short].map(({ question }) => question),
    ...ofGaps,
  ];
  const details = rows.map((row) => rowDetail(evidence, row, gaps.get(placeOf(row)) ?? [], questions));
  const restsOn = (place: string) =>
    details
      .filter((row) => placeOf(row) === place)
      .flatMap(({ cells }) =>
        cells.filter(({ kind }) => kind.endsWith('lift')).flatMap(({ entryIds }) => entryIds),
      )
      .sort();
  const allGaps = [...gaps.values()].flat();
  const compared = [
    // What is asked first is told first.
    ...inDoubtJudgements(rows, doubtsOf),
    ...underCard.map(({ judgement }) => judgement),
    ...grouped.judgements,
    ...wornTold(worn),
    ...markedTold(sides, (place) => restsOn(placeOf(place))),
    ...sides.flatMap((side) => oddJudgements(side, (place) => restsOn(placeOf(place)))),
    ...swaps.map(swapJudgement),
    ...before.map(({ judgement }) => judgement),
    ...unlikeSprings(rows),
    ...told.judgements,
    ...coarseTold(evidence, rows),
  ];
  const ordinary = new Set(swaps.flatMap((swap) => (swap.ordinary === true ? swap.judgementId : [])));
  const cylinders = Math.max(evidence.engine.cylinders ?? 0, ...rows.map(({ cylinder }) => cylinder));
  return {
    quantities: [
      ...rowQuantities(details),
      ...ratioQuantities(ratios, rows, (row, spring) => [
        ...doubtsOf(row).map(({ ask }) => ask),
        ...heldOf(grouped.held, row, spring),
      ]),
    ],
    judgements: [...compared, ...allGaps.map(({ judgement }) => judgement)],
    questions,
    stop: [...worn, ...short].map(({ stop }) => stop),
    notToRun: [...underCard.flatMap(({ notToRun }) => notToRun), ...wornNotToRun(evidence, worn)],
    headlines: headlinesOf(compared.filter(({ id }) => !ordinary.has(id))),
    detail: {
      names: valveNames(evidence),
      orders: {
        firing: cylinderOrder(evidence.engine.firingOrder, cylinders),
        bank: cylinderOrder(evidence.engine.bankOrder, cylinders),
      },
      rows: details,
      ratios,
      sides,
      swaps,
      held: grouped.held,
    },
  };
}
