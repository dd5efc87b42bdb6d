import type { UnitSystem } from '../../../shared/quantities/units.ts';
import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { changeBuild, type Emit } from '../../events/change-build.ts';
import { type Build, getBuild } from './builds.ts';
import { BUILD_EVENTS } from './events.ts';

/** The units of a locked build, with their event; nothing where they are those already. */
export async function setUnits(
  tx: Tx,
  principal: Principal,
  build: { readonly id: string; readonly units: UnitSystem },
  units: UnitSystem,
  emit: Emit,
): Promise<void> {
  if (build.units === units) return;
  await tx
    .updateTable('build')
    .set({ units })
    .where('shop_id', '=', principal.shopId)
    .where('id', '=', build.id)
    .execute();
  await emit(BUILD_EVENTS['units-chosen'], { units });
}

/** Chooses what the calls about a build are spoken in, from either side. What was entered stays as it was entered. */
export async function chooseUnits(
  tx: Tx,
  principal: Principal,
  buildId: string,
  units: UnitSystem,
): Promise<Build> {
  await changeBuild(tx, principal, buildId, ({ build, emit }) => setUnits(tx, principal, build, units, emit));
  return getBuild(tx, principal, buildId);
}

/** The units alone, for a form that is read by them. */
export async function unitsOfBuild(tx: Tx, principal: Principal, buildId: string): Promise<UnitSystem> {
  return (await getBuild(tx, principal, buildId)).units;
}
