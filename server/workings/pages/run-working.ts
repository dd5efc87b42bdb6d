import { getCall } from '../../calls/calls.ts';
import { baseOf, callIdOf } from '../../calls/pages/sight.ts';
import type { Registered } from '../../compute/registry.ts';
import type { Tx } from '../../database/database.ts';
import type { FormAnswer, PageRequest } from '../../http/page-route.ts';
import { Failure } from '../../problems/failure.ts';
import { computeForm } from '../../reference/compute-form.ts';
import { keepWorking } from '../workings.ts';
import { WORKED_IN, type WorkedStep } from './kinds.ts';

/** Computes what was typed and keeps it; a fault leaves the form as it stands. */
export async function runWorking(
  tx: Tx,
  given: PageRequest,
  step: WorkedStep,
  computations: ReadonlyMap<string, Registered>,
): Promise<FormAnswer> {
  const { key: _, form: __, computation: name = '', ...typed } = given.fields;
  const names: readonly string[] = WORKED_IN[step];
  const each = names.includes(name) ? computations.get(name) : undefined;
  if (each === undefined) throw new Failure('not-found', 'nothing is here');
  const computed = computeForm(each, typed);
  if (computed.faults.length > 0) return { faults: computed.faults, typed: given.fields };
  const call = await getCall(tx, given.caller, callIdOf(given));
  await keepWorking(tx, given.caller, call.buildId, each, computed.body);
  return { goTo: `${baseOf(given)}/steps/${step}?of=${each.name}` };
}
