import type { Selectable } from 'kysely';
import type { z } from 'zod';
import type { placeArm } from '../../../shared/schemas/commands.ts';
import { author, type Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { ArmPlacementTable } from '../../database/tables/builds.ts';
import { everyColumn } from '../../database/tables/every-column.ts';
import { changeBuild } from '../../events/change-build.ts';
import { rowOfBuild, rowsOfBuild } from '../../events/rows-of-build.ts';
import { ARM_EVENTS } from './events.ts';

export interface Placement {
  readonly id: string;
  readonly armId: string;
  readonly cylinder: number;
  readonly valve: string;
  readonly reason: string;
  readonly seq: number;
  readonly by: string;
  readonly at: Date;
}

export async function placeArmOnValve(
  tx: Tx,
  principal: Principal,
  buildId: string,
  input: z.output<typeof placeArm>,
): Promise<Placement> {
  return changeBuild(tx, principal, buildId, async ({ emit }) => {
    const arm = await rowOfBuild(principal, buildId, input.armId, 'arm', tx.selectFrom('arm').select('name'));
    const { armId, cylinder, valve, reason } = input;
    const placed = { arm: arm.name, armId, cylinder, valve, reason };
    const seq = await emit(ARM_EVENTS['arm-placed'], placed);
    const row = await tx
      .insertInto('arm_placement')
      .values(
        everyColumn<ArmPlacementTable>({
          shop_id: principal.shopId,
          build_id: buildId,
          arm_id: input.armId,
          cylinder: input.cylinder,
          valve: input.valve,
          reason: input.reason,
          seq,
          ...author(principal),
        }),
      )
      .returning(['id', 'created_at'])
      .executeTakeFirstOrThrow();
    return { id: row.id, ...input, seq, by: principal.name, at: row.created_at };
  });
}

export const selectPlacements = (tx: Tx) => tx.selectFrom('arm_placement').selectAll().orderBy('seq');

export const toPlacement = (row: Selectable<ArmPlacementTable>): Placement => ({
  id: row.id,
  armId: row.arm_id,
  cylinder: row.cylinder,
  valve: row.valve,
  reason: row.reason,
  seq: row.seq,
  by: row.by_name,
  at: row.created_at,
});

/** Every placement in order; the last one of a valve is what sits there now, unless that arm has moved on. */
export async function listPlacements(tx: Tx, principal: Principal, buildId: string): Promise<Placement[]> {
  return (await rowsOfBuild(tx, principal, buildId, selectPlacements(tx))).map(toPlacement);
}

interface Place {
  readonly cylinder: number;
  readonly valve: string;
}

const isOn =
  (place: Place) =>
  ({ cylinder, valve }: Place): boolean =>
    cylinder === place.cylinder && valve === place.valve;

/** Which arm sits on which valve now: for each arm its last place, for each valve the last arm put there. */
export function nowOnValves(placements: readonly Placement[]): Placement[] {
  const byValve = new Map<string, Placement>();
  for (const placement of placements) {
    for (const [valve, standing] of byValve) if (standing.armId === placement.armId) byValve.delete(valve);
    byValve.set(`${placement.cylinder} ${placement.valve}`, placement);
  }
  return [...byValve.values()].sort((a, b) => a.cylinder - b.cylinder || a.valve.localeCompare(b.valve));
}

/** An arm that was put on another valve, or on one where another arm sat. Where an arm sits at first is no move. */
interface Move {
  readonly placement: Placement;
  /** Where the arm sat before. */
  readonly from?: Place;
  /** The arm that sat there before. */
  readonly inPlaceOf?: string;
}

/** The placements that moved something, in order. */
export function movesOf(placements: readonly Placement[]): Move[] {
  return placements.flatMap((placement, index): Move[] => {
    const before = placements.slice(0, index);
    const from = before.findLast(({ armId }) => armId === placement.armId);
    const there = nowOnValves(before).find(isOn(placement));
    const another = there !== undefined && there.armId !== placement.armId;
    if (!another && (from === undefined || isOn(from)(placement))) return [];
    return [
      {
        placement,
        ...(from === undefined || isOn(from)(placement) ? {} : { from }),
        ...(another ? { inPlaceOf: there.armId } : {}),
      },
    ];
  });
}

/**
 * The arm that sat on a valve when an entry was made. Before any was placed there it is the first one, if that had been
 * placed nowhere else: where an arm sits is often said only after its valve was read.
 */
export function armThen(placements: readonly Placement[], place: Place, line: number): string | undefined {
  const first = placements.find(isOn(place));
  if (first === undefined || first.seq < line)
    return nowOnValves(placements.filter(({ seq }) => seq < line)).find(isOn(place))?.armId;
  return placements.find(({ armId }) => armId === first.armId) === first ? first.armId : undefined;
}
