import { newArm, placeArm, reviseBuild as reviseInput } from '../../../shared/schemas/commands.ts';
import { getCall } from '../../calls/calls.ts';
import { baseOf, callIdOf } from '../../calls/pages/sight.ts';
import type { Tx } from '../../database/database.ts';
import { readForm } from '../../forms/read-form.ts';
import type { FormAnswer, PageRequest } from '../../http/page-route.ts';
import { addArm } from '../arms.ts';
import { getBuild } from '../builds.ts';
import { placeArmOnValve } from '../placements.ts';
import { reviseBuild } from '../revisions.ts';
import { changedFields, mergeSpec } from './merge-spec.ts';
import { partOf, type SpecStep } from './spec-step.ts';

const REASONS = {
  build: 'engine and springs',
  cam: 'cam card',
  rockers: 'what the rockers are sold as',
} as const;
export type SpecForm = keyof typeof REASONS;

function next(given: PageRequest, form: SpecForm): FormAnswer {
  const base = baseOf(given);
  if (form === 'rockers') return { goTo: `${base}/steps/parts` };
  const shown = given.fields.part ?? '';
  if (shown === '') return { goTo: `${base}/steps/${form}` };
  const step: SpecStep = form;
  const part = partOf(step, String(Number(shown) + 1));
  return { goTo: part === 1 ? base : `${base}/steps/${step}?part=${part}` };
}

/** Keeps one new revision with the form's part of the specification; what others keep elsewhere stays. */
export async function runSpec(tx: Tx, given: PageRequest, form: SpecForm): Promise<FormAnswer> {
  const { revision = '', ...fields } = given.fields;
  const call = await getCall(tx, given.caller, callIdOf(given));
  const build = await getBuild(tx, given.caller, call.buildId);
  const merged = mergeSpec(build.spec, fields);
  if (!merged.ok) return { faults: merged.faults, typed: given.fields };
  const expected = /^\d{1,9}$/.test(revision) ? Number(revision) : 0;
  if (expected === build.revision && changedFields(build.spec, fields).length === 0) return next(given, form);
  const input = reviseInput.parse({ spec: merged.spec, reason: REASONS[form] });
  await reviseBuild(tx, given.caller, call.buildId, input, expected);
  return next(given, form);
}

export async function runArm(tx: Tx, given: PageRequest): Promise<FormAnswer> {
  const read = readForm(newArm, given.fields, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: given.fields };
  const call = await getCall(tx, given.caller, callIdOf(given));
  await addArm(tx, given.caller, call.buildId, read.data);
  return { goTo: `${baseOf(given)}/steps/parts` };
}

export async function runPlace(tx: Tx, given: PageRequest): Promise<FormAnswer> {
  const read = readForm(placeArm, given.fields, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: given.fields };
  const call = await getCall(tx, given.caller, callIdOf(given));
  await placeArmOnValve(tx, given.caller, call.buildId, read.data);
  return { goTo: `${baseOf(given)}/steps/parts` };
}
