import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';

import type { Slice } from './slice.ts';

const MECHANICS = 'server/mechanics/';
const TESTS = 'tests/';
const TOLD_OF = 'tests/assessment-told/';
/** Files of data and words: nothing in them decides. */
const LEFT_OUT = /(?:^|\/|-)(?:types|words|fields?|caution)\.ts$|example\.ts$/;
/** Minutes for every mutant, or a reader of the sources as text, which would be reading the mutated ones. */
const TESTS_LEFT_OUT = /simulation|calibration|docstrings/;

async function filesBelow(folder: string, endings: readonly string[] = ['.ts']): Promise<string[]> {
  const names = await readdir(folder, { recursive: true });
  return names.filter((name) => endings.some((ending) => name.endsWith(ending))).sort();
}

const TOLD = /\b(toldOf|assessAsTold|corpusOf)\('([\w-]+)'/;

/** What a test compares with what is told: it is of the test as much as its own lines. */
async function writtenDown(test: string): Promise<string[]> {
  const [, by, name = ''] = TOLD.exec(await readFile(test, 'utf8')) ?? [];
  if (by === undefined) return [];
  if (by === 'assessAsTold') return [`${TOLD_OF}builds/${name}.txt`];
  if (by === 'corpusOf') return ['.json', '.txt'].map((ending) => `${TOLD_OF}corpus/${name}${ending}`);
  return (await filesBelow(TOLD_OF + name, ['.json', '.txt'])).map((file) => `${TOLD_OF}${name}/${file}`);
}

/** A folder, a file, or with `*` at the end how its path begins. */
const isOf = (file: string, source: string): boolean =>
  source.endsWith('*')
    ? file.startsWith(source.slice(0, -1))
    : file === source || file.startsWith(`${source}/`);

/** The files of a slice, from the root of the project. */
export async function filesOf(slice: Slice): Promise<{ sources: string[]; tests: string[] }> {
  const sources = await filesBelow(MECHANICS);
  const tests = await filesBelow(TESTS);
  const starts = [...slice.tests.map((start) => `mechanics/${start}`), ...(slice.throughAssessment ?? [])];
  return {
    sources: sources
      .filter((file) => slice.sources.some((source) => isOf(file, source)))
      .filter((file) => !LEFT_OUT.test(file))
      .map((file) => MECHANICS + file),
    tests: tests
      .filter((file) => file.endsWith('.test.ts') && !TESTS_LEFT_OUT.test(file))
      .filter((file) => starts.some((start) => file.startsWith(start)))
      .map((file) => TESTS + file),
  };
}

/** A short hash of the files that a score was taken from: another one says that the score is old. */
export async function fingerprintOf(slice: Slice): Promise<string> {
  const { sources, tests } = await filesOf(slice);
  const hash = createHash('sha256');
  const written = await Promise.all(tests.map(writtenDown));
  for (const file of [...sources, ...tests, ...written.flat()]) {
    hash.update(file).update(await readFile(file));
  }
  return hash.digest('hex').slice(0, 12);
}
