import type { FastifyInstance } from 'fastify';
import { PART_KINDS } from '../../shared/schemas/part-words.ts';
import { type Again, formSlot } from '../calls/pages/forms-on-page.ts';
import { lookAt } from '../calls/pages/sight.ts';
import { stepPage } from '../calls/pages/step-page.ts';
import type { Tx } from '../database/database.ts';
import type { Deps } from '../deps.ts';
import { getPage, type PageRequest, type PageSide, postForm } from '../http/page-route.ts';
import type { Page } from '../pages/render.ts';
import { notFound } from '../problems/failure.ts';
import { identifyPart } from './identification.ts';
import { runPartCorrection, runPartMarks, runPartReading } from './pages/actions.ts';
import { identifyStep } from './pages/identify-step.ts';
import { partCorrectionForm } from './pages/part-forms.ts';
import { listPartReadings } from './part-readings.ts';

async function identifyPage(tx: Tx, given: PageRequest, again?: Again): Promise<Page> {
  const sight = await lookAt(tx, given);
  const found = await identifyPart(tx, sight.caller, sight.build.id);
  return stepPage(sight, { step: 'identify' }, identifyStep(sight, given, found, again), again);
}

const NAMES: Readonly<Record<string, string>> = PART_KINDS;

async function correctionPage(tx: Tx, given: PageRequest, again?: Again): Promise<Page> {
  const sight = await lookAt(tx, given);
  const readings = await listPartReadings(tx, sight.caller, sight.build.id);
  const reading = readings.find((each) => each.id === given.params.partReadingId);
  if (reading === undefined) throw notFound('reading');
  const form = partCorrectionForm(sight, reading);
  const title = `Correct: ${(NAMES[reading.kind] ?? reading.kind).toLowerCase()}, line ${reading.seq}`;
  return stepPage(
    sight,
    { step: 'identify', title },
    { forms: [form], slots: [formSlot(form, again)] },
    again,
  );
}

function routesOf(app: FastifyInstance, deps: Deps, side: PageSide): void {
  const base = side === 'desk' ? '/calls/:callId' : '/bench';
  const step = { url: `${base}/steps/identify`, side, page: identifyPage };
  postForm(app, deps, { ...step, action: `${base}/part-readings`, run: runPartReading });
  postForm(app, deps, { ...step, action: `${base}/part-marks`, run: runPartMarks });
  const one = { url: `${base}/part-readings/:partReadingId`, side, page: correctionPage };
  getPage(app, deps, one);
  postForm(app, deps, { ...one, action: `${one.url}/correct`, run: runPartCorrection });
}

/** Identifying a part, at the desk and at the bench. */
export function identificationPages(app: FastifyInstance, deps: Deps): void {
  routesOf(app, deps, 'desk');
  routesOf(app, deps, 'bench');
}
