import { z } from 'zod';

const digest = z.string().regex(/^[0-9a-f]{64}$/);

/** What a backup holds, as it says itself in `manifest.json`. */
export const manifestSchema = z.strictObject({
  what: z.literal('benchcall backup'),
  version: z.literal(1),
  /** The moment of which all of it is. */
  at: z.iso.datetime(),
  /** The newest migration of the database that it was made from. */
  migration: z.string().min(1),
  server: z.string(),
  tables: z.array(
    z.strictObject({
      name: z.string().min(1),
      columns: z.array(z.string().min(1)).min(1),
      key: z.array(z.string().min(1)).min(1),
      file: z.string().regex(/^[a-z0-9_]+\.copy\.gz$/),
      rows: z.int().min(0),
      /** SHA-256 of the rows as text, before they are packed. */
      sha256: digest,
    }),
  ),
  shops: z.array(z.strictObject({ id: z.uuid(), rows: z.record(z.string(), z.int().min(1)) })),
});

export type Manifest = z.output<typeof manifestSchema>;

/** The name of that file. It is written last: a folder without it is no backup. */
export const MANIFEST = 'manifest.json';
