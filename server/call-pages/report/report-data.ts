import { InputFaults } from '../../../shared/problems/faults.ts';
import { consequencesOf, type SetUpConsequences } from '../../assessment/consequences/consequences.ts';
import { identifyPart, type PartIdentification } from '../../assessment/identification/identification.ts';
import { type LashLog, lashLogOf } from '../../assessment/lash/lash-log.ts';
import { type Explained, explainSetUp } from '../../assessment/ratio/explain.ts';
import { type Sheet, sheetOf } from '../../assessment/sheet/sheet.ts';
import { type JudgedMarks, judgedMarks } from '../../assessment/tip-marks/judged.ts';
import { type CallContext, loadContext } from '../../call/context.ts';
import type { Registered } from '../../compute/registry.ts';
import type { Tx } from '../../database/database.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import type { Photograph } from '../../records/photographs/photographs.ts';
import { catalogueOf } from '../../records/whole-build/build-record.ts';
import type { Working } from '../../records/workings/workings.ts';
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

function explanations({ record }: CallContext): Map<string, Explained> {
  const found = new Map<string, Explained>();
  for (const { id } of record.setUps.slice(-EXPLAINED)) {
    try {
      const explained = explainSetUp(record, id);
      if (explained !== undefined) found.set(id, explained);
    } catch (error) {
      // Readings that the inference can't take are printed all the same, without it.
      if (!(error instanceof InputFaults)) throw error;
    }
  }
  return found;
}

function consequencesBySide(context: CallContext): SetUpConsequences[] {
  const found: SetUpConsequences[] = [];
  for (const side of ['intake', 'exhaust']) {
    const ratios = context.ratios.filter(({ setUp }) => setUp.valve === side);
    const chosen = chosenFor({ ...context, ratios }, undefined);
    if (chosen === undefined) continue;
    const each = consequencesOf(context.record, chosen.setUp.id);
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
  const context = await loadContext(tx, req, { catalogue: 'when-read' });
  const { record } = context;
  const readOfPart = stillStanding(record.partReadings).length > 0;
  const sheet = sheetOf(record, 'firing');
  return {
    context,
    part: readOfPart ? identifyPart(record, catalogueOf(record)) : undefined,
    sheet: sheet.readings.length > 0 ? sheet : undefined,
    consequences: consequencesBySide(context),
    explained: explanations(context),
    marks: judgedMarks(record),
    lash: lashLogOf(record),
    workings: record.workings,
    photographs: record.photographs,
    computations,
  };
}
