import { getCall } from '../../calls/calls.ts';
import { baseOf, callIdOf } from '../../calls/pages/sight.ts';
import type { Registered } from '../../compute/registry.ts';
import type { Tx } from '../../database/database.ts';
import type { FormAnswer, PageRequest } from '../../http/page-route.ts';
import { Failure } from '../../problems/failure.ts';
import { computeForm } from '../../reference/compute-form.ts';
import { keepWorking } from '../workings.ts';
import { PART_FORMS } from './forms/of-part.ts';
import { COMPUTED_BY, partNamed, type WorkedStep } from './kinds.ts';

/** Computes what was typed and keeps it; a fault leaves the form as it stands. */
export async function runWorking(
  tx: Tx,
  given: PageRequest,
  step: WorkedStep,
  computations: ReadonlyMap<string, Registered>,
): Promise<FormAnswer> {
  const { key: _, form: __, computation, part: name = computation, ...typed } = given.fields;
  const part = partNamed(step, name);
  const each = part === undefined ? undefined : computations.get(COMPUTED_BY[part] ?? '');
  if (part === undefined || each === undefined) throw new Failure('not-found', 'nothing is here');
  const own = PART_FORMS[part];
  const computed = computeForm(each, own === undefined ? typed : own.toTyped(typed));
  if (computed.faults.length > 0) {
    const faults = own === undefined ? computed.faults : computed.faults.map((fault) => own.faultAt(fault));
    return { faults, typed: given.fields };
  }
  const call = await getCall(tx, given.caller, callIdOf(given));
  await keepWorking(tx, given.caller, call.buildId, each, computed.body);
  return { goTo: `${baseOf(given)}/steps/${step}?of=${part}` };
}
