import { InputFaults } from '../../../shared/problems/faults.ts';
import { consequencesOf, type SetUpConsequences } from '../../assessment/consequences/consequences.ts';
import { identifyPart, type PartIdentification } from '../../assessment/identification/identification.ts';
import { type Explained, explainSetUp } from '../../assessment/ratio/explain.ts';
import { type Sheet, sheetOf } from '../../assessment/sheet/sheet.ts';
import { type JudgedMarks, judgedMarks } from '../../assessment/tip-marks/judged.ts';
import { type CallContext, loadContext } from '../../call/context.ts';
import type { Registered } from '../../compute/registry.ts';
import type { Tx } from '../../database/database.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import { type LashLog, lashLogOf } from '../../records/lash-log/lash-log.ts';
import { listPhotographs, type Photograph } from '../../records/photographs/photographs.ts';
import { listWorkings, type Working } from '../../records/workings/workings.ts';
import { chosenFor } from '../../steps/consequences/chosen.ts';
import type { PageRequest } from '../../web/page-route.ts';

/** A call with the answers of every step, each by the service that the step itself asks. */
export interface ReportData {
  readonly context: CallContext;
  /** Left out while nothing was read of a part. */
  readonly part: PartIdentification | undefined;
  /** Left out while nothing was read valve by valve. */
  readonly sheet: Sheet | undefined;
  /** What a ratio does, of each side that has something to say. */
  readonly consequences: readonly SetUpConsequences[];
  /** What would explain the readings, by set-up. */
  readonly explained: ReadonlyMap<string, Explained>;
  readonly marks: JudgedMarks;
  readonly lash: LashLog;
  readonly workings: readonly Working[];
  readonly photographs: readonly Photograph[];
  readonly computations: ReadonlyMap<string, Registered>;
}

/** Explaining takes time; older set-ups have been answered by newer ones. */
const EXPLAINED = 3;

async function explanations(tx: Tx, context: CallContext): Promise<Map<string, Explained>> {
  const found = new Map<string, Explained>();
  for (const { id } of context.setUps.slice(-EXPLAINED)) {
    try {
      const explained = await explainSetUp(tx, context.principal, context.build.id, id);
      if (explained !== undefined) found.set(id, explained);
    } catch (error) {
      // Readings that the inference can't take are printed all the same, without it.
      if (!(error instanceof InputFaults)) throw error;
    }
  }
  return found;
}

async function consequencesBySide(tx: Tx, context: CallContext): Promise<SetUpConsequences[]> {
  const found: SetUpConsequences[] = [];
  for (const side of ['intake', 'exhaust']) {
    const ratios = context.ratios.filter(({ setUp }) => setUp.valve === side);
    const chosen = chosenFor({ ...context, ratios }, undefined);
    if (chosen === undefined) continue;
    const each = await consequencesOf(tx, context.principal, context.build.id, chosen.setUp.id);
    if (each.input.after !== undefined || each.gaps.some((gap) => gap.before ?? gap.after)) found.push(each);
  }
  return found;
}

/** Reads a call in whole, for the sheets that tell it from beginning to end. */
export async function loadReportData(
  tx: Tx,
  req: PageRequest,
  computations: ReadonlyMap<string, Registered>,
): Promise<ReportData> {
  const context = await loadContext(tx, req);
  const { principal, build } = context;
  const readOfPart = stillStanding(context.partReadings).length > 0;
  const sheet = await sheetOf(tx, principal, build.id, 'firing');
  const workings = await listWorkings(tx, principal, build.id);
  return {
    context,
    part: readOfPart ? await identifyPart(tx, principal, build.id) : undefined,
    sheet: sheet.readings.length > 0 ? sheet : undefined,
    consequences: await consequencesBySide(tx, context),
    explained: await explanations(tx, context),
    marks: await judgedMarks(tx, principal, build.id, { workings }),
    lash: await lashLogOf(tx, principal, build.id),
    workings,
    photographs: await listPhotographs(tx, principal, build.id),
    computations,
  };
}
