import { z } from 'zod';
import type { Fields } from '../../../shared/schemas/answer.ts';
import { moment } from '../../../shared/schemas/answer-parts.ts';
import type { Entry } from './entries.ts';

/** What every entry on the record shows of itself in JSON. */
export const entryShape = {
  id: z.uuid(),
  seq: z.int(),
  replaces: z.uuid().optional(),
  replacedBy: z.uuid().optional(),
  struck: z.boolean(),
  reason: z.string(),
  by: z.string(),
  byKind: z.string(),
  at: moment,
};

const entryView = z.object(entryShape);

/** The same of one entry, for the answer it is a part of. */
export const entryFields = (entry: Entry): Fields<typeof entryView> => ({
  id: entry.id,
  seq: entry.seq,
  replaces: entry.replaces,
  replacedBy: entry.replacedBy,
  struck: entry.struck,
  reason: entry.reason,
  by: entry.by,
  byKind: entry.byKind,
  at: entry.at.toISOString(),
});
