import type { BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import demo from '../../seeds/demo.json' with { type: 'json' };
import { seedDemo } from '../../server/start/demo.ts';
import { type TestBrowser, testBrowser } from './browser.ts';
import { type TestService, testService } from './service.ts';

/** The demo call on a service of its own, looked at from both sides. */
export interface DemoCall {
  readonly service: TestService;
  readonly browser: TestBrowser;
  readonly base: string;
  readonly callId: string;
  /** The list of calls, signed in. The form of the sign-in is filled the first time alone. */
  desk(options?: BrowserContextOptions): Promise<Page>;
  /** The builder's first step. The link is opened the first time alone. */
  bench(options?: BrowserContextOptions): Promise<Page>;
  close(): Promise<void>;
}

type State = Awaited<ReturnType<BrowserContext['storageState']>>;

async function signIn(page: Page, base: string): Promise<void> {
  await page.goto(`${base}/sign-in`);
  await page.getByLabel('E-mail address').fill(demo.staff[0]?.email ?? '');
  await page.getByLabel('Password').fill(demo.password);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.waitForURL(`${base}/calls`);
}

async function openLink(page: Page, link: string): Promise<void> {
  await page.goto(link);
  await page.getByRole('button', { name: 'Open my build' }).click();
  await page.waitForURL(/\/bench\/steps\//);
}

export async function openDemoCall(): Promise<DemoCall> {
  const service = await testService();
  const first = await seedDemo(service.deps);
  if (first.kind !== 'demo') throw new Error('no demo call');
  const base = await service.listen();
  const browser = await testBrowser();
  const { callId, link } = first;

  /** A page of one side: by `enter` the first time, then with the cookies that it gave. */
  function side(home: string, enter: (page: Page) => Promise<void>, usual: BrowserContextOptions) {
    let entered: State | undefined;
    return async (options = usual) => {
      const context = await browser.newContext({
        ...options,
        ...(entered === undefined ? {} : { storageState: entered }),
      });
      context.setDefaultTimeout(15_000);
      const page = await context.newPage();
      await (entered === undefined ? enter(page) : page.goto(`${base}${home}`));
      entered ??= await context.storageState();
      return page;
    };
  }
  return {
    service,
    browser,
    base,
    callId,
    desk: side('/calls', (page) => signIn(page, base), { viewport: { width: 1280, height: 900 } }),
    bench: side('/bench', (page) => openLink(page, `${base}/b/${link}`), {
      viewport: { width: 360, height: 740 },
    }),
    async close() {
      await browser.close();
      await service.close();
    },
  };
}
