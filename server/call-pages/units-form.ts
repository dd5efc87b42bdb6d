import type { FastifyInstance } from 'fastify';
import type { UnitSystem } from '../../shared/quantities/units.ts';
import { chooseUnits as unitsInput } from '../../shared/schemas/commands.ts';
import { type CallContext, loadContext } from '../call/context.ts';
import type { PageForm, RejectedForm } from '../call/forms.ts';
import { stepForm } from '../call/step-form.ts';
import type { Tx } from '../database/database.ts';
import { chooseUnits } from '../records/builds/units.ts';
import type { Deps } from '../web/deps.ts';
import { postForm } from '../web/form-route.ts';
import type { PageRequest, PageSide } from '../web/page-request.ts';
import { type CallFrame, firstStep, stepNamed } from './frame.ts';
import { stepPage } from './step-page.ts';

const OTHER: Readonly<Record<UnitSystem, UnitSystem>> = { inch: 'metric', metric: 'inch' };
const ASKED: Readonly<Record<UnitSystem, string>> = {
  inch: 'Speak inches',
  metric: 'Speak millimetres',
};

/** One press, from either side and at any step, for the units of the whole call. */
export const unitsForm = ({ base, build }: CallContext, step: string): PageForm => ({
  name: 'units',
  action: `${base}/units`,
  labels: { units: 'Units' },
  hidden: { units: OTHER[build.units], step },
  groups: () => [],
  buttons: [{ label: ASKED[OTHER[build.units]], kind: 'plain' }],
});

const form = stepForm({
  path: '/units',
  schema: unitsInput,
  beside: ['step'],
  run: async ({ units }, { tx, principal, call, req }) => {
    await chooseUnits(tx, principal, call.buildId, units);
    return { step: req.fields.step ?? '' };
  },
});

export function unitsRoute(app: FastifyInstance, deps: Deps, frame: CallFrame, side: PageSide): void {
  const base = side === 'desk' ? '/calls/:callId' : '/bench';
  postForm(app, deps, {
    url: `${base}/units`,
    side,
    run: (tx: Tx, req: PageRequest) => {
      const step = stepNamed(frame, req.fields.step ?? '')?.name ?? firstStep(frame);
      return form.post(tx, { ...req, fields: { ...req.fields, step } }, deps);
    },
    page: async (tx: Tx, req: PageRequest, rejected?: RejectedForm) =>
      stepPage(
        frame,
        await loadContext(tx, req),
        { step: firstStep(frame) },
        { forms: [], slots: [] },
        rejected,
      ),
  });
}
