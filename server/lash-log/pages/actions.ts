import { newLashLine } from '../../../shared/schemas/lash-log.ts';
import { getCall } from '../../calls/calls.ts';
import { baseOf, callIdOf } from '../../calls/pages/sight.ts';
import type { Tx } from '../../database/database.ts';
import { readForm } from '../../forms/read-form.ts';
import type { FormAnswer, PageRequest } from '../../http/page-route.ts';
import { keepLash } from '../lash-log.ts';

/** Keeps a line of the lash log as the form has it. */
export async function runLash(tx: Tx, given: PageRequest): Promise<FormAnswer> {
  const { key: _, form: __, ...fields } = given.fields;
  const read = readForm(newLashLine, fields, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: given.fields };
  const { buildId } = await getCall(tx, given.caller, callIdOf(given));
  await keepLash(tx, given.caller, buildId, read.data);
  return { goTo: `${baseOf(given)}/steps/adjuster?of=lash` };
}
