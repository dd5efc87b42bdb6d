import type { StrikeWorking } from '../../../shared/schemas/commands.ts';
import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { changeBuild } from '../../events/change-build.ts';
import { Failure, notFound } from '../../problems/failure.ts';
import { CONSEQUENCE_EVENTS } from '../../records/consequences/events.ts';
import { keptConsequences } from '../../records/consequences/kept.ts';
import { loadBuildRecord } from '../../records/whole-build/load-build.ts';

/** Strikes kept figures out by their line, with the reason; the line stays on the record. */
export function strikeConsequences(
  tx: Tx,
  principal: Principal,
  buildId: string,
  line: number,
  { reason }: StrikeWorking,
): Promise<{ readonly seq: number; readonly line: number; readonly reason: string }> {
  return changeBuild(tx, principal, buildId, async ({ emit }) => {
    const { events } = await loadBuildRecord(tx, principal, { buildId }, { access: 'write' });
    const kept = keptConsequences(events).find(({ seq }) => seq === line);
    if (kept === undefined) throw notFound('line with what a ratio does');
    if (kept.struck !== undefined)
      throw new Failure('conflict', `line ${line} is struck out already: ${kept.struck}`);
    const seq = await emit(CONSEQUENCE_EVENTS['consequences-struck'], { line, reason });
    return { seq, line, reason };
  });
}
