import { InputFaults } from '../../../shared/problems/faults.ts';
import type { Registered } from '../../compute/registry.ts';
import { consequencesOf, type SetUpConsequences } from '../../consequences/consequences.ts';
import { chosenFor } from '../../consequences/pages/chosen.ts';
import type { Tx } from '../../database/database.ts';
import type { PageRequest } from '../../http/page-route.ts';
import { identifyPart, type PartIdentification } from '../../identification/identification.ts';
import { type LashLog, lashLogOf } from '../../lash-log/lash-log.ts';
import { listPhotographs, type Photograph } from '../../photographs/photographs.ts';
import { type Explained, explainSetUp } from '../../readings/explain.ts';
import { stillStanding } from '../../record/corrections/entries.ts';
import { type Sheet, sheetOf } from '../../sheet/sheet.ts';
import { type JudgedMarks, judgedMarks } from '../../tip-marks/judged.ts';
import { listWorkings, type Working } from '../../workings/workings.ts';
import { lookAt, type Sight } from '../pages/sight.ts';

/** A call with the answers of every step, each by the service that the step itself asks. */
export interface Whole {
  readonly sight: Sight;
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

async function explanations(tx: Tx, sight: Sight): Promise<Map<string, Explained>> {
  const found = new Map<string, Explained>();
  for (const { id } of sight.setUps.slice(-EXPLAINED)) {
    try {
      const explained = await explainSetUp(tx, sight.caller, sight.build.id, id);
      if (explained !== undefined) found.set(id, explained);
    } catch (error) {
      // Readings that the inference can't take are printed all the same, without it.
      if (!(error instanceof InputFaults)) throw error;
    }
  }
  return found;
}

async function consequencesBySide(tx: Tx, sight: Sight): Promise<SetUpConsequences[]> {
  const found: SetUpConsequences[] = [];
  for (const side of ['intake', 'exhaust']) {
    const ratios = sight.ratios.filter(({ setUp }) => setUp.valve === side);
    const chosen = chosenFor({ ...sight, ratios }, undefined);
    if (chosen === undefined) continue;
    const each = await consequencesOf(tx, sight.caller, sight.build.id, chosen.setUp.id);
    if (each.input.after !== undefined || each.gaps.some((gap) => gap.before ?? gap.after)) found.push(each);
  }
  return found;
}

/** Reads a call in whole, for the sheets that tell it from beginning to end. */
export async function lookAtWhole(
  tx: Tx,
  given: PageRequest,
  computations: ReadonlyMap<string, Registered>,
): Promise<Whole> {
  const sight = await lookAt(tx, given);
  const { caller, build } = sight;
  const readOfPart = stillStanding(sight.partReadings).length > 0;
  const sheet = await sheetOf(tx, caller, build.id, 'firing');
  const workings = await listWorkings(tx, caller, build.id);
  return {
    sight,
    part: readOfPart ? await identifyPart(tx, caller, build.id) : undefined,
    sheet: sheet.readings.length > 0 ? sheet : undefined,
    consequences: await consequencesBySide(tx, sight),
    explained: await explanations(tx, sight),
    marks: await judgedMarks(tx, caller, build.id, { workings }),
    lash: await lashLogOf(tx, caller, build.id),
    workings,
    photographs: await listPhotographs(tx, caller, build.id),
    computations,
  };
}
