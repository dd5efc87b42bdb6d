import type { z } from 'zod';
import type { newSetUp } from '../../../shared/schemas/method.ts';
import { valveName } from '../../call/context.ts';
import type { FormSource } from '../../call/step-form.ts';
import { listArms } from '../../records/arms/arms.ts';
import { listPlacements, nowOnValves } from '../../records/arms/placements.ts';

/**
 * Why the arm that was picked cannot be on that valve by the record: a form that began as the last one still has its arm
 * when another valve is typed.
 */
export async function sitsElsewhere(
  { armId, ...place }: z.output<typeof newSetUp>,
  { tx, principal, call }: FormSource,
): Promise<string | undefined> {
  if (armId === undefined) return undefined;
  const now = nowOnValves(await listPlacements(tx, principal, call.buildId));
  const own = now.find((each) => each.armId === armId);
  const there = now.find((each) => valveName(each) === valveName(place));
  if ((own === undefined && there === undefined) || there?.armId === armId) return undefined;
  const arms = await listArms(tx, principal, call.buildId);
  const nameOf = (id: string) => arms.find((arm) => arm.id === id)?.name ?? 'another arm';
  const sits = own === undefined ? 'sits on no valve' : `sits on ${valveName(own)}`;
  const other = there === undefined ? '' : `, and ${nameOf(there.armId)} on ${valveName(place)}`;
  return `${nameOf(armId)} ${sits} by the record${other}. Pick the arm that is there; one that was moved is put there under rocker arms first`;
}
