import type { FastifyInstance } from 'fastify';
import { PART_KINDS } from '../../../shared/schemas/part-words.ts';
import { identifyPart } from '../../assessment/identification/identification.ts';
import { loadContext } from '../../call/context.ts';
import { formComponent, type RejectedForm } from '../../call/forms.ts';
import { stepPage } from '../../call-pages/step-page.ts';
import type { Tx } from '../../database/database.ts';
import { notFound } from '../../problems/failure.ts';
import { catalogueOf } from '../../records/whole-build/build-record.ts';
import type { Deps } from '../../web/deps.ts';
import { getPage, type PageRequest, type PageSide, postForm } from '../../web/page-route.ts';
import type { Page } from '../../web/pages/render.ts';
import { runPartCorrection, runPartMarks, runPartReading } from './actions.ts';
import { identifyStep } from './identify-step.ts';
import { partCorrectionForm } from './part-forms.ts';

async function identifyPage(tx: Tx, req: PageRequest, rejected?: RejectedForm): Promise<Page> {
  const context = await loadContext(tx, req, { catalogue: 'whole' });
  const found = identifyPart(context.record, catalogueOf(context.record));
  return stepPage(context, { step: 'identify' }, identifyStep(context, req, found, rejected), rejected);
}

const NAMES: Readonly<Record<string, string>> = PART_KINDS;

async function correctionPage(tx: Tx, req: PageRequest, rejected?: RejectedForm): Promise<Page> {
  const context = await loadContext(tx, req);
  const reading = context.partReadings.find((each) => each.id === req.params.partReadingId);
  if (reading === undefined) throw notFound('reading');
  const form = partCorrectionForm(context, reading);
  const title = `Correct: ${(NAMES[reading.kind] ?? reading.kind).toLowerCase()}, line ${reading.seq}`;
  return stepPage(
    context,
    { step: 'identify', title },
    { forms: [form], slots: [formComponent(form, rejected)] },
    rejected,
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
