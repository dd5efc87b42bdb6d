import path from 'node:path';
import process from 'node:process';
import {
  collectTests,
  type File,
  getFn,
  getHooks,
  type Suite,
  type Test,
  type VitestRunner,
} from '@vitest/runner';

/** One test of a file that has been loaded. */
export interface CollectedTest {
  readonly id: string;
  readonly name: string;
  readonly file: string;
  readonly run: () => Promise<void>;
}

const MINUTE = 60_000;

/** What is needed to load a file of tests, and no more: nothing here runs one. */
const loader: VitestRunner = {
  config: {
    root: process.cwd(),
    setupFiles: [],
    name: undefined,
    passWithNoTests: false,
    testNamePattern: undefined,
    allowOnly: false,
    sequence: { seed: 0, hooks: 'stack', setupFiles: 'list' },
    chaiConfig: undefined,
    maxConcurrency: 1,
    testTimeout: MINUTE,
    hookTimeout: MINUTE,
    retry: 0,
    includeTaskLocation: false,
    tags: [],
    tagsFilter: undefined,
    strictTags: false,
  },
  importFile: (file) => import(file),
};

const testsOf = (suite: Suite): Test[] =>
  suite.tasks.flatMap((task) => (task.type === 'suite' ? testsOf(task) : [task]));

const suitesOf = (suite: Suite): Suite[] => [
  suite,
  ...suite.tasks.flatMap((task) => (task.type === 'suite' ? suitesOf(task) : [])),
];

/** A hook would have to run around each test under each mutant: no test of the pure mechanics needs one. */
function refuseHooks(file: File): void {
  for (const suite of suitesOf(file)) {
    if (Object.values(getHooks(suite)).some((hooks) => hooks.length > 0)) {
      throw new Error(`${file.name} has hooks, which are not run for mutants`);
    }
  }
}

function nameOf({ name, suite }: Test): string {
  const parts = [name];
  for (let at = suite; at !== undefined; at = at.suite) {
    parts.unshift(at.name);
  }
  return parts.join(' ').trim();
}

/** All tests of these files, loaded once. */
export async function collectedTests(files: readonly string[]): Promise<CollectedTest[]> {
  const collected = await collectTests(
    files.map((file) => ({ filepath: path.resolve(file), testLocations: undefined, fileTags: [] })),
    loader,
  );
  return collected.flatMap((file) => {
    for (const error of file.result?.errors ?? []) {
      throw new Error(`${file.name} can't be loaded: ${error.message}`);
    }
    refuseHooks(file);
    return testsOf(file).map((test) => {
      const name = nameOf(test);
      return { id: `${file.name}#${name}`, name, file: file.filepath, run: async () => getFn(test)() };
    });
  });
}
