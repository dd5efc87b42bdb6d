import type { Tolerances } from '../../questions/tolerances.ts';
import { cylinderOrder } from '../../valve-sheet/orders.ts';
import type { Headline, Judgement, NotToRun } from '../assessment.ts';
import type { PartSaid } from '../common/part-said.ts';
import { placeOf } from '../common/said.ts';
import { valveNames } from '../common/valve-names.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';
import type { SetUpKnown } from '../ratio/compared/known.ts';
import { raisedByRows } from './asked/raised.ts';
import { sheetAndSetUps } from './asked/sheet-or-set-up.ts';
import { lobesUnlikeTold } from './lobes/lobe-unlike.ts';
import { wornNotToRun } from './lobes/lobe-worn.ts';
import { wornTold } from './lobes/worn-told.ts';
import { markedTold } from './odd/marked-told.ts';
import { noMiddleTold } from './odd/no-middle.ts';
import { inDoubtJudgements, oddJudgements } from './odd/odd-judgement.ts';
import { valvesCompared } from './odd/valves-compared.ts';
import type { SheetDetail, SheetRowDetail } from './rows/detail.ts';
import { gapsOfRows } from './rows/gaps-of-rows.ts';
import { withoutGuessesAt, withoutOneSided } from './rows/one-sided.ts';
import { rowQuantities } from './rows/quantities.ts';
import { ratioQuantities, ratiosTold } from './rows/ratios.ts';
import { rowDetail } from './rows/row-detail.ts';
import { rowsOf, type SheetRow } from './rows/rows.ts';
import { saidOfSheet } from './rows/said-of-sheet.ts';
import { coarseTold } from './sides/side-coarse.ts';
import { heldOfSides } from './sides/side-held.ts';
import { unlikeSprings } from './sides/side-springs.ts';
import { swapJudgement } from './swaps/swaps.ts';

/** One line for each thing on the sheet that needs somebody: odd valves and swaps; gaps are told by the change. */
const headlinesOf = (judgements: readonly Judgement[]): Headline[] =>
  judgements.map(({ id, about, sentence }) => ({
    id: `headline:${id}`,
    about,
    step: 'sheet',
    sentence,
    judgementId: id,
  }));

type Compared = ReturnType<typeof valvesCompared>;

/** What is said of valves set against each other; what is asked first is told first. */
function comparedSaid(
  evidence: Evidence,
  rows: readonly SheetRow[],
  { doubts, underCard, grouped, worn, sides, swaps, before, told }: Compared,
  restsOn: (place: ValvePlace) => readonly string[],
): Judgement[] {
  return [
    ...inDoubtJudgements(rows, doubts.doubtsOf),
    ...underCard.map(({ judgement }) => judgement),
    ...grouped.judgements,
    ...wornTold(worn),
    ...markedTold(sides, restsOn),
    ...sides.flatMap((side) => oddJudgements(side, restsOn)),
    ...sides.flatMap((side) => noMiddleTold(side, restsOn)),
    ...sides.flatMap((side) => lobesUnlikeTold(side, restsOn)),
    ...swaps.map(swapJudgement),
    ...before.map(({ judgement }) => judgement),
    ...unlikeSprings(rows),
    ...told.judgements,
    ...coarseTold(evidence, rows),
  ];
}

/** The readings of the lifts of a valve. */
const liftsAt = (details: readonly SheetRowDetail[], place: ValvePlace): string[] =>
  details
    .filter((row) => placeOf(row) === placeOf(place))
    .flatMap(({ cells }) =>
      cells.filter(({ kind }) => kind.endsWith('lift')).flatMap(({ entryIds }) => entryIds),
    )
    .sort();

/** Cylinders in the order in which they fire, and as they stand in their banks. */
function ordersOf({ engine }: Evidence, rows: readonly SheetRow[]): SheetDetail['orders'] {
  const cylinders = Math.max(engine.cylinders ?? 0, ...rows.map(({ cylinder }) => cylinder));
  return {
    firing: cylinderOrder(engine.firingOrder, cylinders),
    bank: cylinderOrder(engine.bankOrder, cylinders),
  };
}

interface SheetSaid extends PartSaid<SheetDetail> {
  readonly notToRun: readonly NotToRun[];
  /** The set-ups, with what they lack while the sheet has a lift otherwise. */
  readonly known: readonly SetUpKnown[];
}

/** The per-valve sheet: figures of each row, what the rows are asked, which valves are odd, what swaps decide, gaps. */
export function sheetPart(
  entered: Evidence,
  setUps: readonly SetUpKnown[] = [],
  tolerances?: Tolerances,
): SheetSaid {
  const { evidence, questions: ofReading } = saidOfSheet(entered);
  const { rows, known, questions: ofBoth } = sheetAndSetUps(evidence, rowsOf(evidence), setUps);
  const raised = [...raisedByRows(evidence, rows, known, tolerances), ...ofBoth];
  const compared = valvesCompared(evidence, rows, known, raised);
  const { doubts, left, sides, swaps, ofPositions, ratios, told, grouped, worn, lobesApart, underCard } =
    compared;
  const held = [...grouped.held, ...heldOfSides(evidence, rows, ratios)];
  const ofRows = ratiosTold(ratios, rows, held, doubts.doubtsOf);
  const gaps = gapsOfRows(evidence, rows);
  const questions = [
    ...withoutOneSided(withoutGuessesAt(left, raised, rows), told.questions),
    ...ofReading,
    ...told.questions,
    ...grouped.questions,
    ...ofPositions,
    ...[...underCard, ...worn, ...lobesApart, ...gaps.short].map(({ question }) => question),
    ...gaps.questions,
  ];
  const details = rows.map((row) => rowDetail(evidence, row, gaps.cellsOf(row), questions));
  const said = comparedSaid(evidence, rows, compared, (place) => liftsAt(details, place));
  const ordinary = new Set(swaps.flatMap((swap) => (swap.ordinary === true ? swap.judgementId : [])));
  return {
    quantities: [...rowQuantities(details), ...ratioQuantities(ofRows, rows)],
    judgements: [...said, ...gaps.judgements],
    questions,
    stop: [...worn, ...lobesApart, ...gaps.short].map(({ stop }) => stop),
    known,
    notToRun: [
      ...underCard.flatMap(({ notToRun }) => notToRun),
      ...compared.ofWhom,
      ...wornNotToRun(evidence, [...worn, ...lobesApart]),
    ],
    headlines: headlinesOf(said.filter(({ id }) => !ordinary.has(id))),
    detail: {
      names: valveNames(evidence),
      orders: ordersOf(evidence, rows),
      rows: details,
      ratios: ofRows,
      sides,
      swaps,
      held,
    },
  };
}
