import type { FastifyInstance } from 'fastify';
import { unanswered } from '../assessment/stops/lift-stop.ts';
import { type CallContext, loadContext } from '../call/context.ts';
import { formComponent, type PageForm, type RejectedForm } from '../call/forms.ts';
import type { Tx } from '../database/database.ts';
import type { Deps } from '../web/deps.ts';
import { postForm } from '../web/form-route.ts';
import { areaField } from '../web/forms/fields.ts';
import type { PageRequest, PageSide } from '../web/page-request.ts';
import { getPage } from '../web/page-route.ts';
import { closeForm, holdForm, liftForm } from './call-actions.ts';
import { type CallFrame, firstStep, lastStep } from './frame.ts';
import { liftPageForm } from './hold.ts';
import { stepPage } from './step-page.ts';

const NOT_YET =
  'It can’t be lifted yet: what the readings raised is answered, corrected or struck out first.';

async function holdPage(frame: CallFrame, tx: Tx, req: PageRequest, rejected?: RejectedForm) {
  const context = await loadContext(tx, req);
  const form = liftPageForm(context);
  const { stop } = context.assessment;
  // What the readings raise is answered, corrected or struck out first; the banner says how.
  const slots =
    stop.length > 0 && unanswered(stop).length === 0
      ? [formComponent(form, rejected)]
      : [
          {
            template: '/parts/notice' as const,
            data: { text: stop.length === 0 ? 'Nothing stops this call.' : NOT_YET },
          },
        ];
  const at = { step: firstStep(frame), title: 'The stop', ofCall: true } as const;
  return stepPage(frame, context, at, { forms: [form], slots }, rejected);
}

function closePageForm(context: CallContext): PageForm {
  return {
    name: 'close',
    action: `${context.base}/close`,
    labels: { outcome: 'How the call ended' },
    groups: (shown) => [
      {
        slots: [
          areaField(shown, 'outcome', 'How the call ended', {
            hint: 'What is found, what is not known, the next reading, who does it by when.',
            rows: 4,
          }),
        ],
      },
    ],
    buttons: [
      { label: 'Close the call', kind: 'primary', key: 'k' },
      { label: 'Leave it open', href: context.base },
    ],
  };
}

async function closePage(frame: CallFrame, tx: Tx, req: PageRequest, rejected?: RejectedForm) {
  const context = await loadContext(tx, req);
  const form = closePageForm(context);
  const at = { step: lastStep(frame), title: 'Close the call', ofCall: true } as const;
  return stepPage(frame, context, at, { forms: [form], slots: [formComponent(form, rejected)] }, rejected);
}

/** Stopping, from either side; at the desk, lifting the stop and closing the call. */
export function holdRoutes(app: FastifyInstance, deps: Deps, frame: CallFrame, side: PageSide): void {
  const base = side === 'desk' ? '/calls/:callId' : '/bench';
  const hold = {
    url: `${base}/hold`,
    side,
    page: (tx: Tx, req: PageRequest, rejected?: RejectedForm) => holdPage(frame, tx, req, rejected),
  };
  const run = (form: typeof holdForm) => (tx: Tx, req: PageRequest) => form.post(tx, req, deps);
  if (side === 'desk') getPage(app, deps, hold);
  postForm(app, deps, { ...hold, run: run(holdForm) });
  if (side === 'bench') return;
  postForm(app, deps, { ...hold, action: `${base}/hold/lift`, run: run(liftForm) });
  const close = {
    url: `${base}/close`,
    side,
    page: (tx: Tx, req: PageRequest, rejected?: RejectedForm) => closePage(frame, tx, req, rejected),
  };
  getPage(app, deps, close);
  postForm(app, deps, { ...close, run: run(closeForm) });
}
