/**
 * Mutates the mechanics slice by slice and keeps each slice's score, so that a run broken off goes on where
 * it was: `npm run mutate:slices` runs every slice whose sources or tests changed since its score was taken,
 * `npm run mutate:slices -- springs lobe` those named, `-- --table` prints the table alone.
 */
import { spawn } from 'node:child_process';
import { rm } from 'node:fs/promises';
import process from 'node:process';

import { filesOf, fingerprintOf } from './fingerprint.ts';
import { keepResult, keptResult, resultOf } from './result.ts';
import { SLICES, type Slice } from './slices.ts';
import { scoreTable } from './table.ts';

async function mutate(slice: Slice): Promise<void> {
  const { sources, tests } = await filesOf(slice);
  const child = spawn(
    process.execPath,
    [
      '--import',
      'tsx',
      'node_modules/@stryker-mutator/core/bin/stryker.js',
      'run',
      '-m',
      sources.join(','),
      '--testFiles',
      tests.join(','),
    ],
    { stdio: ['ignore', 'inherit', 'inherit'] },
  );
  const code = await new Promise<number | null>((resolve, reject) => {
    child.once('error', reject);
    child.once('exit', resolve);
  });
  if (code !== 0) {
    throw new Error(`the slice ${slice.name} was broken off: exit ${String(code)}`);
  }
}

const asked = process.argv.slice(2);
if (!asked.includes('--table')) {
  for (const name of asked) {
    if (!SLICES.some((slice) => slice.name === name)) {
      throw new Error(`no slice ${name}: ${SLICES.map((slice) => slice.name).join(', ')}`);
    }
  }
  const wanted = SLICES.filter((slice) => asked.length === 0 || asked.includes(slice.name));
  for (const slice of wanted) {
    const fingerprint = await fingerprintOf(slice);
    const kept = await keptResult(slice.name);
    if (asked.length === 0 && kept?.fingerprint === fingerprint) {
      continue;
    }
    const begun = performance.now();
    await rm('reports/mutation', { recursive: true, force: true });
    await mutate(slice);
    const seconds = Math.round((performance.now() - begun) / 1000);
    await keepResult(await resultOf(slice.name, fingerprint, seconds));
  }
}
console.log(await scoreTable());
