import {
  answerQuestion,
  closeCall as closeInput,
  liftHold as liftInput,
  newNote,
  triage,
} from '../../shared/schemas/commands.ts';
import { baseOf, callIdOf } from '../call/context.ts';
import type { Tx } from '../database/database.ts';
import { keepAnswer } from '../records/answers/answers.ts';
import { getCall } from '../records/calls/calls.ts';
import { closeCall } from '../records/calls/change-call.ts';
import { liftHold, recordTriage, setHold } from '../records/calls/hold.ts';
import { finishPromise, keepNote } from '../records/notes/notes.ts';
import { readForm } from '../web/forms/read-form.ts';
import type { FormAnswer, PageRequest } from '../web/page-route.ts';

type Run = (tx: Tx, req: PageRequest) => Promise<FormAnswer>;

const to = (req: PageRequest, step: string): FormAnswer => ({ goTo: `${baseOf(req)}/steps/${step}` });
/** The next thing to do, whatever that is now. */
const onward = (req: PageRequest): FormAnswer => ({ goTo: baseOf(req) });

export const runTriage: Run = async (tx, req) => {
  const read = readForm(triage, req.fields, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: req.fields };
  const call = await recordTriage(tx, req.principal, callIdOf(req), read.data);
  return call.held ? to(req, 'triage') : onward(req);
};

/** Said from either side; a stop without a reason is a stop all the same. */
export const runHold: Run = async (tx, req) => {
  const reason = (req.fields.reason ?? '').trim();
  const read = readForm(
    liftInput,
    { reason: reason === '' ? `${req.principal.name} said stop` : reason },
    { lengths: 'in' },
  );
  if (!read.ok) return { faults: read.faults, typed: req.fields };
  await setHold(tx, req.principal, callIdOf(req), read.data.reason);
  return to(req, 'triage');
};

export const runLift: Run = async (tx, req) => {
  const read = readForm(liftInput, req.fields, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: req.fields };
  await liftHold(tx, req.principal, callIdOf(req), read.data.reason);
  return onward(req);
};

export const runClose: Run = async (tx, req) => {
  const read = readForm(closeInput, req.fields, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: req.fields };
  await closeCall(tx, req.principal, callIdOf(req), read.data.outcome);
  return { goTo: '/calls' };
};

export const runNote: Run = async (tx, req) => {
  const fields = Object.fromEntries(
    Object.entries(req.fields).filter(([name, text]) => name !== 'due' || text.trim() !== ''),
  );
  const read = readForm(newNote, fields, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: req.fields };
  await keepNote(tx, req.principal, callIdOf(req), read.data);
  return to(req, 'notes');
};

export const runDone: Run = async (tx, req) => {
  await finishPromise(tx, req.principal, callIdOf(req), req.params.noteId ?? '');
  return to(req, 'notes');
};

export const runAnswer: Run = async (tx, req) => {
  const read = readForm(answerQuestion, req.fields, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: req.fields };
  const call = await getCall(tx, req.principal, callIdOf(req));
  await keepAnswer(tx, req.principal, call.buildId, read.data);
  return { goTo: `${baseOf(req)}/steps/ratio?set-up=${read.data.setUpId ?? ''}` };
};
