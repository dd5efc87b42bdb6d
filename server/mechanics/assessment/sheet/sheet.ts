import { defined } from '../../../../shared/defined.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import type { Tolerances } from '../../questions/tolerances.ts';
import { cylinderOrder } from '../../valve-sheet/orders.ts';
import type { AssessedQuestion, Headline, Judgement } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import type { PartSaid } from '../common/part-said.ts';
import { placeOf } from '../common/said.ts';
import { valveNames } from '../common/valve-names.ts';
import type { Evidence, Side, Spring } from '../evidence.ts';
import type { SetUpKnown } from '../ratio/known.ts';
import { figureCells, type GapCell, gapCells, inColumns } from './cells.ts';
import { copiedColumns } from './copied.ts';
import type { SheetDetail, SheetRowDetail, SheetSideDetail, SheetSwapDetail } from './detail.ts';
import { liftHalf } from './dial.ts';
import { shortGap } from './gap-stops.ts';
import { wornLobes } from './lobe-worn.ts';
import { armLots } from './lots-of-swaps.ts';
import { doubtJudgement, oddJudgements, sideOf } from './odd.ts';
import { rowQuantities } from './quantities.ts';
import { ratioQuantities, ratiosOf } from './ratios.ts';
import { rowQuestions } from './row-questions.ts';
import { rowsOf, type SheetRow } from './rows.ts';
import { type LobesRead, swapJudgement, swapsOf } from './swaps.ts';

const SIDES: readonly Side[] = ['intake', 'exhaust'];

const readingsOf = ({ lobes, everyLift }: SheetRow): string[] =>
  [...lobes, ...everyLift.flatMap(({ readings }) => readings)].map(({ id }) => id);

/** Whether a question doubts a row: it is of that valve, or of its side and rests on what was read there. */
function isOf({ about, restsOn }: AssessedQuestion, row: SheetRow): boolean {
  if (about.of === 'side')
    return about.valve === sideOfValve(row.valve) && readingsOf(row).some((id) => restsOn.includes(id));
  return about.of === 'valve' && placeOf(about) === placeOf(row);
}

/** The springs that lifts were read on; lobes alone are one sheet too. */
function springsOf(rows: readonly SheetRow[]): Spring[] {
  const found = [...new Set(rows.flatMap(({ lifts }) => lifts.map(({ spring }) => spring)))].sort();
  return found.length > 0 || rows.every(({ lobe }) => lobe === undefined) ? found : ['not-said'];
}

interface Compared {
  readonly sides: readonly SheetSideDetail[];
  readonly swaps: readonly SheetSwapDetail[];
}

/** Lobe lifts by valve: of the sheet, else read in a set-up; a caliper's are left out, since they read low. */
function lobesRead(evidence: Evidence, rows: readonly SheetRow[], known: readonly SetUpKnown[]): LobesRead {
  const ofSetUps = known.flatMap(({ read: { setUp, lobe }, doubts }) =>
    lobe.value === undefined || lobe.source !== 'indicator' || lobe.lacks.length > 0 || doubts.length > 0
      ? []
      : [[placeOf(setUp), { value: lobe.value, half: setUp.lobeErrorLimit }] as const],
  );
  const ofSheet = rows.flatMap(({ lobe, lobes, ...place }) =>
    lobe?.value === undefined || lobe.value <= 0 || lobes.some(({ tool }) => tool === 'caliper')
      ? []
      : [[placeOf(place), { value: lobe.value, half: liftHalf(evidence, lobes) }] as const],
  );
  return new Map([...ofSetUps, ...ofSheet]);
}

function compare(
  evidence: Evidence,
  rows: readonly SheetRow[],
  doubtful: ReadonlySet<string>,
  known: readonly SetUpKnown[],
): Compared {
  const lots = armLots(evidence, rows, known, doubtful);
  const lobes = lobesRead(evidence, rows, known);
  const swaps = SIDES.flatMap((side) => swapsOf(evidence, lots, side, lobes));
  const sides = springsOf(rows).flatMap((spring) =>
    SIDES.map((side) => sideOf(evidence, rows, { side, spring }, { doubtful, swaps, lots })),
  );
  return { sides, swaps };
}

function rowDetail(
  evidence: Evidence,
  row: SheetRow,
  gaps: readonly GapCell[],
  questions: readonly AssessedQuestion[],
): SheetRowDetail {
  const own = questions.filter((question) => isOf(question, row));
  const armName = evidence.arms.find(({ id }) => id === row.armId)?.name;
  return {
    cylinder: row.cylinder,
    valve: row.valve,
    ...defined({ armId: row.armId, armName }),
    cells: inColumns([...figureCells(evidence, row), ...gaps.map(({ cell }) => cell)]),
    questionIds: own.map(({ id }) => id),
    inDoubt: own.some(inDoubt),
  };
}

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
  evidence: Evidence,
  known: readonly SetUpKnown[] = [],
  tolerances?: Tolerances,
): PartSaid<SheetDetail> {
  const rows = rowsOf(evidence);
  const raised = [...rowQuestions(evidence, rows, tolerances), ...copiedColumns(evidence, rows)];
  const doubtsOf = (row: SheetRow) => raised.filter((each) => inDoubt(each) && isOf(each, row));
  const doubtful = new Set(rows.filter((row) => doubtsOf(row).length > 0).map(placeOf));
  const { sides, swaps } = compare(evidence, rows, doubtful, known);
  const worn = wornLobes(evidence, sides, rows);
  const gaps = new Map(rows.map((row) => [placeOf(row), gapCells(evidence, row)]));
  const short = [...gaps.values()]
    .flat()
    .flatMap(({ each }) => each.flatMap((one) => shortGap(one, evidence)));
  const questions = [...raised, ...[...worn, ...short].map(({ question }) => question)];
  const details = rows.map((row) => rowDetail(evidence, row, gaps.get(placeOf(row)) ?? [], questions));
  const restsOn = (place: string) =>
    details
      .filter((row) => placeOf(row) === place)
      .flatMap(({ cells }) =>
        cells.filter(({ kind }) => kind.endsWith('lift')).flatMap(({ entryIds }) => entryIds),
      )
      .sort();
  const compared = [
    ...sides.flatMap((side) => oddJudgements(side, (place) => restsOn(placeOf(place)))),
    ...swaps.map(swapJudgement),
    ...rows.flatMap((row) =>
      doubtsOf(row)
        .slice(0, 1)
        .map((question) => doubtJudgement(row, question)),
    ),
  ];
  const allGaps = [...gaps.values()].flat();
  const ratios = ratiosOf(evidence, rows);
  const cylinders = Math.max(evidence.engine.cylinders ?? 0, ...rows.map(({ cylinder }) => cylinder));
  return {
    quantities: [
      ...rowQuantities(details),
      ...ratioQuantities(ratios, rows, (row) => doubtsOf(row).map(({ ask }) => ask)),
    ],
    judgements: [...compared, ...allGaps.map(({ judgement }) => judgement)],
    questions,
    stop: [...worn, ...short].map(({ stop }) => stop),
    headlines: headlinesOf(compared),
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
    },
  };
}
