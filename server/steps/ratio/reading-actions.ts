import { correctReading, newReading } from '../../../shared/schemas/commands.ts';
import { newSetUp } from '../../../shared/schemas/method.ts';
import { baseOf, callIdOf } from '../../call/context.ts';
import { readCorrection } from '../../call/correction-form.ts';
import type { Tx } from '../../database/database.ts';
import { notFound } from '../../problems/failure.ts';
import { getCall } from '../../records/calls/calls.ts';
import { keepReading, listReadings, replaceReading } from '../../records/readings/readings.ts';
import { getSetUp, startSetUp } from '../../records/set-ups/set-ups.ts';
import { type Fields, readForm } from '../../web/forms/read-form.ts';
import type { FormAnswer, PageRequest } from '../../web/page-route.ts';
import { dialUnit } from './reading-form.ts';

const ID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

const ratioAt = (req: PageRequest, setUpId: string): FormAnswer => ({
  goTo: `${baseOf(req)}/steps/ratio?set-up=${setUpId}`,
});

/** A word that was left unpicked counts as not said, where the list has that word. */
function withNotSaid(fields: Fields): Fields {
  const names = ['spring', 'lifter', 'lash', 'restsOn', 'alignment'].map((name) => `method.${name}`);
  const unsaid = names.filter((name) => (fields[name] ?? '') === '');
  return { ...fields, ...Object.fromEntries(unsaid.map((name) => [name, 'not-said'])) };
}

export async function runSetUp(tx: Tx, req: PageRequest): Promise<FormAnswer> {
  const read = readForm(newSetUp, withNotSaid(req.fields), { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: req.fields };
  const call = await getCall(tx, req.principal, callIdOf(req));
  const setUp = await startSetUp(tx, req.principal, call.buildId, read.data);
  return ratioAt(req, setUp.id);
}

/** Keeps a pass of the set-up the form names; turns are read by that set-up's dial. */
export async function runReading(tx: Tx, req: PageRequest): Promise<FormAnswer> {
  const { setUpId = '', ...fields } = req.fields;
  if (!ID.test(setUpId)) throw notFound('set-up');
  const call = await getCall(tx, req.principal, callIdOf(req));
  const setUp = await getSetUp(tx, req.principal, call.buildId, setUpId);
  const read = readForm(newReading, fields, { lengths: dialUnit(setUp), perTurn: setUp.method.perTurn });
  if (!read.ok) return { faults: read.faults, typed: req.fields };
  await keepReading(tx, req.principal, call.buildId, setUpId, read.data);
  return ratioAt(req, setUpId);
}

export async function runCorrection(tx: Tx, req: PageRequest): Promise<FormAnswer> {
  const readingId = req.params.readingId ?? '';
  const call = await getCall(tx, req.principal, callIdOf(req));
  const reading = (await listReadings(tx, req.principal, call.buildId)).find((each) => each.id === readingId);
  if (reading === undefined) throw notFound('reading');
  const setUp = await getSetUp(tx, req.principal, call.buildId, reading.setUpId);
  const read = readCorrection(
    correctReading,
    req.fields,
    { value: 'peak', along: ['zeroReturn'] },
    { lengths: dialUnit(setUp), perTurn: setUp.method.perTurn },
  );
  if (!read.ok) return { faults: read.faults, typed: req.fields };
  await replaceReading(tx, req.principal, call.buildId, readingId, read.data);
  return ratioAt(req, setUp.id);
}
