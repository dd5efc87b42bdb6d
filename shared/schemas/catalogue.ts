import { z } from 'zod';
import { isStorable } from './texts.ts';

/** The longest file taken; the whole body may be 1 MiB. */
const LONGEST_FILE = 900_000;

export const importCatalogue = z.strictObject({
  csv: z
    .string()
    .min(1)
    .max(LONGEST_FILE)
    .refine(isStorable, { error: 'has a character that can’t be stored', params: { fault: 'not-allowed' } })
    .meta({ description: 'the file, as text; its first row names the columns' }),
  dryRun: z.boolean().default(false).meta({ description: 'only say what it would do' }),
  partial: z
    .boolean()
    .default(false)
    .meta({ description: 'load the rows without a fault; otherwise one fault and nothing is loaded' }),
});
