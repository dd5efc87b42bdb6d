import { newArm, placeArm, reviseBuild as reviseInput } from '../../../shared/schemas/commands.ts';
import type { Tx } from '../../database/database.ts';
import { addArm } from '../../records/arms/arms.ts';
import { placeArmOnValve } from '../../records/arms/placements.ts';
import { getBuild } from '../../records/builds/builds.ts';
import { reviseBuild } from '../../records/builds/revisions.ts';
import { getCall } from '../../records/calls/calls.ts';
import { readForm } from '../../web/forms/read-form.ts';
import type { FormAnswer, PageRequest } from '../../web/page-route.ts';
import { baseOf, callIdOf } from '../context.ts';
import { changedFields, mergeSpec } from './merge-spec.ts';
import { partOf, type SpecStep } from './spec-step.ts';

const REASONS = {
  build: 'engine and springs',
  cam: 'cam card',
  rockers: 'what the rockers are sold as',
} as const;
export type SpecForm = keyof typeof REASONS;

function next(req: PageRequest, form: SpecForm): FormAnswer {
  const base = baseOf(req);
  if (form === 'rockers') return { goTo: `${base}/steps/parts` };
  const shown = req.fields.part ?? '';
  if (shown === '') return { goTo: `${base}/steps/${form}` };
  const step: SpecStep = form;
  const part = partOf(step, String(Number(shown) + 1));
  return { goTo: part === 1 ? base : `${base}/steps/${step}?part=${part}` };
}

/** Keeps one new revision with the form's part of the specification; what others keep elsewhere stays. */
export async function runSpec(tx: Tx, req: PageRequest, form: SpecForm): Promise<FormAnswer> {
  const { revision = '', ...fields } = req.fields;
  const call = await getCall(tx, req.principal, callIdOf(req));
  const build = await getBuild(tx, req.principal, call.buildId);
  const merged = mergeSpec(build.spec, fields);
  if (!merged.ok) return { faults: merged.faults, typed: req.fields };
  const expected = /^\d{1,9}$/.test(revision) ? Number(revision) : 0;
  if (expected === build.revision && changedFields(build.spec, fields).length === 0) return next(req, form);
  const input = reviseInput.parse({ spec: merged.spec, reason: REASONS[form] });
  await reviseBuild(tx, req.principal, call.buildId, input, expected);
  return next(req, form);
}

export async function runArm(tx: Tx, req: PageRequest): Promise<FormAnswer> {
  const read = readForm(newArm, req.fields, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: req.fields };
  const call = await getCall(tx, req.principal, callIdOf(req));
  await addArm(tx, req.principal, call.buildId, read.data);
  return { goTo: `${baseOf(req)}/steps/parts` };
}

export async function runPlace(tx: Tx, req: PageRequest): Promise<FormAnswer> {
  const read = readForm(placeArm, req.fields, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: req.fields };
  const call = await getCall(tx, req.principal, callIdOf(req));
  await placeArmOnValve(tx, req.principal, call.buildId, read.data);
  return { goTo: `${baseOf(req)}/steps/parts` };
}
