import { cp, mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { InstrumenterContext, Mutant, MutantCoverage } from '@stryker-mutator/api/core';
import { Instrumenter } from '@stryker-mutator/instrumenter';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import type { everything as AllOf, Everything } from '../../tools/told/everything.ts';

import { weighed } from './weighed.ts';

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
  /** Those that any build came by so far, whether or not something would be otherwise there. */
  readonly passed: ReadonlySet<string>;
  /** What is said of it, and where a mutant may act; nothing where such a build breaks the assessment. */
  readonly by: (evidence: Evidence) => { said: Everything; reached: ReadonlySet<string> } | undefined;
  /** What is said with a fault; nothing where it breaks. */
  readonly with: (mutant: string, evidence: Evidence) => Everything | undefined;
}

/** A copy of what the assessment is made of, with these files mutated; it runs from there. */
export async function mutated(name: string, sources: readonly string[]): Promise<Mutated> {
  const folder = path.resolve('reports/corpus', name);
  await rm(folder, { recursive: true, force: true });
  await mkdir(folder, { recursive: true });
  for (const each of ['server', 'shared', 'seeds', EVERYTHING])
    await cp(each, path.join(folder, each), { recursive: true });
  const texts = await Promise.all(
    sources.map(async (file) => ({ name: file, mutate: true, content: await readFile(file, 'utf8') })),
  );
  const { files, mutants } = await new Instrumenter(SILENT).instrument(texts, {
    plugins: null,
    excludedMutations: ['StringLiteral'],
    ignorers: [],
  });
  const isWeighed = new Set<string>();
  for (const { name: file, content } of files) {
    const { text, ids } = weighed(file, content);
    for (const id of ids) isWeighed.add(id);
    await writeFile(path.join(folder, file), text);
  }

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
  const passed = new Set<string>();
  return {
    passed,
    mutants: mutants.filter(({ id, status }) => status === undefined && coverage.static[id] === undefined),
    by: (evidence) => {
      state.currentTestId = 'build';
      delete state.hitCount;
      const otherwise = new Set<string>();
      globalThis.comesOutOtherwise = otherwise;
      const said = run(evidence);
      globalThis.comesOutOtherwise = undefined;
      const reached = Object.keys(coverage.perTest.build ?? {});
      delete coverage.perTest.build;
      delete state.currentTestId;
      for (const id of reached) passed.add(id);
      const acted = reached.filter((id) => !isWeighed.has(id) || otherwise.has(id));
      return said === undefined ? undefined : { said, reached: new Set(acted) };
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
