import { correctTipMark, newTipMark } from '../../../shared/schemas/tip-mark.ts';
import { baseOf, callIdOf, loadContext } from '../../call/context.ts';
import { readCorrection } from '../../call/correction-form.ts';
import { formComponent, type RejectedForm } from '../../call/forms.ts';
import { stepPage } from '../../call-pages/step-page.ts';
import type { Tx } from '../../database/database.ts';
import { notFound } from '../../problems/failure.ts';
import { getCall } from '../../records/calls/calls.ts';
import { keepTipMark, replaceTipMark } from '../../records/tip-marks/tip-marks.ts';
import { readForm } from '../../web/forms/read-form.ts';
import type { FormAnswer, PageRequest } from '../../web/page-route.ts';
import type { Page } from '../../web/pages/render.ts';
import { MARK_ALONG, markCorrection } from './mark-form.ts';

const back = (req: PageRequest): FormAnswer => ({ goTo: `${baseOf(req)}/steps/geometry?of=marks` });

const buildOf = async (tx: Tx, req: PageRequest): Promise<string> =>
  (await getCall(tx, req.principal, callIdOf(req))).buildId;

/** Keeps a mark as the form has it. */
export async function runTipMark(tx: Tx, req: PageRequest): Promise<FormAnswer> {
  const { key: _, form: __, ...fields } = req.fields;
  const read = readForm(newTipMark, fields, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: req.fields };
  await keepTipMark(tx, req.principal, await buildOf(tx, req), read.data);
  return back(req);
}

/** Puts another mark in the place of one, or strikes it out. */
export async function runTipMarkCorrection(tx: Tx, req: PageRequest): Promise<FormAnswer> {
  const parts = { value: 'width', along: MARK_ALONG };
  const read = readCorrection(correctTipMark, req.fields, parts, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: req.fields };
  await replaceTipMark(tx, req.principal, await buildOf(tx, req), req.params.tipMarkId ?? '', read.data);
  return back(req);
}

/** The page on which a mark is put right. */
export async function tipMarkPage(tx: Tx, req: PageRequest, rejected?: RejectedForm): Promise<Page> {
  const context = await loadContext(tx, req);
  const mark = context.record.tipMarks.find((each) => each.id === req.params.tipMarkId);
  if (mark === undefined) throw notFound('reading');
  const form = markCorrection(context, mark);
  const title = `Correct: tip mark ${mark.cylinder} ${mark.valve}, line ${mark.seq}`;
  return stepPage(
    context,
    { step: 'geometry', title },
    { forms: [form], slots: [formComponent(form, rejected)] },
    rejected,
  );
}
