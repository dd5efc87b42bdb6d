import { startVitest } from 'vitest/node';

/**
 * Runs every test, and ends with one plain line that a person or a program can read.
 * Arguments are passed on as filters: `npm test -- ratio`.
 */
const filters = process.argv.slice(2);
const vitest = await startVitest('test', filters, { run: true, watch: false, reporters: ['default'] });
const modules = vitest.state.getTestModules();
const tests = modules.flatMap((module) => [...module.children.allTests()]);
const count = (state: string) => tests.filter((test) => test.result().state === state).length;
const brokenFiles = modules.filter(
  (module) => module.state() === 'failed' && module.errors().length > 0,
).length;
const unhandled = vitest.state.getUnhandledErrors().length;
const failed = count('failed') + brokenFiles + unhandled;
const skipped = count('skipped');
await vitest.close();
process.stdout.write(
  `${count('passed')} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}\n`,
);
process.exit(failed > 0 || count('passed') === 0 ? 1 : 0);
