/**
 * Mutates the mechanics slice by slice and keeps each slice's score, so that a run broken off goes on where
 * it was: `npm run mutate:slices` runs every slice whose sources or tests changed since its score was taken,
 * `npm run mutate:slices -- springs lobe` those named, `-- --table` prints the table alone.
 *
 * `--parts=4` runs a long slice in four runs of a quarter of its files. `--grown` takes over what the run before
 * found of mutants whose source and whose noticing test are the same, and tries the survivors on new tests alone:
 * the loop while tests are written, and how a slice that was broken off between two parts goes on.
 * `MUTATE_UNDER='flock /tmp/turn'` puts a command before each run, where a machine is shared.
 */
import { spawn } from 'node:child_process';
import { rm } from 'node:fs/promises';
import process from 'node:process';

import { filesOf, fingerprintOf } from './fingerprint.ts';
import { keepResult, keptResult, resultOf } from './result.ts';
import { SLICES } from './slices.ts';
import { scoreTable } from './table.ts';

const UNDER = (process.env.MUTATE_UNDER ?? '').split(' ').filter((word) => word !== '');

async function mutate(sources: readonly string[], tests: readonly string[], found: string): Promise<void> {
  const [command = process.execPath, ...words] = [
    ...UNDER,
    process.execPath,
    '--import',
    'tsx',
    'node_modules/@stryker-mutator/core/bin/stryker.js',
    'run',
    '-m',
    sources.join(','),
    '--testFiles',
    tests.join(','),
    '--incremental',
    '--incrementalFile',
    found,
  ];
  const child = spawn(command, words, { stdio: ['ignore', 'inherit', 'inherit'] });
  const code = await new Promise<number | null>((resolve, reject) => {
    child.once('error', reject);
    child.once('exit', resolve);
  });
  if (code !== 0) {
    throw new Error(`${found} was broken off: exit ${String(code)}`);
  }
}

/** The files in so many heaps, neighbours apart: a folder's heavy files seldom fall into one heap. */
const dealt = <T>(files: readonly T[], heaps: number): T[][] =>
  Array.from({ length: heaps }, (_, heap) => files.filter((_file, at) => at % heaps === heap)).filter(
    (heap) => heap.length > 0,
  );

const words = process.argv.slice(2);
const asked = words.filter((word) => !word.startsWith('--'));
const parts = Number(words.find((word) => word.startsWith('--parts='))?.slice('--parts='.length) ?? 1);
const grown = words.includes('--grown');
if (!words.includes('--table')) {
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
    const found = `reports/mutation-found/${slice.name}.json`;
    const begun = performance.now();
    await rm('reports/mutation', { recursive: true, force: true });
    if (!grown) {
      await rm(found, { force: true });
    }
    const { sources, tests } = await filesOf(slice);
    for (const heap of dealt(sources, parts)) {
      await mutate(heap, tests, found);
    }
    const seconds = Math.round((performance.now() - begun) / 1000);
    await keepResult(await resultOf(slice.name, fingerprint, seconds));
  }
}
console.log(await scoreTable());
