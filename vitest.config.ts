import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    globalSetup: ['tests/tools/database-server.ts'],
    // Two cores, and each file has a database of its own: more workers only wait for each other.
    maxWorkers: 2,
    testTimeout: 60_000,
    hookTimeout: 120_000,
    restoreMocks: true,
    coverage: { provider: 'v8', include: ['server/**', 'shared/**'], reportsDirectory: 'coverage' },
  },
});
