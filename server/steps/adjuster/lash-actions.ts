import { newLashLine } from '../../../shared/schemas/lash-log.ts';
import { baseOf, callIdOf } from '../../call/context.ts';
import type { Tx } from '../../database/database.ts';
import { getCall } from '../../records/calls/calls.ts';
import { keepLash } from '../../records/lash-log/lash-log.ts';
import { readForm } from '../../web/forms/read-form.ts';
import type { FormAnswer, PageRequest } from '../../web/page-route.ts';

/** Keeps a line of the lash log as the form has it. */
export async function runLash(tx: Tx, req: PageRequest): Promise<FormAnswer> {
  const { key: _, form: __, ...fields } = req.fields;
  const read = readForm(newLashLine, fields, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: req.fields };
  const { buildId } = await getCall(tx, req.principal, callIdOf(req));
  await keepLash(tx, req.principal, buildId, read.data);
  return { goTo: `${baseOf(req)}/steps/adjuster?of=lash` };
}
