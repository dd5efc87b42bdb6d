import { cp, mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { InstrumenterContext, Mutant, MutantCoverage } from '@stryker-mutator/api/core';
import { Instrumenter } from '@stryker-mutator/instrumenter';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import type { everything as AllOf, Everything } from '../../tools/told/everything.ts';

/** More often than any build comes by one place: a mutant that goes round for ever is broken off. */
const MOST_HITS = 300_000;

const EVERYTHING = 'tests/tools/told/everything.ts';

const SILENT = {
  isTraceEnabled: () => false,
  isDebugEnabled: () => false,
  isInfoEnabled: () => false,
  isWarnEnabled: () => false,
  isErrorEnabled: () => false,
  isFatalEnabled: () => false,
  trace: () => undefined,
  debug: () => undefined,
  info: () => undefined,
  warn: () => undefined,
  error: () => undefined,
  fatal: () => undefined,
};

/** The assessment with faults that can be switched on. */
export interface Mutated {
  /** Those that a build can come by; what runs while files load is left out, as it is of every run. */
  readonly mutants: readonly Mutant[];
  /** What is said of it, and by which mutants it comes; nothing where such a build breaks the assessment. */
  readonly by: (evidence: Evidence) => { said: Everything; reached: ReadonlySet<string> } | undefined;
  /** What is said with a fault; nothing where it breaks. */
  readonly with: (mutant: string, evidence: Evidence) => Everything | undefined;
}

/** A copy of what the assessment is made of, with these files mutated; it runs from there. */
export async function mutated(name: string, sources: readonly string[]): Promise<Mutated> {
  const folder = path.resolve('reports/corpus', name);
  await rm(folder, { recursive: true, force: true });
  await mkdir(folder, { recursive: true });
  for (const each of ['server', 'shared', 'seeds'])
    await cp(each, path.join(folder, each), { recursive: true });
  const texts = await Promise.all(
    sources.map(async (file) => ({ name: file, mutate: true, content: await readFile(file, 'utf8') })),
  );
  const { files, mutants } = await new Instrumenter(SILENT).instrument(texts, {
    plugins: null,
    excludedMutations: ['StringLiteral'],
    ignorers: [],
  });
  for (const { name: file, content } of files) await writeFile(path.join(folder, file), content);

  const coverage: MutantCoverage = { static: {}, perTest: {} };
  const state: InstrumenterContext = { mutantCoverage: coverage };
  globalThis.__stryker__ = state;
  const { everything }: { everything: typeof AllOf } = await import(
    pathToFileURL(path.join(folder, EVERYTHING)).href
  );

  const run = (evidence: Evidence): Everything | undefined => {
    try {
      return everything(evidence);
    } catch {
      return undefined;
    }
  };
  return {
    mutants: mutants.filter(({ id, status }) => status === undefined && coverage.static[id] === undefined),
    by: (evidence) => {
      state.currentTestId = 'build';
      delete state.hitCount;
      const said = run(evidence);
      const reached = new Set(Object.keys(coverage.perTest.build ?? {}));
      delete coverage.perTest.build;
      delete state.currentTestId;
      return said === undefined ? undefined : { said, reached };
    },
    with: (mutant, evidence) => {
      state.activeMutant = mutant;
      state.hitCount = 0;
      state.hitLimit = MOST_HITS;
      const said = run(evidence);
      delete state.activeMutant;
      return said;
    },
  };
}
