import type { z } from 'zod';
import { defined } from '../../shared/defined.ts';
import { InputFaults } from '../../shared/problems/faults.ts';
import type { Principal } from '../auth/principal.ts';
import type { Tx } from '../database/database.ts';
import { noteBeforeStop, noted } from '../events/tx-notes.ts';
import { unitsOfBuild } from '../records/builds/units.ts';
import { type Call, getCall } from '../records/calls/calls.ts';
import type { Deps } from '../web/deps.ts';
import type { FormAnswer } from '../web/form-route.ts';
import { type Fields, type FormFault, type FormOptions, readForm } from '../web/forms/read-form.ts';
import type { PageRequest } from '../web/page-request.ts';
import { baseOf, callIdOf } from './context.ts';

/** What of the service a form may use. */
type Served = Pick<Deps, 'computations' | 'now'>;

/** What a form of a step is run with beside what was typed. */
export interface FormSource {
  readonly tx: Tx;
  readonly req: PageRequest;
  readonly principal: Principal;
  readonly call: Call;
  readonly computations: Served['computations'];
  readonly now: Date;
}

/** A form that a step posts: its path below the call, and what names its fields. */
interface NamedForm {
  /** Below `/calls/{id}` and `/bench`: `/readings`. */
  readonly path: string;
  /** Left out, both sides have it. */
  readonly side?: 'desk';
  /** What its fields are named by, where they go by the schema's own names. */
  readonly schema?: z.ZodObject;
  /** Fields that it reads by itself beside those of the schema. */
  readonly beside: readonly string[];
}

/** One that is done in its transaction. */
interface PostedForm extends NamedForm {
  post(tx: Tx, req: PageRequest, served: Served): Promise<FormAnswer>;
}

/** What a form may use that works before its transaction. */
export type ServedBefore = Pick<Deps, 'computations' | 'db' | 'work' | 'computeLimits'>;

/** One that works before its transaction, and gives what is done in it. */
interface PreparedForm extends NamedForm {
  before(req: PageRequest, served: ServedBefore): Promise<(tx: Tx, req: PageRequest) => Promise<FormAnswer>>;
}

export type StepForm = PostedForm | PreparedForm;

/** Where a form leads: a step with what its address says, the call's next step, or a page beside the steps. */
export type Destination = { readonly step: string } | { readonly page: string };

/** How numbers without a unit are read: in the units that the call is spoken in. */
export async function spokenIn(tx: Tx, principal: Principal, call: Call): Promise<FormOptions> {
  const units = await unitsOfBuild(tx, principal, call.buildId);
  return { lengths: units === 'metric' ? 'mm' : 'in' };
}

/** An address that says which line was kept, so that its page can begin with it. */
function withKept(address: string, seq: number | undefined): string {
  if (seq === undefined) return address;
  const url = new URL(address, 'http://here.invalid');
  url.searchParams.set('kept', String(seq));
  return `${url.pathname}${url.search}${url.hash}`;
}

export function addressOf(req: PageRequest, to: Destination, kept?: number): FormAnswer {
  const base = baseOf(req);
  return { goTo: withKept('step' in to ? `${base}/steps/${to.step}` : `${base}${to.page}`, kept) };
}

/** Faults that a command finds, at the fields of the form. */
export const asFormFaults = ({ faults }: InputFaults): FormFault[] =>
  faults.map(({ pointer, detail, ambiguities }) => ({
    field: pointer.slice(1).replaceAll('/', '.'),
    detail,
    ...defined({ ambiguities }),
  }));

/** Faults that a command finds are told beside their fields, like those of the form itself. */
async function atFields(req: PageRequest, work: () => Promise<FormAnswer>): Promise<FormAnswer> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof InputFaults)) throw error;
    return { faults: asFormFaults(error), typed: req.fields };
  }
}

/** Notes the tick that it was read before the stop, as JSON says it. */
export const noteSaid = (tx: Tx, { beforeStop }: Fields): void =>
  noteBeforeStop(tx, { beforeStop: beforeStop === 'yes' });

/** A form read by the schema that its JSON twin has. */
export function stepForm<Schema extends z.ZodObject>(form: {
  readonly path: string;
  readonly side?: 'desk';
  readonly schema: Schema;
  readonly beside?: readonly string[];
  /** The posted fields under the names that the schema has, where they differ. */
  fields?(posted: Fields, source: FormSource): Fields | Promise<Fields>;
  /** What stands in the form when it comes back with a fault; left out, what was typed. */
  back?(posted: Fields): Fields;
  /** How numbers without a unit are read; left out, as the call is spoken. */
  units?(source: FormSource): FormOptions | Promise<FormOptions>;
  run(input: z.output<Schema>, source: FormSource): Promise<Destination | FormAnswer>;
}): PostedForm {
  return {
    path: form.path,
    beside: form.beside ?? [],
    ...defined({ side: form.side, schema: form.fields === undefined ? form.schema : undefined }),
    async post(tx, req, { computations, now }) {
      const call = await getCall(tx, req.principal, callIdOf(req));
      const source: FormSource = { tx, req, principal: req.principal, call, computations, now: now() };
      const fields = (await form.fields?.(req.fields, source)) ?? req.fields;
      const read = readForm(
        form.schema,
        fields,
        (await form.units?.(source)) ?? (await spokenIn(tx, req.principal, call)),
      );
      if (!read.ok) return { faults: read.faults, typed: form.back?.(req.fields) ?? req.fields };
      noteSaid(tx, req.fields);
      return atFields(req, async () => {
        const done = await form.run(read.data, source);
        return 'step' in done || 'page' in done ? addressOf(req, done, noted(tx).kept) : done;
      });
    },
  };
}

/** A form that is more than one schema: a specification against its newest revision, a table that was pasted. */
export function freeForm(form: {
  readonly path: string;
  readonly side?: 'desk';
  run(source: FormSource): Promise<Destination | FormAnswer>;
}): PostedForm {
  return {
    path: form.path,
    beside: [],
    ...defined({ side: form.side }),
    async post(tx, req, { computations, now }) {
      const call = await getCall(tx, req.principal, callIdOf(req));
      noteSaid(tx, req.fields);
      return atFields(req, async () => {
        const done = await form.run({ tx, req, principal: req.principal, call, computations, now: now() });
        return 'step' in done || 'page' in done ? addressOf(req, done, noted(tx).kept) : done;
      });
    },
  };
}
