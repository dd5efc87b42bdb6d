import type { FastifyInstance } from 'fastify';
import { speaking } from '../../shared/quantities/spoken-units.ts';
import { STRUCK_BY_THE_DESK } from '../assessment/stops/keep-stops.ts';
import { type CallContext, loadContext } from '../call/context.ts';
import type { RejectedForm, StepBody } from '../call/forms.ts';
import { notCoveredComponents } from '../call/not-covered.ts';
import type { Step } from '../call/step.ts';
import type { EntryCorrection } from '../call/step-correction.ts';
import type { Tx } from '../database/database.ts';
import { Failure } from '../problems/failure.ts';
import { noticeComponent } from '../web/components.ts';
import type { Deps } from '../web/deps.ts';
import { postForm, type Running } from '../web/form-route.ts';
import { type PageRequest, type PageSide, pathOf, receive } from '../web/page-request.ts';
import { getPage } from '../web/page-route.ts';
import type { Page } from '../web/pages/render.ts';
import { type CallFrame, lastStep, notForThisEngine, stepNamed } from './frame.ts';
import { stepPage } from './step-page.ts';

type ShowPage = (tx: Tx, req: PageRequest, rejected?: RejectedForm) => Promise<Page>;

/** What stands in the place of a step that the engine has no use for. */
const withoutStep = (context: CallContext, why: string): StepBody => ({
  forms: [],
  slots: [
    noticeComponent(why, {
      link: { href: `${context.base}/steps/build`, label: 'If the valve gear was said wrong, put it right.' },
    }),
    ...notCoveredComponents(context),
  ],
});

/** The page of a step. */
const pageOf =
  (frame: CallFrame, deps: Deps, step: Step): ShowPage =>
  async (tx, req, rejected) => {
    const context = await loadContext(tx, req, step.catalogue ? { catalogue: 'whole' } : {});
    const why = notForThisEngine(context, step.name);
    if (why !== undefined && rejected === undefined)
      return stepPage(
        frame,
        context,
        { step: step.name, title: step.words.link },
        withoutStep(context, why),
        rejected,
      );
    const open = step.open({ context, computations: deps.computations });
    const back = rejected && { ...rejected, action: pathOf(req.request) };
    return stepPage(frame, context, { step: step.name }, open.page({ context, req, rejected }), back);
  };

/** A form that several steps show says which one it was posted from: it comes back there. */
const pageOfForm =
  (frame: CallFrame, deps: Deps, own: Step): ShowPage =>
  (tx, req, rejected) =>
    pageOf(frame, deps, stepNamed(frame, req.fields.step ?? '') ?? own)(tx, req, rejected);

/** A builder takes no stop away: what one rests on is not offered to be put right there. */
const stopRestsOn = ({ side, assessment }: CallContext, id: string): boolean =>
  side === 'bench' && assessment.stop.some(({ restsOn }) => restsOn.includes(id));

/** The page on which an entry of a step is put right. */
const correctionOf =
  (frame: CallFrame, deps: Deps, step: Step, correction: EntryCorrection): ShowPage =>
  async (tx, req, rejected) => {
    const context = await loadContext(tx, req);
    const source = { context, computations: deps.computations };
    const id = req.params[correction.param] ?? '';
    const { title, body: own } = speaking(context.build.units, () => correction.page(source, id, rejected));
    const body = stopRestsOn(context, id) ? { forms: [], slots: [noticeComponent(STRUCK_BY_THE_DESK)] } : own;
    return stepPage(frame, context, { step: step.name, title }, body, rejected);
  };

function nextRoute(app: FastifyInstance, deps: Deps, frame: CallFrame, side: PageSide, base: string): void {
  app.get(base, { schema: { hide: true } }, async (request, reply) => {
    const context = await receive(request, reply, deps, side, (tx, req) => loadContext(tx, req), 'read');
    const kept = context.kept === undefined ? '' : `?kept=${context.kept}`;
    const to = `${context.base}/steps/${context.assessment.next?.step ?? lastStep(frame)}${kept}`;
    return reply.code(303).header('location', to).header('cache-control', 'no-store').send();
  });
}

/** The steps of a call, the same for both sides: at `/calls/{id}` for the desk, at `/bench` for the builder. */
export function stepRoutes(app: FastifyInstance, deps: Deps, frame: CallFrame, side: PageSide): void {
  const base = side === 'desk' ? '/calls/:callId' : '/bench';
  nextRoute(app, deps, frame, side, base);
  getPage(app, deps, {
    url: `${base}/steps/:step`,
    side,
    page: (tx, req) => {
      const step = stepNamed(frame, req.params.step ?? '');
      if (step === undefined) throw new Failure('not-found', 'there is no such step');
      return pageOf(frame, deps, step)(tx, req);
    },
  });
  for (const step of frame.steps) {
    for (const form of step.forms) {
      if (form.side !== undefined && form.side !== side) continue;
      const page = pageOfForm(frame, deps, step);
      const how: Running =
        'post' in form
          ? { run: (tx, req) => form.post(tx, req, deps) }
          : { before: (req) => form.before(req, deps) };
      postForm(app, deps, { url: `${base}${form.path}`, side, page, ...how });
    }
    for (const correction of step.corrections) {
      const route = {
        url: `${base}${correction.path}`,
        side,
        page: correctionOf(frame, deps, step, correction),
      };
      getPage(app, deps, route);
      postForm(app, deps, {
        ...route,
        action: `${base}${correction.action ?? correction.path}`,
        run: (tx, req) => correction.post(tx, req),
      });
    }
  }
}
