import type { FastifyInstance } from 'fastify';
import { loadContext } from '../call/context.ts';
import type { RejectedForm } from '../call/forms.ts';
import { runArm, runPlace, runSpec } from '../call/spec/build-actions.ts';
import { isStep, type StepName } from '../call/steps.ts';
import { runWorking } from '../call/worked/run-working.ts';
import type { Tx } from '../database/database.ts';
import { Failure } from '../problems/failure.ts';
import { runLash } from '../steps/adjuster/lash-actions.ts';
import { runClearances, runKeepConsequences } from '../steps/consequences/actions.ts';
import { runTipMark, runTipMarkCorrection, tipMarkPage } from '../steps/geometry/mark-actions.ts';
import { correctReading, readingName } from '../steps/ratio/correct-reading.ts';
import { runCorrection, runReading, runSetUp } from '../steps/ratio/reading-actions.ts';
import { runOneValve, runPaste, runSheetCorrection } from '../steps/sheet/actions.ts';
import { correctSheetPage } from '../steps/sheet/correct-page.ts';
import type { Deps } from '../web/deps.ts';
import {
  type FormAnswer,
  getPage,
  type PageRequest,
  type PageSide,
  postForm,
  receive,
} from '../web/page-route.ts';
import { runAnswer, runHold, runNote, runTriage } from './call-actions.ts';
import { nextStep } from './needs.ts';
import { stepBody } from './step-body.ts';
import { stepPage } from './step-page.ts';

async function showStep(deps: Deps, tx: Tx, req: PageRequest, step: StepName, posted?: RejectedForm) {
  const context = await loadContext(tx, req, step === 'identify' ? { catalogue: 'whole' } : {});
  const { body, rejected } = stepBody(context, req, step, posted, deps.computations);
  return stepPage(context, { step }, body, rejected);
}

async function showReading(tx: Tx, req: PageRequest, rejected?: RejectedForm) {
  const context = await loadContext(tx, req);
  const id = req.params.readingId ?? '';
  const title = `Correct: ${readingName(context, id).toLowerCase()}`;
  return stepPage(context, { step: 'ratio', title }, correctReading(context, id, rejected), rejected);
}

/** What each form of a step posts to, and the step that is shown again where it can't be taken. */
const ACTIONS: readonly {
  readonly path: string;
  readonly step: StepName;
  readonly run: (tx: Tx, req: PageRequest) => Promise<FormAnswer>;
}[] = [
  { path: '/triage', step: 'triage', run: runTriage },
  { path: '/hold', step: 'triage', run: runHold },
  { path: '/spec/build', step: 'build', run: (tx, req) => runSpec(tx, req, 'build') },
  { path: '/spec/cam', step: 'cam', run: (tx, req) => runSpec(tx, req, 'cam') },
  { path: '/spec/rockers', step: 'parts', run: (tx, req) => runSpec(tx, req, 'rockers') },
  { path: '/arms', step: 'parts', run: runArm },
  { path: '/placements', step: 'parts', run: runPlace },
  { path: '/set-ups', step: 'ratio', run: runSetUp },
  { path: '/readings', step: 'ratio', run: runReading },
  { path: '/answers', step: 'ratio', run: runAnswer },
  { path: '/sheet', step: 'sheet', run: runOneValve },
  { path: '/sheet/paste', step: 'sheet', run: runPaste },
  { path: '/consequences', step: 'consequences', run: runKeepConsequences },
  { path: '/spec/clearances', step: 'consequences', run: runClearances },
  { path: '/tip-marks', step: 'geometry', run: runTipMark },
  { path: '/lash', step: 'adjuster', run: runLash },
  { path: '/notes', step: 'notes', run: runNote },
];

/** The steps of a call, the same for both sides: at `/calls/{id}` for the desk, at `/bench` for the builder. */
export function stepRoutes(app: FastifyInstance, deps: Deps, side: PageSide): void {
  const base = side === 'desk' ? '/calls/:callId' : '/bench';
  app.get(base, { schema: { hide: true } }, async (request, reply) => {
    const context = await receive(request, reply, deps, side, (tx, req) => loadContext(tx, req), 'read');
    const to = `${context.base}/steps/${nextStep(context).step}`;
    return reply.code(303).header('location', to).header('cache-control', 'no-store').send();
  });
  getPage(app, deps, {
    url: `${base}/steps/:step`,
    side,
    page: (tx, req) => {
      const step = req.params.step ?? '';
      if (!isStep(step)) throw new Failure('not-found', 'there is no such step');
      return showStep(deps, tx, req, step);
    },
  });
  for (const { path, step, run } of ACTIONS) {
    const url = `${base}${path}`;
    postForm(app, deps, {
      url,
      side,
      page: (tx, req, rejected) => showStep(deps, tx, req, step, rejected),
      run,
    });
  }
  for (const step of ['geometry', 'timing', 'adjuster'] as const) {
    postForm(app, deps, {
      url: `${base}/workings/${step}`,
      side,
      page: (tx, req, rejected) => showStep(deps, tx, req, step, rejected),
      run: (tx, req) => runWorking(tx, req, step, deps.computations),
    });
  }
  const reading = `${base}/readings/:readingId`;
  getPage(app, deps, { url: reading, side, page: showReading });
  postForm(app, deps, {
    url: reading,
    action: `${reading}/correct`,
    side,
    page: showReading,
    run: runCorrection,
  });
  const sheet = { url: `${base}/sheet/readings/:readingId`, side, page: correctSheetPage };
  getPage(app, deps, sheet);
  postForm(app, deps, { ...sheet, run: runSheetCorrection });
  const mark = { url: `${base}/tip-marks/:tipMarkId`, side, page: tipMarkPage };
  getPage(app, deps, mark);
  postForm(app, deps, { ...mark, run: runTipMarkCorrection });
}
