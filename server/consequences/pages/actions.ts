import { reviseBuild as reviseInput } from '../../../shared/schemas/commands.ts';
import { getBuild } from '../../builds/builds.ts';
import { changedFields, mergeSpec } from '../../builds/pages/merge-spec.ts';
import { reviseBuild } from '../../builds/revisions.ts';
import { getCall } from '../../calls/calls.ts';
import { baseOf, callIdOf } from '../../calls/pages/sight.ts';
import type { Tx } from '../../database/database.ts';
import type { FormAnswer, PageRequest } from '../../http/page-route.ts';
import { notFound } from '../../problems/failure.ts';
import { keepConsequences } from '../consequences.ts';

const ID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

const back = (given: PageRequest, setUpId?: string): FormAnswer => ({
  goTo: `${baseOf(given)}/steps/consequences${setUpId === undefined ? '' : `?set-up=${setUpId}`}`,
});

/** Puts the figures that the page shows on the record. */
export async function runKeepConsequences(tx: Tx, given: PageRequest): Promise<FormAnswer> {
  const setUpId = given.fields.setUpId ?? '';
  if (!ID.test(setUpId)) throw notFound('set-up');
  const call = await getCall(tx, given.caller, callIdOf(given));
  await keepConsequences(tx, given.caller, call.buildId, setUpId);
  return back(given, setUpId);
}

/** Keeps what was taken on the engine as a new revision; what the form does not have stays as it is. */
export async function runClearances(tx: Tx, given: PageRequest): Promise<FormAnswer> {
  const { revision = '', part: _, ...fields } = given.fields;
  const call = await getCall(tx, given.caller, callIdOf(given));
  const build = await getBuild(tx, given.caller, call.buildId);
  const merged = mergeSpec(build.spec, fields);
  if (!merged.ok) return { faults: merged.faults, typed: given.fields };
  const expected = /^\d{1,9}$/.test(revision) ? Number(revision) : 0;
  if (expected === build.revision && changedFields(build.spec, fields).length === 0) return back(given);
  const input = reviseInput.parse({ spec: merged.spec, reason: 'gaps taken on the engine' });
  await reviseBuild(tx, given.caller, call.buildId, input, expected);
  return back(given);
}
