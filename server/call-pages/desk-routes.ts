import type { FastifyInstance } from 'fastify';
import { type CallContext, loadContext } from '../call/context.ts';
import { formComponent, type PageForm, type RejectedForm } from '../call/forms.ts';
import type { Tx } from '../database/database.ts';
import { listPage } from '../desk/calls/list-page.ts';
import { newCallPage, openFromForm } from '../desk/calls/new-call.ts';
import { notesStep } from '../steps/notes/notes-step.ts';
import { noticeComponent } from '../web/components.ts';
import type { Deps } from '../web/deps.ts';
import { areaField } from '../web/forms/fields.ts';
import { getPage, type PageRequest, postForm } from '../web/page-route.ts';
import { runClose, runDone, runLift } from './call-actions.ts';
import { liftForm } from './hold.ts';
import { stepPage } from './step-page.ts';
import { takeoverPage } from './takeover/takeover.ts';

async function holdPage(tx: Tx, req: PageRequest, rejected?: RejectedForm) {
  const context = await loadContext(tx, req);
  const form = liftForm(context);
  const slots = [
    context.call.held ? formComponent(form, rejected) : noticeComponent('This call is not on hold.'),
  ];
  return stepPage(context, { step: 'triage', title: 'The hold' }, { forms: [form], slots }, rejected);
}

function closeForm(context: CallContext): PageForm {
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

async function closePage(tx: Tx, req: PageRequest, rejected?: RejectedForm) {
  const context = await loadContext(tx, req);
  const form = closeForm(context);
  return stepPage(
    context,
    { step: 'notes', title: 'Close the call' },
    { forms: [form], slots: [formComponent(form, rejected)] },
    rejected,
  );
}

async function notesPage(tx: Tx, req: PageRequest, rejected?: RejectedForm) {
  const context = await loadContext(tx, req);
  return stepPage(context, { step: 'notes' }, notesStep(context, rejected), rejected);
}

/** What only the desk has: the list, a new call, lifting a hold, closing, and promises done. */
export function deskRoutes(app: FastifyInstance, deps: Deps): void {
  const side = 'desk' as const;
  const call = '/calls/:callId';
  getPage(app, deps, { url: '/calls', side, page: listPage });
  const newCall = {
    url: '/calls/new',
    side,
    page: async (_tx: Tx, _given: PageRequest, rejected?: RejectedForm) => newCallPage(rejected),
  };
  getPage(app, deps, newCall);
  postForm(app, deps, { ...newCall, run: openFromForm });
  getPage(app, deps, {
    url: `${call}/takeover`,
    side,
    page: (tx, req) => takeoverPage(tx, req, deps.computations),
  });
  const hold = { url: `${call}/hold`, side, page: holdPage };
  getPage(app, deps, hold);
  postForm(app, deps, { ...hold, action: `${call}/hold/lift`, run: runLift });
  const close = { url: `${call}/close`, side, page: closePage };
  getPage(app, deps, close);
  postForm(app, deps, { ...close, run: runClose });
  postForm(app, deps, { url: `${call}/notes/:noteId/done`, side, page: notesPage, run: runDone });
}
