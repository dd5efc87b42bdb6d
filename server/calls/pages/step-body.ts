import { InputFaults } from '../../../shared/problems/faults.ts';
import { partsStep } from '../../builds/pages/parts-step.ts';
import { againstNewer, specStep } from '../../builds/pages/spec-step.ts';
import { listRevisions } from '../../builds/revisions.ts';
import type { Registered } from '../../compute/registry.ts';
import { consequencesStep } from '../../consequences/pages/consequences-step.ts';
import type { Tx } from '../../database/database.ts';
import type { PageRequest } from '../../http/page-route.ts';
import { identifyPart } from '../../identification/identification.ts';
import { identifyStep } from '../../identification/pages/identify-step.ts';
import { type Explained, explainSetUp } from '../../readings/explain.ts';
import { chosenSetUp, ratioStep } from '../../readings/pages/ratio-step.ts';
import { sheetStep } from '../../sheet/pages/sheet-step.ts';
import type { WorkedStep } from '../../workings/pages/kinds.ts';
import { workingStep } from '../../workings/pages/working-step.ts';
import type { Again, StepBody } from './forms-on-page.ts';
import { notesStep } from './notes-step.ts';
import type { Sight } from './sight.ts';
import type { StepName } from './steps.ts';
import { triageStep } from './triage-step.ts';

const SPEC_FORMS = ['build', 'cam', 'rockers', 'clearances'];

/** A form of the specification that was read at an older revision is shown against the newer one. */
async function againstNow(tx: Tx, sight: Sight, again: Again | undefined) {
  if (again === undefined) return {};
  if (!SPEC_FORMS.includes(again.typed.form ?? '')) return { again };
  const revisions = await listRevisions(tx, sight.caller, sight.build.id);
  return againstNewer(tx, sight, revisions.at(-1), again);
}

export interface StepShown {
  readonly body: StepBody;
  readonly again: Again | undefined;
}

/** What stands on a step. */
export async function stepBody(
  tx: Tx,
  sight: Sight,
  given: PageRequest,
  step: StepName,
  posted: Again | undefined,
  computations: ReadonlyMap<string, Registered>,
): Promise<StepShown> {
  const stale = await againstNow(tx, sight, posted);
  const again = 'again' in stale ? stale.again : undefined;
  const other = 'other' in stale ? stale.other : undefined;
  const worked = (at: WorkedStep) => workingStep(tx, sight, given, at, computations, again);
  const bodies: Readonly<Record<StepName, () => StepBody | Promise<StepBody>>> = {
    triage: () => triageStep(sight, again),
    build: () => specStep(sight, given, 'build', { ...(again ? { again } : {}), other }),
    cam: () => specStep(sight, given, 'cam', { ...(again ? { again } : {}), other }),
    parts: () => partsStep(sight, again, other),
    identify: async () =>
      identifyStep(sight, given, await identifyPart(tx, sight.caller, sight.build.id), again),
    ratio: async () => ratioStep(sight, given, again, await explainedFor(tx, sight, given, again)),
    sheet: () => sheetStep(tx, sight, given, again),
    consequences: () => consequencesStep(tx, sight, given, again, other),
    geometry: () => worked('geometry'),
    timing: () => worked('timing'),
    adjuster: () => worked('adjuster'),
    notes: () => notesStep(sight, again),
  };
  return { body: await bodies[step](), again };
}

/** What would explain the readings of the set-up that the ratio step shows. */
async function explainedFor(
  tx: Tx,
  sight: Sight,
  given: PageRequest,
  again: Again | undefined,
): Promise<Explained | undefined> {
  const found = chosenSetUp(sight, again?.typed.setUpId ?? given.query['set-up']);
  if (found === undefined) return undefined;
  try {
    return await explainSetUp(tx, sight.caller, sight.build.id, found.setUp.id);
  } catch (error) {
    // Readings that the inference can't take are shown all the same; the step goes on without it.
    if (error instanceof InputFaults) return undefined;
    throw error;
  }
}
