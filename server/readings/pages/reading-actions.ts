import { correctReading, newReading } from '../../../shared/schemas/commands.ts';
import { newSetUp } from '../../../shared/schemas/method.ts';
import { getCall } from '../../calls/calls.ts';
import { readCorrection } from '../../calls/pages/correction-form.ts';
import { baseOf, callIdOf } from '../../calls/pages/sight.ts';
import type { Tx } from '../../database/database.ts';
import { type Fields, readForm } from '../../forms/read-form.ts';
import type { FormAnswer, PageRequest } from '../../http/page-route.ts';
import { notFound } from '../../problems/failure.ts';
import { getSetUp, startSetUp } from '../../set-ups/set-ups.ts';
import { keepReading, listReadings, replaceReading } from '../readings.ts';
import { dialUnit } from './reading-form.ts';

const ID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

const ratioAt = (given: PageRequest, setUpId: string): FormAnswer => ({
  goTo: `${baseOf(given)}/steps/ratio?set-up=${setUpId}`,
});

/** A word that was left unpicked counts as not said, where the list has that word. */
function withNotSaid(fields: Fields): Fields {
  const names = ['spring', 'lifter', 'lash', 'restsOn', 'alignment'].map((name) => `method.${name}`);
  const unsaid = names.filter((name) => (fields[name] ?? '') === '');
  return { ...fields, ...Object.fromEntries(unsaid.map((name) => [name, 'not-said'])) };
}

export async function runSetUp(tx: Tx, given: PageRequest): Promise<FormAnswer> {
  const read = readForm(newSetUp, withNotSaid(given.fields), { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: given.fields };
  const call = await getCall(tx, given.caller, callIdOf(given));
  const setUp = await startSetUp(tx, given.caller, call.buildId, read.data);
  return ratioAt(given, setUp.id);
}

/** Keeps a pass of the set-up the form names; turns are read by that set-up's dial. */
export async function runReading(tx: Tx, given: PageRequest): Promise<FormAnswer> {
  const { setUpId = '', ...fields } = given.fields;
  if (!ID.test(setUpId)) throw notFound('set-up');
  const call = await getCall(tx, given.caller, callIdOf(given));
  const setUp = await getSetUp(tx, given.caller, call.buildId, setUpId);
  const read = readForm(newReading, fields, { lengths: dialUnit(setUp), perTurn: setUp.method.perTurn });
  if (!read.ok) return { faults: read.faults, typed: given.fields };
  await keepReading(tx, given.caller, call.buildId, setUpId, read.data);
  return ratioAt(given, setUpId);
}

export async function runCorrection(tx: Tx, given: PageRequest): Promise<FormAnswer> {
  const readingId = given.params.readingId ?? '';
  const call = await getCall(tx, given.caller, callIdOf(given));
  const reading = (await listReadings(tx, given.caller, call.buildId)).find((each) => each.id === readingId);
  if (reading === undefined) throw notFound('reading');
  const setUp = await getSetUp(tx, given.caller, call.buildId, reading.setUpId);
  const read = readCorrection(
    correctReading,
    given.fields,
    { value: 'peak', along: ['zeroReturn'] },
    { lengths: dialUnit(setUp), perTurn: setUp.method.perTurn },
  );
  if (!read.ok) return { faults: read.faults, typed: given.fields };
  await replaceReading(tx, given.caller, call.buildId, readingId, read.data);
  return ratioAt(given, setUp.id);
}
