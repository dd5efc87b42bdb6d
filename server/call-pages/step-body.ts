import { InputFaults } from '../../shared/problems/faults.ts';
import { identifyPart } from '../assessment/identification/identification.ts';
import { type Explained, explainSetUp } from '../assessment/ratio/explain.ts';
import type { CallContext } from '../call/context.ts';
import type { RejectedForm, StepBody } from '../call/forms.ts';
import { againstNewer, specStep } from '../call/spec/spec-step.ts';
import type { StepName } from '../call/steps.ts';
import type { WorkedStep } from '../call/worked/parts.ts';
import { workingStep } from '../call/worked/working-step.ts';
import type { Registered } from '../compute/registry.ts';
import type { Tx } from '../database/database.ts';
import { listRevisions } from '../records/builds/revisions.ts';
import { consequencesStep } from '../steps/consequences/consequences-step.ts';
import { identifyStep } from '../steps/identify/identify-step.ts';
import { notesStep } from '../steps/notes/notes-step.ts';
import { partsStep } from '../steps/parts/parts-step.ts';
import { chosenSetUp, ratioStep } from '../steps/ratio/ratio-step.ts';
import { sheetStep } from '../steps/sheet/sheet-step.ts';
import { triageStep } from '../steps/triage/triage-step.ts';
import type { PageRequest } from '../web/page-route.ts';

const SPEC_FORMS = ['build', 'cam', 'rockers', 'clearances'];

/** A form of the specification that was read at an older revision is shown against the newer one. */
async function againstNow(tx: Tx, context: CallContext, rejected: RejectedForm | undefined) {
  if (rejected === undefined) return {};
  if (!SPEC_FORMS.includes(rejected.typed.form ?? '')) return { rejected };
  const revisions = await listRevisions(tx, context.principal, context.build.id);
  return againstNewer(tx, context, revisions.at(-1), rejected);
}

export interface StepShown {
  readonly body: StepBody;
  readonly rejected: RejectedForm | undefined;
}

/** What is on a step. */
export async function stepBody(
  tx: Tx,
  context: CallContext,
  req: PageRequest,
  step: StepName,
  posted: RejectedForm | undefined,
  computations: ReadonlyMap<string, Registered>,
): Promise<StepShown> {
  const stale = await againstNow(tx, context, posted);
  const rejected = 'again' in stale ? stale.rejected : undefined;
  const other = 'other' in stale ? stale.other : undefined;
  const worked = (at: WorkedStep) => workingStep(tx, context, req, at, computations, rejected);
  const bodies: Readonly<Record<StepName, () => StepBody | Promise<StepBody>>> = {
    triage: () => triageStep(context, rejected),
    build: () => specStep(context, req, 'build', { ...(rejected ? { rejected } : {}), other }),
    cam: () => specStep(context, req, 'cam', { ...(rejected ? { rejected } : {}), other }),
    parts: () => partsStep(context, rejected, other),
    identify: async () =>
      identifyStep(context, req, await identifyPart(tx, context.principal, context.build.id), rejected),
    ratio: async () => ratioStep(context, req, rejected, await explainedFor(tx, context, req, rejected)),
    sheet: () => sheetStep(tx, context, req, rejected),
    consequences: () => consequencesStep(tx, context, req, rejected, other),
    geometry: () => worked('geometry'),
    timing: () => worked('timing'),
    adjuster: () => worked('adjuster'),
    notes: () => notesStep(context, rejected),
  };
  return { body: await bodies[step](), rejected };
}

/** What would explain the readings of the set-up that the ratio step shows. */
async function explainedFor(
  tx: Tx,
  context: CallContext,
  req: PageRequest,
  rejected: RejectedForm | undefined,
): Promise<Explained | undefined> {
  const found = chosenSetUp(context, rejected?.typed.setUpId ?? req.query['set-up']);
  if (found === undefined) return undefined;
  try {
    return await explainSetUp(tx, context.principal, context.build.id, found.setUp.id);
  } catch (error) {
    // Readings that the inference can't take are shown all the same; the step goes on without it.
    if (error instanceof InputFaults) return undefined;
    throw error;
  }
}
