import type { FastifyInstance } from 'fastify';
import { runArm, runPlace, runSpec } from '../../builds/pages/build-actions.ts';
import { runClearances, runKeepConsequences } from '../../consequences/pages/actions.ts';
import type { Tx } from '../../database/database.ts';
import type { Deps } from '../../deps.ts';
import {
  type FormAnswer,
  getPage,
  type PageRequest,
  type PageSide,
  postForm,
  received,
} from '../../http/page-route.ts';
import { runLash } from '../../lash-log/pages/actions.ts';
import { Failure } from '../../problems/failure.ts';
import { correctReading, readingName } from '../../readings/pages/correct-reading.ts';
import { runCorrection, runReading, runSetUp } from '../../readings/pages/reading-actions.ts';
import { runOneValve, runPaste, runSheetCorrection } from '../../sheet/pages/actions.ts';
import { correctSheetPage } from '../../sheet/pages/correct-page.ts';
import { runTipMark, runTipMarkCorrection, tipMarkPage } from '../../tip-marks/pages/actions.ts';
import { runWorking } from '../../workings/pages/run-working.ts';
import { runAnswer, runHold, runNote, runTriage } from './call-actions.ts';
import type { Again } from './forms-on-page.ts';
import { nextStep } from './needs.ts';
import { lookAt } from './sight.ts';
import { stepBody } from './step-body.ts';
import { stepPage } from './step-page.ts';
import { isStep, type StepName } from './steps.ts';

async function showStep(deps: Deps, tx: Tx, given: PageRequest, step: StepName, posted?: Again) {
  const sight = await lookAt(tx, given);
  const { body, again } = await stepBody(tx, sight, given, step, posted, deps.computations);
  return stepPage(sight, { step }, body, again);
}

async function showReading(tx: Tx, given: PageRequest, again?: Again) {
  const sight = await lookAt(tx, given);
  const id = given.params.readingId ?? '';
  const title = `Correct: ${readingName(sight, id).toLowerCase()}`;
  return stepPage(sight, { step: 'ratio', title }, correctReading(sight, id, again), again);
}

/** What each form of a step posts to, and the step that is shown again where it can't be taken. */
const ACTIONS: readonly {
  readonly path: string;
  readonly step: StepName;
  readonly run: (tx: Tx, given: PageRequest) => Promise<FormAnswer>;
}[] = [
  { path: '/triage', step: 'triage', run: runTriage },
  { path: '/hold', step: 'triage', run: runHold },
  { path: '/spec/build', step: 'build', run: (tx, given) => runSpec(tx, given, 'build') },
  { path: '/spec/cam', step: 'cam', run: (tx, given) => runSpec(tx, given, 'cam') },
  { path: '/spec/rockers', step: 'parts', run: (tx, given) => runSpec(tx, given, 'rockers') },
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
    const given = await received(request, reply, deps, side);
    const to = await deps.db.inShop(given.caller.shopId, async (tx) => {
      const sight = await lookAt(tx, given);
      return `${sight.base}/steps/${nextStep(sight).step}`;
    });
    return reply.code(303).header('location', to).header('cache-control', 'no-store').send();
  });
  getPage(app, deps, {
    url: `${base}/steps/:step`,
    side,
    page: (tx, given) => {
      const step = given.params.step ?? '';
      if (!isStep(step)) throw new Failure('not-found', 'there is no such step');
      return showStep(deps, tx, given, step);
    },
  });
  for (const { path, step, run } of ACTIONS) {
    const url = `${base}${path}`;
    postForm(app, deps, {
      url,
      side,
      page: (tx, given, again) => showStep(deps, tx, given, step, again),
      run,
    });
  }
  for (const step of ['geometry', 'timing', 'adjuster'] as const) {
    postForm(app, deps, {
      url: `${base}/workings/${step}`,
      side,
      page: (tx, given, again) => showStep(deps, tx, given, step, again),
      run: (tx, given) => runWorking(tx, given, step, deps.computations),
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
