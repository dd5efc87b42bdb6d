import { readFileSync } from 'node:fs';
import { launchBrowser } from './browser.ts';
const BASE = 'http://127.0.0.1:4811';
const { cid } = JSON.parse(readFileSync('/tmp/play.json', 'utf8'));
const name = process.argv[2] ?? 'shot';
const browser = await launchBrowser();
for (const [width, js] of [[1280, true], [360, false]] as const) {
  const context = await browser.newContext({ viewport: { width, height: width > 500 ? 800 : 740 }, javaScriptEnabled: js, storageState: '/tmp/play-state.json' });
  const page = await context.newPage();
  for (const [what, path] of [['sheet', `/calls/${cid}/steps/sheet`], ['takeover', `/calls/${cid}/takeover`]] as const) {
    const r = await page.goto(BASE + path);
    console.log(width, what, r?.status());
    if (js || true) {
      const over = js ? await page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth) : '';
      console.log('scrolls sideways', over);
    }
    await page.screenshot({ path: `/tmp/shots/${name}-${what}-${width}.png`, fullPage: what === 'sheet' && width > 500 ? true : true });
    await page.screenshot({ path: `/tmp/shots/${name}-${what}-${width}-top.png` });
  }
  await context.close();
}
await browser.close();
