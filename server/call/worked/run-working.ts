import type { Registered } from '../../compute/registry.ts';
import { computeForm } from '../../compute-forms/compute-form.ts';
import type { Tx } from '../../database/database.ts';
import { Failure } from '../../problems/failure.ts';
import { getCall } from '../../records/calls/calls.ts';
import { keepWorking } from '../../records/workings/workings.ts';
import type { FormAnswer, PageRequest } from '../../web/page-route.ts';
import { baseOf, callIdOf } from '../context.ts';
import { PART_FORMS } from './forms/of-part.ts';
import { COMPUTED_BY, partNamed, type WorkedStep } from './parts.ts';

/** Computes what was typed and keeps it; a fault leaves the form as it stands. */
export async function runWorking(
  tx: Tx,
  req: PageRequest,
  step: WorkedStep,
  computations: ReadonlyMap<string, Registered>,
): Promise<FormAnswer> {
  const { key: _, form: __, computation, part: name = computation, ...typed } = req.fields;
  const part = partNamed(step, name);
  const each = part === undefined ? undefined : computations.get(COMPUTED_BY[part] ?? '');
  if (part === undefined || each === undefined) throw new Failure('not-found', 'nothing is here');
  const own = PART_FORMS[part];
  const computed = computeForm(each, own === undefined ? typed : own.toTyped(typed));
  if (computed.faults.length > 0) {
    const faults = own === undefined ? computed.faults : computed.faults.map((fault) => own.faultAt(fault));
    return { faults, typed: req.fields };
  }
  const call = await getCall(tx, req.principal, callIdOf(req));
  await keepWorking(tx, req.principal, call.buildId, each, computed.body);
  return { goTo: `${baseOf(req)}/steps/${step}?of=${part}` };
}
