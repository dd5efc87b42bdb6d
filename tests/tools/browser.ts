import bundled from '@sparticuz/chromium';
import type { Browser } from 'playwright-core';
import { chromium } from 'playwright-core';

/**
 * A browser for tests: the one named by CHROMIUM_PATH, or else the one that comes with the npm package
 * (Linux only). The package's own list of arguments is not used: it puts everything into one process,
 * which dies with the first page that is closed, and it turns off the same-origin checks that the tests
 * of the content policy need. `more` are arguments of one test's own.
 */
export async function launchBrowser(more: readonly string[] = []): Promise<Browser> {
  const executablePath = process.env.CHROMIUM_PATH ?? (await bundled.executablePath());
  return chromium.launch({ executablePath, args: ['--no-sandbox', '--font-render-hinting=none', ...more] });
}
