import { writeFile } from 'node:fs/promises';
import { registryOutline } from './registry-outline.ts';

/** Writes computations.json anew; a test compares it, so that a changed field is seen in review. */
await writeFile(
  new URL('computations.json', import.meta.url),
  `${JSON.stringify(await registryOutline(), null, 2)}\n`,
);
