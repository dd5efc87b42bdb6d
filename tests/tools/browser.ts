import bundled from '@sparticuz/chromium';
import type { Browser, BrowserContext, BrowserContextOptions } from 'playwright-core';
import { chromium } from 'playwright-core';

/**
 * `--host-resolver-rules`: a browser trusts loopback addresses as it trusts https, so a test of plain http needs a
 * name that leads there.
 */
const ARGUMENTS = [
  '--no-sandbox',
  '--font-render-hinting=none',
  '--host-resolver-rules=MAP *.test 127.0.0.1',
];

/**
 * A browser for tests: the one named by CHROMIUM_PATH, or else the one that comes with the npm package
 * (Linux only). The package's own list of arguments is not used: it puts everything into one process,
 * which dies with the first page that is closed, and it turns off the same-origin checks that the tests
 * of the content policy need.
 */
export async function launchBrowser(): Promise<Browser> {
  const executablePath = process.env.CHROMIUM_PATH ?? (await bundled.executablePath());
  return chromium.launch({ executablePath, args: ARGUMENTS });
}

/** The contexts of one test file, in a browser that the files of a process share and that ends with it. */
export interface TestBrowser {
  newContext(options?: BrowserContextOptions): Promise<BrowserContext>;
  /** Closes those that are still open. */
  close(): Promise<void>;
}

let running: Promise<Browser> | undefined;

export async function testBrowser(): Promise<TestBrowser> {
  running ??= launchBrowser();
  const browser = await running;
  const mine = new Set<BrowserContext>();
  return {
    async newContext(options) {
      const context = await browser.newContext(options);
      mine.add(context);
      context.once('close', () => mine.delete(context));
      return context;
    },
    async close() {
      await Promise.all([...mine].map((context) => context.close()));
    },
  };
}
