import type { z } from 'zod';
import { defined } from '../../shared/defined.ts';
import type { Tx } from '../database/database.ts';
import { noted } from '../events/tx-notes.ts';
import { getCall } from '../records/calls/calls.ts';
import type { FormAnswer } from '../web/form-route.ts';
import type { Fields, FormOptions } from '../web/forms/read-form.ts';
import type { PageRequest } from '../web/page-request.ts';
import { type CallContext, callIdOf } from './context.ts';
import { type CorrectedFields, readCorrection } from './correction-form.ts';
import type { RejectedForm, StepBody } from './forms.ts';
import type { StepSource } from './step.ts';
import { addressOf, type Destination, type FormSource, spokenIn } from './step-form.ts';

/** An entry of the record, and the line that it was kept in. */
interface KeptEntry {
  readonly id: string;
  readonly seq: number;
}

/** How an entry of a step is put right or struck out: its page, and what is posted there. */
export interface EntryCorrection {
  /** Below the call, with the entry's id: `/readings/:readingId`. */
  readonly path: string;
  /** Where its form posts to; left out, to its own address. */
  readonly action?: string;
  /** The id out of the address. */
  readonly param: string;
  /** The entries of this kind, each with its line. */
  entries(context: CallContext): readonly KeptEntry[];
  page(
    source: StepSource,
    id: string,
    rejected: RejectedForm | undefined,
  ): { readonly title: string; readonly body: StepBody };
  post(tx: Tx, req: PageRequest): Promise<FormAnswer>;
}

/** Declares how entries of one kind are corrected. `param` is the name of the id in the path. */
export function entryCorrection<Schema extends z.ZodObject, Entry>(of: {
  readonly path: string;
  readonly action?: string;
  readonly param: string;
  entries(context: CallContext): readonly KeptEntry[];
  readonly schema: Schema;
  fields(entry: Entry, posted: Fields): CorrectedFields;
  find(source: Omit<FormSource, 'computations' | 'now'>, id: string): Promise<Entry>;
  units?(entry: Entry): FormOptions;
  /** The page of one entry out of the call's context. */
  page(
    source: StepSource,
    id: string,
    rejected: RejectedForm | undefined,
  ): { readonly title: string; readonly body: StepBody };
  replace(
    input: z.output<Schema>,
    entry: Entry,
    source: Omit<FormSource, 'computations' | 'now'>,
    id: string,
  ): Promise<Destination>;
}): EntryCorrection {
  return {
    path: of.path,
    param: of.param,
    entries: of.entries,
    ...defined({ action: of.action }),
    page: (source, id, rejected) => of.page(source, id, rejected),
    async post(tx, req) {
      const id = req.params[of.param] ?? '';
      const call = await getCall(tx, req.principal, callIdOf(req));
      const source = { tx, req, principal: req.principal, call };
      const entry = await of.find(source, id);
      const read = readCorrection(
        of.schema,
        req.fields,
        of.fields(entry, req.fields),
        of.units?.(entry) ?? (await spokenIn(tx, req.principal, call)),
      );
      if (!read.ok) return { faults: read.faults, typed: req.fields };
      return addressOf(req, await of.replace(read.data, entry, source, id), noted(tx).kept);
    },
  };
}
