import type { FastifyInstance } from 'fastify';
import type { Tx } from '../../database/database.ts';
import type { Deps } from '../../deps.ts';
import { areaField } from '../../forms/fields.ts';
import { getPage, type PageRequest, postForm } from '../../http/page-route.ts';
import { runClose, runDone, runLift } from './call-actions.ts';
import { type Again, formSlot, type PageForm } from './forms-on-page.ts';
import { liftForm } from './hold.ts';
import { listPage } from './list-page.ts';
import { newCallPage, openFromForm } from './new-call.ts';
import { notesStep } from './notes-step.ts';
import { lookAt, type Sight } from './sight.ts';
import { stepPage } from './step-page.ts';
import { takeoverPage } from './takeover.ts';

async function holdPage(tx: Tx, given: PageRequest, again?: Again) {
  const sight = await lookAt(tx, given);
  const form = liftForm(sight);
  const slots = sight.call.held
    ? [formSlot(form, again)]
    : [{ template: '/parts/notice', data: { text: 'This call is not on hold.' } }];
  return stepPage(sight, { step: 'triage', title: 'The hold' }, { forms: [form], slots }, again);
}

function closeForm(sight: Sight): PageForm {
  return {
    name: 'close',
    action: `${sight.base}/close`,
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
      { label: 'Leave it open', href: sight.base },
    ],
  };
}

async function closePage(tx: Tx, given: PageRequest, again?: Again) {
  const sight = await lookAt(tx, given);
  const form = closeForm(sight);
  return stepPage(
    sight,
    { step: 'notes', title: 'Close the call' },
    { forms: [form], slots: [formSlot(form, again)] },
    again,
  );
}

async function notesPage(tx: Tx, given: PageRequest, again?: Again) {
  const sight = await lookAt(tx, given);
  return stepPage(sight, { step: 'notes' }, notesStep(sight, again), again);
}

/** What only the desk has: the list, a new call, lifting a hold, closing, and promises done. */
export function deskRoutes(app: FastifyInstance, deps: Deps): void {
  const side = 'desk' as const;
  const call = '/calls/:callId';
  getPage(app, deps, { url: '/calls', side, page: listPage });
  const newCall = {
    url: '/calls/new',
    side,
    page: async (_tx: Tx, _given: PageRequest, again?: Again) => newCallPage(again),
  };
  getPage(app, deps, newCall);
  postForm(app, deps, { ...newCall, run: openFromForm });
  getPage(app, deps, {
    url: `${call}/takeover`,
    side,
    page: (tx, given) => takeoverPage(tx, given, deps.computations),
  });
  const hold = { url: `${call}/hold`, side, page: holdPage };
  getPage(app, deps, hold);
  postForm(app, deps, { ...hold, action: `${call}/hold/lift`, run: runLift });
  const close = { url: `${call}/close`, side, page: closePage };
  getPage(app, deps, close);
  postForm(app, deps, { ...close, run: runClose });
  postForm(app, deps, { url: `${call}/notes/:noteId/done`, side, page: notesPage, run: runDone });
}
