import { correctTipMark, newTipMark } from '../../../shared/schemas/tip-mark.ts';
import { getCall } from '../../calls/calls.ts';
import { readCorrection } from '../../calls/pages/correction-form.ts';
import { type Again, formSlot } from '../../calls/pages/forms-on-page.ts';
import { baseOf, callIdOf, lookAt } from '../../calls/pages/sight.ts';
import { stepPage } from '../../calls/pages/step-page.ts';
import type { Tx } from '../../database/database.ts';
import { readForm } from '../../forms/read-form.ts';
import type { FormAnswer, PageRequest } from '../../http/page-route.ts';
import type { Page } from '../../pages/render.ts';
import { notFound } from '../../problems/failure.ts';
import { keepTipMark, listTipMarks, replaceTipMark } from '../tip-marks.ts';
import { MARK_ALONG, markCorrection } from './mark-form.ts';

const back = (given: PageRequest): FormAnswer => ({ goTo: `${baseOf(given)}/steps/geometry?of=marks` });

const buildOf = async (tx: Tx, given: PageRequest): Promise<string> =>
  (await getCall(tx, given.caller, callIdOf(given))).buildId;

/** Keeps a mark as the form has it. */
export async function runTipMark(tx: Tx, given: PageRequest): Promise<FormAnswer> {
  const { key: _, form: __, ...fields } = given.fields;
  const read = readForm(newTipMark, fields, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: given.fields };
  await keepTipMark(tx, given.caller, await buildOf(tx, given), read.data);
  return back(given);
}

/** Puts another mark in the place of one, or strikes it out. */
export async function runTipMarkCorrection(tx: Tx, given: PageRequest): Promise<FormAnswer> {
  const parts = { value: 'width', along: MARK_ALONG };
  const read = readCorrection(correctTipMark, given.fields, parts, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: given.fields };
  await replaceTipMark(tx, given.caller, await buildOf(tx, given), given.params.tipMarkId ?? '', read.data);
  return back(given);
}

/** The page on which a mark is put right. */
export async function tipMarkPage(tx: Tx, given: PageRequest, again?: Again): Promise<Page> {
  const sight = await lookAt(tx, given);
  const marks = await listTipMarks(tx, given.caller, sight.build.id);
  const mark = marks.find((each) => each.id === given.params.tipMarkId);
  if (mark === undefined) throw notFound('reading');
  const form = markCorrection(sight, mark);
  const title = `Correct: tip mark ${mark.cylinder} ${mark.valve}, line ${mark.seq}`;
  return stepPage(
    sight,
    { step: 'geometry', title },
    { forms: [form], slots: [formSlot(form, again)] },
    again,
  );
}
