import path from 'node:path';
import {
  INSTRUMENTER_CONSTANTS,
  type InstrumenterContext,
  type StrykerOptions,
} from '@stryker-mutator/api/core';
import { commonTokens, declareClassPlugin, PluginKind, tokens } from '@stryker-mutator/api/plugin';
import {
  type DryRunResult,
  DryRunStatus,
  determineHitLimitReached,
  type MutantRunOptions,
  type MutantRunResult,
  MutantRunStatus,
  type TestResult,
  type TestRunner,
  TestStatus,
} from '@stryker-mutator/api/test-runner';
import fc from 'fast-check';

import { type CollectedTest, collectedTests } from './collected-tests.ts';
import { isSlow } from './slow-tests.ts';

declare global {
  /** Where mutated code looks which mutant is on, and writes down what it came by. */
  var __stryker__: InstrumenterContext | undefined;
}
if (INSTRUMENTER_CONSTANTS.NAMESPACE !== '__stryker__') {
  throw new Error('mutated code looks for its mutant under another name');
}

/** The only thing that the mechanics keep from one call to the next: found under a mutant, it must not outlive it. */
async function keptFactors(): Promise<Map<unknown, unknown>> {
  const { knownFactors }: { knownFactors?: unknown } = await import(
    path.resolve('server/mechanics/uncertainty/known-factors.ts')
  );
  if (!(knownFactors instanceof Map)) throw new Error('no factors kept: nothing to empty between mutants');
  return knownFactors;
}

/** The message of what a test threw, or nothing if it passed. */
async function failureOf(test: CollectedTest): Promise<string | undefined> {
  try {
    await test.run();
    return undefined;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

/**
 * Runs the tests in the process that has loaded them once, where starting a worker and loading everything again
 * took most of a second for each mutant. It can do so because a mutant is switched on by a variable, what runs while
 * a file loads is not mutated, and all that the mechanics keep from one call to the next is emptied before each.
 */
class InProcessRunner implements TestRunner {
  static readonly inject = tokens(commonTokens.options);
  readonly #state: InstrumenterContext;
  readonly #files: readonly string[];
  #tests: readonly CollectedTest[] = [];
  /** How long each took without a mutant: the quick ones go first. */
  readonly #took = new Map<string, number>();
  /** When each last noticed a mutant: mutants come in the order of the source, and neighbours fall to one test. */
  readonly #lastFound = new Map<string, number>();
  #kept = new Map<unknown, unknown>();
  #runs = 0;

  constructor({ testFiles = [] }: StrykerOptions) {
    globalThis.__stryker__ ??= {};
    this.#state = globalThis.__stryker__;
    this.#files = testFiles;
  }

  /** Nothing is loaded again, and nothing has to be: what a mutant does while files load is left out of every run. */
  capabilities() {
    return { reloadEnvironment: true };
  }

  /** Also in the process that takes over from one which ran out of time: it has no dry run of its own. */
  async init(): Promise<void> {
    // The same cases for every mutant, and no search for a smaller case once one has failed.
    fc.configureGlobal({ seed: 20, endOnFailure: true });
    this.#tests = (await collectedTests(this.#files)).filter(({ id }) => !isSlow(id));
    this.#kept = await keptFactors();
    if (this.#tests.length === 0) {
      throw new Error('no tests: --testFiles says which are run');
    }
  }

  async dryRun(): Promise<DryRunResult> {
    const results: TestResult[] = [];
    for (const test of this.#tests) {
      this.#state.currentTestId = test.id;
      const begun = performance.now();
      const failureMessage = await failureOf(test);
      const timeSpentMs = performance.now() - begun;
      this.#took.set(test.id, timeSpentMs);
      const result = { id: test.id, name: test.name, fileName: test.file, timeSpentMs };
      results.push(
        failureMessage === undefined
          ? { ...result, status: TestStatus.Success }
          : { ...result, status: TestStatus.Failed, failureMessage },
      );
    }
    delete this.#state.currentTestId;
    const { mutantCoverage } = this.#state;
    return { status: DryRunStatus.Complete, tests: results, ...(mutantCoverage && { mutantCoverage }) };
  }

  async mutantRun({ activeMutant, hitLimit, testFilter }: MutantRunOptions): Promise<MutantRunResult> {
    const wanted = new Set(testFilter);
    const tests = this.#tests.filter(({ id }) => testFilter === undefined || wanted.has(id));
    this.#runs += 1;
    this.#kept.clear();
    this.#state.hitCount = 0;
    if (hitLimit === undefined) {
      delete this.#state.hitLimit;
    } else {
      this.#state.hitLimit = hitLimit;
    }
    this.#state.activeMutant = activeMutant.id;
    try {
      return await this.#firstToNotice(this.#bestFirst(tests), hitLimit);
    } finally {
      delete this.#state.activeMutant;
    }
  }

  async #firstToNotice(
    tests: readonly CollectedTest[],
    hitLimit: number | undefined,
  ): Promise<MutantRunResult> {
    let nrOfTests = 0;
    for (const test of tests) {
      const failureMessage = await failureOf(test);
      nrOfTests += 1;
      if (determineHitLimitReached(this.#state.hitCount, hitLimit) !== undefined) {
        return {
          status: MutantRunStatus.Timeout,
          reason: `more than ${String(hitLimit)} times through the mutant`,
        };
      }
      if (failureMessage !== undefined) {
        this.#lastFound.set(test.id, this.#runs);
        return { status: MutantRunStatus.Killed, killedBy: [test.id], failureMessage, nrOfTests };
      }
    }
    return { status: MutantRunStatus.Survived, nrOfTests };
  }

  /** The quick ones first; one that noticed a mutant of late may take twenty times as long. */
  #bestFirst(tests: readonly CollectedTest[]): CollectedTest[] {
    const rank = ({ id }: CollectedTest) => {
      const took = this.#took.get(id) ?? 1;
      return this.#runs - (this.#lastFound.get(id) ?? Number.NEGATIVE_INFINITY) <= 20 ? took / 20 : took;
    };
    return tests.toSorted((a, b) => rank(a) - rank(b));
  }
}

export const strykerPlugins = [declareClassPlugin(PluginKind.TestRunner, 'in-process', InProcessRunner)];
