import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import demo from '../../seeds/demo.json' with { type: 'json' };
import { seedDemo } from '../../server/start/demo.ts';
import { launchBrowser } from './browser.ts';
import { type TestService, testService } from './service.ts';

/** The demo call on a service of its own, looked at from both sides. */
export interface DemoCall {
  readonly service: TestService;
  readonly browser: Browser;
  readonly base: string;
  readonly callId: string;
  desk(options?: BrowserContextOptions): Promise<Page>;
  bench(options?: BrowserContextOptions): Promise<Page>;
  close(): Promise<void>;
}

export async function openDemoCall(): Promise<DemoCall> {
  const service = await testService();
  const first = await seedDemo(service.deps);
  if (first.kind !== 'demo') throw new Error('no demo call');
  const base = await service.listen();
  const browser = await launchBrowser();
  async function fresh(options: BrowserContextOptions): Promise<Page> {
    const context = await browser.newContext(options);
    context.setDefaultTimeout(15_000);
    return context.newPage();
  }
  return {
    service,
    browser,
    base,
    callId: first.callId,
    async desk(options = { viewport: { width: 1280, height: 900 } }) {
      const page = await fresh(options);
      await page.goto(`${base}/sign-in`);
      await page.getByLabel('E-mail address').fill(demo.staff[0]?.email ?? '');
      await page.getByLabel('Password').fill(demo.password);
      await page.getByRole('button', { name: 'Sign in' }).click();
      await page.waitForURL(`${base}/calls`);
      return page;
    },
    async bench(options = { viewport: { width: 360, height: 740 } }) {
      const page = await fresh(options);
      await page.goto(`${base}/b/${first.link}`);
      await page.getByRole('button', { name: 'Open my build' }).click();
      await page.waitForURL(/\/bench\/steps\//);
      return page;
    },
    async close() {
      await browser.close();
      await service.close();
    },
  };
}
