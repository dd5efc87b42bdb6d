import { z } from 'zod';
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
  at: z.iso.datetime(),
};

/** The entry as JSON has it: what is not so is left out. */
export function showEntry<Each extends Pick<Entry, 'replaces' | 'replacedBy' | 'at'>>(entry: Each) {
  const { replaces, replacedBy, at, ...rest } = entry;
  return {
    ...rest,
    ...(replaces === undefined ? {} : { replaces }),
    ...(replacedBy === undefined ? {} : { replacedBy }),
    at: at.toISOString(),
  };
}
