import { type Selectable, sql } from 'kysely';
import { InputFaults } from '../../../shared/problems/faults.ts';
import type { StrikeWorking } from '../../../shared/schemas/commands.ts';
import { author, type Principal } from '../../auth/principal.ts';
import { withReceived } from '../../compute/faults-of.ts';
import type { Answer, Registered } from '../../compute/registry.ts';
import { saidInputs } from '../../compute/said-inputs.ts';
import type { Tx } from '../../database/database.ts';
import { everyColumn } from '../../database/tables/every-column.ts';
import type { WorkingTable } from '../../database/tables/record.ts';
import { changeBuild } from '../../events/change-build.ts';
import type { TurningCheck } from '../calls/stop-signs.ts';
import { type Entry, listEntries, shown } from '../corrections/entries.ts';
import { strikeEntry } from '../corrections/replace.ts';
import { WORKING_EVENTS } from './events.ts';
import { isTurning } from './turning.ts';

/** A computation made within a call and kept with what went in. */
export interface Working extends Entry {
  readonly computation: string;
  readonly inputs: unknown;
  /** The answer as JSON has it, in inch units. */
  readonly answer: unknown;
  readonly revision: number;
}

/** What it is called where it is struck out: `cam timing`. */
const READ_AS = sql<string>`replace(computation, '-', ' ')`.as('read_as');
type Row = Selectable<WorkingTable> & { readonly read_as: string };

export const WORKINGS = {
  events: { struck: WORKING_EVENTS['working-struck'] },
  query: (tx: Tx) => tx.selectFrom('working').selectAll().select(READ_AS).orderBy('seq'),
  show: ({ computation, inputs, answer, revision }: Row, entry: Entry): Working => ({
    ...entry,
    computation,
    inputs,
    answer,
    revision,
  }),
};

/** A computation of a build with its answer, ready to be kept. */
export interface WorkedOut {
  readonly computation: Registered;
  readonly inputs: unknown;
  readonly answer: Answer;
}

/**
 * Computes what is to be kept with a build, before the transaction that keeps it: no lock is held meanwhile. `run` says
 * where it is done.
 */
export async function workOut(
  computation: Registered,
  given: unknown,
  run: (inputs: unknown) => Answer | Promise<Answer>,
): Promise<WorkedOut> {
  const { inputs, faults } = saidInputs(computation.input, given);
  if (faults.length > 0) throw new InputFaults(faults.map((fault) => withReceived(fault, given)));
  return { computation, inputs, answer: await run(inputs) };
}

/** Keeps inputs and answer on the record of the build. Under a stop what takes turning it is refused. */
export async function keepWorking(
  tx: Tx,
  principal: Principal,
  buildId: string,
  { computation, inputs, answer }: WorkedOut,
  refuseTurning: TurningCheck,
): Promise<{ working: Working; answer: Answer }> {
  return changeBuild(tx, principal, buildId, async ({ build, emit }) => {
    if (isTurning(computation.name)) await refuseTurning(tx, principal, buildId);
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
          replaces: null,
          ...author(principal),
        }),
      )
      .returningAll()
      .returning(READ_AS)
      .executeTakeFirstOrThrow();
    // As it was computed: the database orders the members of an object by itself.
    return { working: { ...shown(WORKINGS, row), inputs, answer }, answer };
  });
}

/** Every one that was kept, struck ones and what struck them out included. */
export const listWorkings = (tx: Tx, principal: Principal, buildId: string): Promise<Working[]> =>
  listEntries(WORKINGS, tx, principal, buildId);

/** Strikes a kept computation out, with the reason; what it was stays on record. */
export async function strikeWorking(
  tx: Tx,
  principal: Principal,
  buildId: string,
  id: string,
  { reason }: StrikeWorking,
): Promise<Working> {
  return strikeEntry(WORKINGS, tx, principal, { buildId, id, reason }, (old, said) => ({
    struck: { computation: old.computation, ...said },
    keep: (columns) =>
      tx
        .insertInto('working')
        .values(
          everyColumn<WorkingTable>({
            computation: old.computation,
            inputs: JSON.stringify(old.inputs),
            answer: JSON.stringify(old.answer),
            revision: old.revision,
            ...columns,
          }),
        )
        .returningAll()
        .returning(READ_AS)
        .executeTakeFirstOrThrow(),
  }));
}
