import { InputFaults } from '../../shared/problems/faults.ts';
import { identifyPart } from '../assessment/identification/identification.ts';
import { type Explained, explainSetUp } from '../assessment/ratio/explain.ts';
import type { CallContext } from '../call/context.ts';
import type { RejectedForm, StepBody } from '../call/forms.ts';
import { againstNewer, type Stale, specStep } from '../call/spec/spec-step.ts';
import type { StepName } from '../call/steps.ts';
import type { WorkedStep } from '../call/worked/parts.ts';
import { workingStep } from '../call/worked/working-step.ts';
import type { Registered } from '../compute/registry.ts';
import { catalogueOf } from '../records/whole-build/build-record.ts';
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
function againstNow(context: CallContext, rejected: RejectedForm | undefined): Partial<Stale> {
  if (rejected === undefined) return {};
  if (!SPEC_FORMS.includes(rejected.typed.form ?? '')) return { rejected };
  return againstNewer(context, rejected);
}

export interface StepShown {
  readonly body: StepBody;
  readonly rejected: RejectedForm | undefined;
}

/** What is on a step. */
export function stepBody(
  context: CallContext,
  req: PageRequest,
  step: StepName,
  posted: RejectedForm | undefined,
  computations: ReadonlyMap<string, Registered>,
): StepShown {
  const { rejected, other } = againstNow(context, posted);
  const worked = (at: WorkedStep) => workingStep(context, req, at, computations, rejected);
  const bodies: Readonly<Record<StepName, () => StepBody>> = {
    triage: () => triageStep(context, rejected),
    build: () => specStep(context, req, 'build', { ...(rejected ? { rejected } : {}), other }),
    cam: () => specStep(context, req, 'cam', { ...(rejected ? { rejected } : {}), other }),
    parts: () => partsStep(context, rejected, other),
    identify: () =>
      identifyStep(context, req, identifyPart(context.record, catalogueOf(context.record)), rejected),
    ratio: () => ratioStep(context, req, rejected, explainedFor(context, req, rejected)),
    sheet: () => sheetStep(context, req, rejected),
    consequences: () => consequencesStep(context, req, rejected, other),
    geometry: () => worked('geometry'),
    timing: () => worked('timing'),
    adjuster: () => worked('adjuster'),
    notes: () => notesStep(context, rejected),
  };
  return { body: bodies[step](), rejected };
}

/** What would explain the readings of the set-up that the ratio step shows. */
function explainedFor(
  context: CallContext,
  req: PageRequest,
  rejected: RejectedForm | undefined,
): Explained | undefined {
  const found = chosenSetUp(context, rejected?.typed.setUpId ?? req.query['set-up']);
  if (found === undefined) return undefined;
  try {
    return explainSetUp(context.record, found.setUp.id);
  } catch (error) {
    // Readings that the inference can't take are shown all the same; the step goes on without it.
    if (error instanceof InputFaults) return undefined;
    throw error;
  }
}
