import {
  answerQuestion,
  closeCall as closeInput,
  liftHold as liftInput,
  newNote,
  triage,
} from '../../../shared/schemas/commands.ts';
import { keepAnswer } from '../../answers/answers.ts';
import type { Tx } from '../../database/database.ts';
import { readForm } from '../../forms/read-form.ts';
import type { FormAnswer, PageRequest } from '../../http/page-route.ts';
import { finishPromise, keepNote } from '../../notes/notes.ts';
import { getCall } from '../calls.ts';
import { closeCall } from '../change-call.ts';
import { liftHold, recordTriage, setHold } from '../hold.ts';
import { baseOf, callIdOf } from './sight.ts';

type Run = (tx: Tx, given: PageRequest) => Promise<FormAnswer>;

const to = (given: PageRequest, step: string): FormAnswer => ({ goTo: `${baseOf(given)}/steps/${step}` });
/** The next thing to do, whatever that is now. */
const onward = (given: PageRequest): FormAnswer => ({ goTo: baseOf(given) });

export const runTriage: Run = async (tx, given) => {
  const read = readForm(triage, given.fields, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: given.fields };
  const call = await recordTriage(tx, given.caller, callIdOf(given), read.data);
  return call.held ? to(given, 'triage') : onward(given);
};

/** Said from either side; a stop without a reason is a stop all the same. */
export const runHold: Run = async (tx, given) => {
  const reason = (given.fields.reason ?? '').trim();
  const read = readForm(
    liftInput,
    { reason: reason === '' ? `${given.caller.name} said stop` : reason },
    { lengths: 'in' },
  );
  if (!read.ok) return { faults: read.faults, typed: given.fields };
  await setHold(tx, given.caller, callIdOf(given), read.data.reason);
  return to(given, 'triage');
};

export const runLift: Run = async (tx, given) => {
  const read = readForm(liftInput, given.fields, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: given.fields };
  await liftHold(tx, given.caller, callIdOf(given), read.data.reason);
  return onward(given);
};

export const runClose: Run = async (tx, given) => {
  const read = readForm(closeInput, given.fields, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: given.fields };
  await closeCall(tx, given.caller, callIdOf(given), read.data.outcome);
  return { goTo: '/calls' };
};

export const runNote: Run = async (tx, given) => {
  const fields = Object.fromEntries(
    Object.entries(given.fields).filter(([name, text]) => name !== 'due' || text.trim() !== ''),
  );
  const read = readForm(newNote, fields, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: given.fields };
  await keepNote(tx, given.caller, callIdOf(given), read.data);
  return to(given, 'notes');
};

export const runDone: Run = async (tx, given) => {
  await finishPromise(tx, given.caller, callIdOf(given), given.params.noteId ?? '');
  return to(given, 'notes');
};

export const runAnswer: Run = async (tx, given) => {
  const read = readForm(answerQuestion, given.fields, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: given.fields };
  const call = await getCall(tx, given.caller, callIdOf(given));
  await keepAnswer(tx, given.caller, call.buildId, read.data);
  return { goTo: `${baseOf(given)}/steps/ratio?set-up=${read.data.setUpId ?? ''}` };
};
