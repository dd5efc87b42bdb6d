import { configDefaults, defineConfig } from 'vitest/config';

/** Neither a database nor a browser: functions of numbers and texts. */
const PURE = ['mechanics', 'contract', 'drawings', 'shared'].map((folder) => `tests/${folder}/**/*.test.ts`);
/** Processes that are killed, and a module that is watched for the whole file: a process for each. */
const ALONE = ['tests/faults/**/*.test.ts', 'tests/access/sign-in.test.ts'];

/*
 * Files of a project that is not isolated take turns in the same two processes, so that the service is loaded, its
 * assets are built and the browser is started twice in all and not once for each file. What a file changes it puts
 * back: each has a database of its own.
 */
export default defineConfig({
  test: {
    globalSetup: ['tests/tools/database-server.ts'],
    maxWorkers: 2,
    coverage: { provider: 'v8', include: ['server/**', 'shared/**'], reportsDirectory: 'coverage' },
    projects: [
      { name: 'alone', include: ALONE, isolate: true },
      { name: 'pure', include: PURE, isolate: false },
      {
        name: 'service',
        include: ['tests/**/*.test.ts'],
        exclude: [...configDefaults.exclude, ...PURE, ...ALONE],
        isolate: false,
      },
    ].map((test) => ({
      extends: true as const,
      test: {
        ...test,
        globalSetup: [],
        setupFiles: ['tests/tools/property-seed.ts'],
        testTimeout: 60_000,
        hookTimeout: 120_000,
        restoreMocks: true,
      },
    })),
  },
});
