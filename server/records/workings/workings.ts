import type { Selectable } from 'kysely';
import { InputFaults } from '../../../shared/problems/faults.ts';
import { author, type Principal } from '../../auth/principal.ts';
import { withReceived } from '../../compute/faults-of.ts';
import type { Answer, Registered } from '../../compute/registry.ts';
import { saidInputs } from '../../compute/said-inputs.ts';
import type { Tx } from '../../database/database.ts';
import { everyColumn } from '../../database/tables/every-column.ts';
import type { WorkingTable } from '../../database/tables/record.ts';
import { changeBuild } from '../../events/change-build.ts';
import { rowsOfBuild } from '../../events/rows-of-build.ts';
import { WORKING_EVENTS } from './events.ts';

/** A computation made within a call and kept with what went in. */
export interface Working {
  readonly id: string;
  readonly computation: string;
  readonly inputs: unknown;
  /** The answer as JSON has it, in inch units. */
  readonly answer: unknown;
  readonly revision: number;
  readonly seq: number;
  readonly by: string;
  readonly at: Date;
}

/** Computes, and keeps inputs and answer on the record of the build. Figures alone: a stop closes nothing of it. */
export async function keepWorking(
  tx: Tx,
  principal: Principal,
  buildId: string,
  computation: Registered,
  given: unknown,
): Promise<{ working: Working; answer: Answer }> {
  const { inputs, faults } = saidInputs(computation.input, given);
  if (faults.length > 0) throw new InputFaults(faults.map((fault) => withReceived(fault, given)));
  return changeBuild(tx, principal, buildId, async ({ build, emit }) => {
    const answer = computation.run(inputs, 'inch', 'engine');
    const { name, title } = computation;
    const seq = await emit(WORKING_EVENTS['working-kept'], { computation: name, title });
    const row = await tx
      .insertInto('working')
      .values(
        everyColumn<WorkingTable>({
          shop_id: principal.shopId,
          build_id: buildId,
          computation: computation.name,
          inputs: JSON.stringify(inputs),
          answer: JSON.stringify(answer),
          revision: build.revision,
          seq,
          ...author(principal),
        }),
      )
      .returning(['id', 'created_at'])
      .executeTakeFirstOrThrow();
    const working = {
      id: row.id,
      computation: computation.name,
      inputs,
      answer,
      revision: build.revision,
      seq,
      by: principal.name,
      at: row.created_at,
    };
    return { working, answer };
  });
}

export const selectWorkings = (tx: Tx) => tx.selectFrom('working').selectAll().orderBy('seq');

export const toWorking = (row: Selectable<WorkingTable>): Working => ({
  id: row.id,
  computation: row.computation,
  inputs: row.inputs,
  answer: row.answer,
  revision: row.revision,
  seq: row.seq,
  by: row.by_name,
  at: row.created_at,
});

export async function listWorkings(tx: Tx, principal: Principal, buildId: string): Promise<Working[]> {
  return (await rowsOfBuild(tx, principal, buildId, selectWorkings(tx))).map(toWorking);
}
