import { z } from 'zod';
import { isStorable } from './texts.ts';

/** The longest file taken: many times the catalogue of any shop. */
const LONGEST_FILE = 900_000;
/**
 * What the body of one may have, in bytes: a comma or a line’s end of a form is written with three signs, and beside the
 * file there is little.
 */
export const FILE_BODY = 3 * LONGEST_FILE + 64 * 1024;

export const importCatalogue = z.strictObject({
  csv: z
    .string()
    .min(1)
    .max(LONGEST_FILE, { error: (issue) => `must be ${String(issue.maximum)} characters or fewer` })
    .refine(isStorable, { error: 'has a character that can’t be stored', params: { fault: 'not-allowed' } })
    .meta({ description: 'the file, as text; its first row names the columns' }),
  dryRun: z.boolean().default(false).meta({ description: 'only say what it would do' }),
  partial: z
    .boolean()
    .default(false)
    .meta({ description: 'load the rows without a fault; otherwise one fault and nothing is loaded' }),
});
