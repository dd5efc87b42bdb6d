import { reviseBuild as reviseInput } from '../../../shared/schemas/commands.ts';
import { keepConsequences } from '../../assessment/consequences/consequences.ts';
import { baseOf, callIdOf } from '../../call/context.ts';
import { changedFields, mergeSpec } from '../../call/spec/merge-spec.ts';
import type { Tx } from '../../database/database.ts';
import { notFound } from '../../problems/failure.ts';
import { getBuild } from '../../records/builds/builds.ts';
import { reviseBuild } from '../../records/builds/revisions.ts';
import { getCall } from '../../records/calls/calls.ts';
import type { FormAnswer, PageRequest } from '../../web/page-route.ts';

const ID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

const back = (req: PageRequest, setUpId?: string): FormAnswer => ({
  goTo: `${baseOf(req)}/steps/consequences${setUpId === undefined ? '' : `?set-up=${setUpId}`}`,
});

/** Puts the figures that the page shows on the record. */
export async function runKeepConsequences(tx: Tx, req: PageRequest): Promise<FormAnswer> {
  const setUpId = req.fields.setUpId ?? '';
  if (!ID.test(setUpId)) throw notFound('set-up');
  const call = await getCall(tx, req.principal, callIdOf(req));
  await keepConsequences(tx, req.principal, call.buildId, setUpId);
  return back(req, setUpId);
}

/** Keeps what was taken on the engine as a new revision; what the form does not have stays as it is. */
export async function runClearances(tx: Tx, req: PageRequest): Promise<FormAnswer> {
  const { revision = '', part: _, ...fields } = req.fields;
  const call = await getCall(tx, req.principal, callIdOf(req));
  const build = await getBuild(tx, req.principal, call.buildId);
  const merged = mergeSpec(build.spec, fields);
  if (!merged.ok) return { faults: merged.faults, typed: req.fields };
  const expected = /^\d{1,9}$/.test(revision) ? Number(revision) : 0;
  if (expected === build.revision && changedFields(build.spec, fields).length === 0) return back(req);
  const input = reviseInput.parse({ spec: merged.spec, reason: 'gaps taken on the engine' });
  await reviseBuild(tx, req.principal, call.buildId, input, expected);
  return back(req);
}
