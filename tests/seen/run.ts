import demo from '../../seeds/demo.json' with { type: 'json' };
import { STEP_NAMES } from '../../shared/steps.ts';
import { launchBrowser } from '../tools/browser.ts';
import { type Seen, seenOn } from './seen.ts';

/*
 * What a page shows without scrolling, measured in the browser on the demo call of a service that runs:
 * `node --import tsx tests/seen/run.ts http://127.0.0.1:3000 {call} {link} [folder for pictures]`.
 */
const [base = '', call = '', link = '', folder] = process.argv.slice(2);
const SIZES = { desk: { width: 1280, height: 800 }, bench: { width: 360, height: 740 } } as const;

const browser = await launchBrowser();
const line = (cells: readonly (string | number)[]) => process.stdout.write(`| ${cells.join(' | ')} |\n`);
const px = (y: number | undefined, height: number) =>
  y === undefined ? 'none' : y > height ? `**${y}**` : String(y);

line(['page', 'stop', 'next', 'answer', 'entry', 'screens', 'sizes']);
line(Array.from({ length: 7 }, () => '---'));
for (const side of ['desk', 'bench'] as const) {
  const viewport = SIZES[side];
  const context = await browser.newContext({ viewport });
  const page = await context.newPage();
  if (side === 'desk') {
    await page.goto(`${base}/sign-in`);
    await page.getByLabel('E-mail address').fill(demo.staff[0]?.email ?? '');
    await page.getByLabel('Password').fill(demo.password);
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.waitForURL(`${base}/calls`);
  } else {
    await page.goto(`${base}/b/${link}`);
    await page.getByRole('button', { name: 'Open my build' }).click();
    await page.waitForURL(/\/bench\/steps\//);
  }
  const home = side === 'desk' ? `/calls/${call}` : '/bench';
  const places = [
    ...(side === 'desk' ? [['list of calls', '/calls'] as const] : []),
    ...STEP_NAMES.map((name) => [name, `${home}/steps/${name}`] as const),
    ['report', `${home}/report`] as const,
  ];
  for (const [name, path] of places) {
    await page.goto(`${base}${path}`);
    const seen: Seen = await seenOn(page);
    line([
      `${side}: ${name}`,
      ...[seen.stop, seen.next, seen.answer, seen.entry].map((y) => px(y, viewport.height)),
      seen.screens,
      seen.sizes,
    ]);
    await page.evaluate(() => window.scrollTo(0, 0));
    if (folder !== undefined) {
      await page.screenshot({ path: `${folder}/${side}-${name.replaceAll(' ', '-')}.png` });
      await page.screenshot({
        path: `${folder}/${side}-${name.replaceAll(' ', '-')}-whole.png`,
        fullPage: true,
      });
    }
  }
  await context.close();
}
await browser.close();
