import { listRevisions } from '../../builds/builds.ts';
import { partsStep } from '../../builds/pages/parts-step.ts';
import { againstNewer, specStep } from '../../builds/pages/spec-step.ts';
import type { Tx } from '../../database/database.ts';
import type { PageRequest } from '../../http/page-route.ts';
import { identifyPart } from '../../identification/identification.ts';
import { identifyStep } from '../../identification/pages/identify-step.ts';
import { ratioStep } from '../../readings/pages/ratio-step.ts';
import type { Again, StepBody } from './forms-on-page.ts';
import { notesStep } from './notes-step.ts';
import type { Sight } from './sight.ts';
import type { StepName } from './steps.ts';
import { triageStep } from './triage-step.ts';

const SPEC_FORMS = ['build', 'cam', 'rockers'];

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
): Promise<StepShown> {
  const stale = await againstNow(tx, sight, posted);
  const again = 'again' in stale ? stale.again : undefined;
  const other = 'other' in stale ? stale.other : undefined;
  const bodies: Readonly<Record<StepName, () => StepBody | Promise<StepBody>>> = {
    triage: () => triageStep(sight, again),
    build: () => specStep(sight, given, 'build', { ...(again ? { again } : {}), other }),
    cam: () => specStep(sight, given, 'cam', { ...(again ? { again } : {}), other }),
    parts: () => partsStep(sight, again, other),
    identify: async () =>
      identifyStep(sight, given, await identifyPart(tx, sight.caller, sight.build.id), again),
    ratio: () => ratioStep(sight, given, again),
    notes: () => notesStep(sight, again),
  };
  return { body: await bodies[step](), again };
}
