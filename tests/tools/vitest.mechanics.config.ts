import { configDefaults, defineConfig } from 'vitest/config';

/** The tests of the pure mechanics alone, without a database: what mutation testing runs again and again. */
export default defineConfig({
  test: {
    include: ['tests/mechanics/**/*.test.ts', 'tests/shared/**/*.test.ts'],
    exclude: [
      ...configDefaults.exclude,
      // Hundreds of simulated calls each: minutes for every mutant they touch.
      'tests/mechanics/explain-readings/simulation.test.ts',
      'tests/mechanics/identify/calibration.test.ts',
      // Reads the sources as text, and would be reading the mutated ones.
      'tests/mechanics/docstrings.test.ts',
    ],
    testTimeout: 60_000,
    restoreMocks: true,
  },
});
